/* Landing: the line of a procedure on which a hit should put the reader, from the procedure's search/<n>.json.
   Touches no page and no network. Needs unpack.js and find.js before it. */
(function (global) {
  "use strict";

  const { compounds, normalKey, EXACT } = global.witnessmarkSearch;

  function pick(rows, score) {
    let best = null;
    let most = 0;
    for (const row of rows) {
      const points = score(row);
      if (points > most) [best, most] = [row, points];
    }
    return best;
  }

  function holdsKey(text, key) {
    return text.split(/[\s,;:()]+/).some((chunk) => normalKey(chunk) === key);
  }

  function holdsNumber(text, number) {
    const plain = number.replace(/,/g, "");
    return text.replace(/(\d),(?=\d{3})/g, "$1").split(/[^\d./-]+/).some((piece) => piece.replace(/[.]$/, "") === plain);
  }

  function ofKey(excerpt, key, begins) {
    const meets = (text) => (begins ? normalKey(text).startsWith(key) : normalKey(text) === key);
    const listed = excerpt.keys.find(([text]) => meets(text));
    if (listed) return { anchor: listed[1], text: listed[2] || listed[0] };
    const line = excerpt.lines.find(([, text]) => holdsKey(text, key));
    return line ? { anchor: line[0], text: line[1] } : null;
  }

  function ofFigure(excerpt, wanted) {
    const away = (row) => (wanted.scale ? (row[1] - wanted.si) / wanted.scale : row[1] - wanted.si);
    const nearest = excerpt.figures
      .filter((row) => row[0] === wanted.dimension)
      .sort((a, b) => Math.abs(away(a)) - Math.abs(away(b)))[0];
    if (!nearest) return null;
    const off = away(nearest);
    return { anchor: nearest[2], text: nearest[3], off: Math.abs(off) <= EXACT ? 0 : off };
  }

  function ofTerms(excerpt, found, stop) {
    const wanted = new Set(found);
    const met = (text) => new Set(compounds(text, stop).flat(2).filter((term) => wanted.has(term))).size;
    // Of lines that hold as many of the words, the first that has a place of its own on the page.
    const line = pick(excerpt.lines, ([anchor, text]) => met(text) && met(text) + (anchor ? 0.5 : 0));
    return line ? { anchor: line[0], text: line[1] } : null;
  }

  /* {anchor, text, off}: `off` is set for a figure that is near and not the one asked for, as a signed share of it.
     null: the excerpt does not bear the hit out (a number that stands in no text), so the hit is not shown. */
  function landing(hit, excerpt, stop) {
    const top = { anchor: "", text: "" };
    if (!excerpt || excerpt.url !== hit.url) return top; // a file of another build: the procedure, without the line
    const found = hit.reasons.map(function (reason) {
      if (reason.number) {
        const figure = excerpt.figures.find((row) => holdsNumber(row[3], reason.number));
        const line = excerpt.lines.find((row) => holdsNumber(row[1], reason.number));
        if (!figure && !line) return null;
        return figure ? { anchor: figure[2], text: figure[3] } : { anchor: line[0], text: line[1] };
      }
      if (reason.figure) return ofFigure(excerpt, reason.figure);
      if (reason.key) return ofKey(excerpt, reason.key, reason.begins);
      return ofTerms(excerpt, reason.terms, stop) || top;
    });
    const borne = found.filter(Boolean);
    if (!borne.length) return hit.reasons.some((reason) => reason.number) ? null : top;
    return borne.find((place) => place.text && !place.off) || borne.find((place) => place.text) || top;
  }

  global.witnessmarkSearch.landing = landing;
})(typeof window === "undefined" ? globalThis : window);
