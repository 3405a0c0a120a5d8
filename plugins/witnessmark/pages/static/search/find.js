/* Finding: reads a query and ranks procedures. Touches no page and no network. Needs unpack.js before it. */
(function (global) {
  "use strict";

  const { compounds, terms, normalKey, normalUnit, frontDecoded, unpackedLists, miniSearchForm } = global.witnessmarkSearch;
  const FORMAT = 1;
  const LOG_STEPS = 1000;
  const EXACT = 0.005;
  const NEAR = 0.05;
  const SAME_NUMBER = 0.001; // for a number without a unit, whose text is compared afterwards
  const FIRST = 10000; // an exact key or figure comes before any words; MiniSearch scores stay far below
  const SERIES = /^UN[A-Z]{0,2}$/i; // may stand behind a thread without being part of its key

  function readNumber(text) {
    const found = /^([-−]?)(?:(?:(\d+)[- ])?(\d+)\/(\d+)|(\d{1,3}(?:,\d{3})+(?!\d)|\d+)?(\.\d+)?)\s*(.*)$/.exec(text);
    if (!found || !(found[3] || found[5] || found[6])) return null;
    const value = found[3]
      ? Number(found[2] || 0) + Number(found[3]) / Number(found[4])
      : Number((found[5] || "0").replace(/,/g, "") + (found[6] || ""));
    return Number.isFinite(value) ? { value: found[1] ? -value : value, rest: found[7] } : null;
  }

  function figureLists(dimension, si) {
    return si === 0 ? [dimension + "0", 0] : [dimension + (si < 0 ? "-" : ""), Math.log(Math.abs(si)) * LOG_STEPS];
  }

  function lowerBound(sorted, wanted) {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle] < wanted) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  function Finder(index, MiniSearch) {
    if (index.format !== FORMAT) throw new Error("search index of another format: " + index.format);
    const total = index.procedures.length;
    const stop = new Set(index.stop);
    const mini = MiniSearch.loadJS(miniSearchForm(index, stop), { fields: ["title", "body"] });
    const keyTerms = frontDecoded(index.keys.terms);
    const keyLists = unpackedLists(index.keys.in[0], index.keys.in[1], () => total);
    const figures = {};
    for (const [dimension, [first, gaps, lengths, bits]] of Object.entries(index.figures)) {
      let step = first;
      figures[dimension] = { steps: gaps.map((gap) => (step += gap)), lists: unpackedLists(lengths, bits, () => total) };
    }
    const units = new Map();
    for (const [dimension, factor, offset, spellings] of index.units) {
      for (const spelling of spellings) {
        if (!units.has(spelling)) units.set(spelling, []);
        units.get(spelling).push({ dimension: dimension, factor: factor, offset: offset });
      }
    }

    function exactKey(text) {
      const key = normalKey(text);
      const place = lowerBound(keyTerms, key);
      return key && keyTerms[place] === key ? { key: key, numbers: keyLists[place] } : null;
    }

    function keysBeginning(text) {
      const key = normalKey(text);
      const numbers = new Map();
      if (key.length < 2) return { key: key, numbers: numbers };
      for (let place = lowerBound(keyTerms, key); place < keyTerms.length && keyTerms[place].startsWith(key); place += 1) {
        for (const number of keyLists[place]) if (!numbers.has(number)) numbers.set(number, keyTerms[place]);
      }
      return { key: key, numbers: numbers };
    }

    /* The figures a text may mean: one for each dimension its unit has. `scale` is what 0.5 % and 5 % are taken of:
       the number as typed, so that 358 °F is judged by degrees Fahrenheit and not by kelvins. */
    function readQuantity(text) {
      const number = readNumber(text);
      if (!number || /^[-/]/.test(number.rest.replace(/^-(?=[a-z]{2})/i, ""))) return [];
      const spelled = normalUnit(number.rest);
      const meant = units.get(spelled) || units.get(spelled.replace(/s$/, "")) || [];
      return meant.map((unit) => ({
        dimension: unit.dimension,
        si: number.value * unit.factor + unit.offset,
        scale: Math.abs(number.value * unit.factor),
      }));
    }

    /* Procedure -> how far its nearest figure is off, as a share of what was typed. */
    function figuresNear(wanted, share) {
      const [list, place] = figureLists(wanted.dimension, wanted.si);
      const filed = figures[list];
      const off = new Map();
      if (!filed) return off;
      const half = 0.5 / LOG_STEPS; // a figure is filed up to half a step from where it is
      const reach = (wanted.scale * share) / Math.abs(wanted.si || 1) + half;
      const until = place + Math.log1p(reach) * LOG_STEPS;
      const from = reach < 1 ? place + Math.log1p(-reach) * LOG_STEPS : -Infinity;
      for (let n = lowerBound(filed.steps, from); n < filed.steps.length && filed.steps[n] <= until; n += 1) {
        const away = Math.abs(wanted.si) * Math.abs(Math.expm1((filed.steps[n] - place) / LOG_STEPS));
        const miss = wanted.scale ? Math.max(0, away / wanted.scale - half) : 0;
        for (const number of filed.lists[n]) off.set(number, Math.min(miss, off.has(number) ? off.get(number) : Infinity));
      }
      return off;
    }

    function add(hits, number, score, reason) {
      const hit = hits.get(number) || { score: 0, reasons: [] };
      hit.score = Math.max(hit.score, score);
      hit.reasons.push(reason);
      hits.set(number, hit);
    }

    function hitsOfExact(key, quantities) {
      const hits = new Map();
      if (key) for (const number of key.numbers) add(hits, number, FIRST, { key: key.key });
      for (const wanted of quantities) {
        for (const [number, miss] of figuresNear(wanted, EXACT)) add(hits, number, FIRST - 1e4 * miss, { figure: wanted });
      }
      if (hits.size) return hits;
      for (const wanted of quantities) {
        for (const [number, miss] of figuresNear(wanted, NEAR)) add(hits, number, 1e3 - 1e4 * miss, { figure: wanted });
      }
      return hits;
    }

    /* A number without a unit is tried in every unit; whoever shows the hit must still find the number in its text. */
    function hitsOfUnfinished(text) {
      const hits = new Map();
      const number = readNumber(text);
      const begun = keysBeginning(text);
      for (const [procedure, key] of begun.numbers) add(hits, procedure, FIRST / 10, { key: key, begins: true });
      if (number && !number.rest) {
        for (const unit of new Set(Array.from(units.values()).flat())) {
          const scale = Math.abs(number.value * unit.factor);
          const wanted = { dimension: unit.dimension, si: number.value * unit.factor + unit.offset, scale: scale };
          for (const procedure of figuresNear(wanted, SAME_NUMBER).keys()) {
            add(hits, procedure, FIRST / 2, { number: text, figure: wanted });
          }
        }
      }
      return hits;
    }

    function fuzziness(term) {
      return term.length < 4 ? false : term.length < 6 ? 1 : 2;
    }

    function hitsOfWords(text) {
      const hits = new Map();
      const queries = [];
      for (const [parts, joined] of compounds(text, stop)) {
        if (joined) queries.push({ combineWith: "OR", queries: [joined, { combineWith: "AND", queries: parts }] });
        else queries.push(...parts);
      }
      const options = {
        boost: { title: 4 }, prefix: (term) => term.length > 2, tokenize: (term) => [term], processTerm: (term) => term,
      };
      const tries = [["AND", false], ["AND", fuzziness], ["OR", fuzziness]];
      for (const [combineWith, fuzzy] of tries) {
        if (hits.size || !queries.length) break;
        for (const found of mini.search({ combineWith: combineWith, queries: queries }, Object.assign({ fuzzy: fuzzy }, options))) {
          add(hits, found.id, found.score, { terms: found.terms });
        }
      }
      if (/\d/.test(text)) return hits;
      const begun = keysBeginning(text);
      for (const [number, key] of begun.numbers) {
        const whole = key === begun.key;
        const held = hits.get(number);
        const bonus = whole ? FIRST : 5;
        add(hits, number, (held ? held.score : 0) + bonus, { key: key, begins: !whole });
      }
      return hits;
    }

    /* A query is cut into keys and quantities (the longest run of chunks that is one), unfinished ones, and words. */
    function parts(query) {
      const chunks = query.trim().split(/\s+/).filter(Boolean).slice(0, 16);
      const found = [];
      const words = [];
      for (let at = 0; at < chunks.length; ) {
        let taken = 0;
        for (let length = Math.min(4, chunks.length - at); length > 0 && !taken; length -= 1) {
          const text = chunks.slice(at, at + length).join(" ");
          if (!/\d/.test(text)) continue;
          const key = exactKey(text);
          const quantities = readQuantity(text);
          if (!key && !quantities.length) continue;
          found.push(hitsOfExact(key, quantities));
          taken = length;
          if (key && SERIES.test(chunks[at + taken] || "")) taken += 1;
        }
        if (!taken) {
          if (/\d/.test(chunks[at])) found.push({ unfinished: chunks[at] });
          else words.push(chunks[at]);
          taken = 1;
        }
        at += taken;
      }
      const others = found.length + words.length > 1;
      const hits = found
        .filter((part) => !(others && /^\d{1,2}$/.test(part.unfinished || ""))) // "step 5": a small number narrows nothing
        .map((part) => (part instanceof Map ? part : hitsOfUnfinished(part.unfinished)));
      if (words.length && terms(words.join(" "), stop).concat(keysBeginning(words.join(" ")).numbers.size ? "k" : []).length) {
        hits.push(hitsOfWords(words.join(" ")));
      }
      return hits;
    }

    /* Procedures, best first, as {number, url, title, context, score, reasons}. All parts of the query must be met;
       when no procedure meets all, those that meet any. */
    function find(query) {
      const lists = parts(query);
      const whole = new Map();
      lists.forEach(function (hits) {
        for (const [number, hit] of hits) {
          const sum = whole.get(number) || { number: number, met: 0, score: 0, reasons: [] };
          sum.met += 1;
          sum.score += hit.score;
          sum.reasons.push(...hit.reasons);
          whole.set(number, sum);
        }
      });
      const every = Array.from(whole.values());
      const full = every.filter((hit) => hit.met === lists.length);
      return (full.length ? full : every)
        .sort((a, b) => b.met - a.met || b.score - a.score || a.number - b.number)
        .map(function (hit) {
          const [url, title, context] = index.procedures[hit.number];
          return Object.assign(hit, { url: url, title: title, context: index.contexts[context] });
        });
    }

    return { find: find, stop: stop };
  }

  global.witnessmarkSearch.Finder = Finder;
  global.witnessmarkSearch.EXACT = EXACT;
})(typeof window === "undefined" ? globalThis : window);
