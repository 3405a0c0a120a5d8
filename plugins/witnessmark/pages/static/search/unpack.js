/* Unpacking search/index.json, and the rules by which text becomes terms and keys. Touches no page and no network.
   The other half of pages/search_index.py: `terms`, `normalKey` and `normalUnit` repeat its rules. */
(function (global) {
  "use strict";

  const OFTEN_COUNTS_AS = 4; // the index keeps "often" or "once"; any figure between three and the usual will do

  /* ---- text to terms and keys ---- */

  function singular(word) {
    if (word.length < 4 || !word.endsWith("s") || /(ss|us|is)$/.test(word)) return word;
    if (word.endsWith("ies")) return word.slice(0, -3) + "y";
    return /(sh|ch|x|ss)es$/.test(word) ? word.slice(0, -2) : word.slice(0, -1);
  }

  /* One array for each compound: [the parts' terms, the joined term or null]. */
  function compounds(text, stop) {
    const plain = text.normalize("NFKD").replace(/\p{Mn}/gu, "").toLowerCase();
    return (plain.match(/[\p{L}\p{N}_]+(?:['’-][\p{L}\p{N}_]+)*/gu) || []).map(function (compound) {
      const every = compound.split(/['’-]/);
      const parts = every.filter((part) => /^\p{L}+$/u.test(part));
      const kept = parts.filter((part) => Array.from(part).length > 1 && !stop.has(part)).map(singular);
      return [kept, parts.length === 2 && every.length === 2 ? singular(parts.join("")) : null];
    });
  }

  function terms(text, stop) {
    return compounds(text, stop).flatMap(([parts, joined]) => (joined ? parts.concat(joined) : parts));
  }

  function normalKey(text) {
    return text.replace(/[\s\-‐‑‒–—−/⁄.]/g, "").replace(/×/g, "X").toUpperCase();
  }

  function normalUnit(text) {
    return text.replace(/²/g, "2").replace(/³/g, "3").replace(/[\s·⋅*.^-]/g, "").toLowerCase();
  }

  /* ---- unpacking ---- */

  function frontDecoded(text) {
    let before = "";
    if (!text) return [];
    return text.split(" ").map(function (coded) {
      before = Array.from(before).slice(0, Number(coded[0])).join("") + coded.slice(1);
      return before;
    });
  }

  /* Lists of rising whole numbers below their totals, from Golomb-coded gaps (see search_index.py). */
  function unpackedLists(lengths, base64, totalOf) {
    const bytes = atob(base64);
    let at = 1; // the first bit only keeps the zeros after it
    function bit() {
      const value = (bytes.charCodeAt(at >> 3) >> (7 - (at & 7))) & 1;
      at += 1;
      return value;
    }
    return lengths.map(function (length, place) {
      const total = totalOf(place);
      const turned = 2 * length > total;
      const count = turned ? total - length : length;
      if (count === 0) return turned ? Array.from({ length: total }, (_, number) => number) : [];
      const m = Math.max(1, Math.floor((69 * total + 50 * count) / (100 * count)));
      const width = m === 1 ? 0 : 32 - Math.clz32(m - 1);
      const short = (1 << width) - m;
      const written = [];
      let before = -1;
      for (let n = 0; n < count; n += 1) {
        let quotient = 0;
        while (bit()) quotient += 1;
        let rest = 0;
        for (let w = 1; w < width; w += 1) rest = 2 * rest + bit();
        if (width > 0 && rest >= short) rest = 2 * rest + bit() - short;
        before += quotient * m + rest + 1;
        written.push(before);
      }
      if (!turned) return written;
      const left = new Set(written);
      return Array.from({ length: total }, (_, number) => number).filter((number) => !left.has(number));
    });
  }

  /* The form MiniSearch itself writes: nothing is indexed again but the titles, which are here anyway. */
  function miniSearchForm(index, stop) {
    const total = index.procedures.length;
    const held = unpackedLists(index.words.in[0], index.words.in[1], () => total);
    const often = unpackedLists(index.words.often[0], index.words.often[1], (place) => held[place].length);
    const byTerm = new Map();
    frontDecoded(index.words.terms).forEach(function (term, place) {
      const counts = {};
      for (const number of held[place]) counts[number] = 1;
      for (const position of often[place]) counts[held[place][position]] = OFTEN_COUNTS_AS;
      byTerm.set(term, { 1: counts });
    });
    const fieldLength = {};
    const documentIds = {};
    const sums = [0, 0];
    index.procedures.forEach(function (procedure, number) {
      const inTitle = new Set(terms(procedure[1], stop));
      for (const term of inTitle) {
        const fields = byTerm.get(term) || {};
        (fields[0] = fields[0] || {})[number] = 1;
        byTerm.set(term, fields);
      }
      documentIds[number] = number;
      fieldLength[number] = [inTitle.size, index.lengths[number]];
      sums[0] += inTitle.size;
      sums[1] += index.lengths[number];
    });
    return {
      documentCount: total, nextId: total, documentIds: documentIds, fieldIds: { title: 0, body: 1 },
      fieldLength: fieldLength, averageFieldLength: sums.map((sum) => sum / (total || 1)), storedFields: {},
      dirtCount: 0, index: Array.from(byTerm), serializationVersion: 2,
    };
  }

  global.witnessmarkSearch = {
    compounds: compounds, terms: terms, normalKey: normalKey, normalUnit: normalUnit,
    frontDecoded: frontDecoded, unpackedLists: unpackedLists, miniSearchForm: miniSearchForm,
  };
})(typeof window === "undefined" ? globalThis : window);
