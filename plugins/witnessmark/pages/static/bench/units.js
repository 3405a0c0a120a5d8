/* The closed table of units in the browser. Sizes and spellings come from the build, which writes units_table.js from core/units.py. */
import { Exact } from "./exact.js";
import { AMBIGUOUS, INDEX, KINDS, UNITS } from "./units_table.js";

/** Why a text was refused, and what to write instead. */
export class Problem {
  constructor(message, mend) {
    this.message = message;
    this.mend = mend;
  }
}

/** SI value = value * factor + offset, exactly; `doubles` for numbers that are doubles already. */
class Unit {
  constructor([symbol, factor, offset, system, there]) {
    Object.assign(this, { symbol, system, there, factor: Exact.of(factor), offset: Exact.of(offset) });
    this.doubles = [this.factor.double(), this.offset.double()];
  }

  toSI(value) { return value.times(this.factor).plus(this.offset); }

  /** @param {number|Exact} si a double to its last bit */
  fromSI(si) { return (si instanceof Exact ? si : Exact.bitwise(si)).minus(this.offset).over(this.factor); }
}

const units = UNITS.map((row) => new Unit(row));
const folded = (key) => key.toLowerCase().replaceAll("\u00b5", "\u03bc").replaceAll("ß", "ss");
const SAME = { "²": "2", "³": "3", "º": "°", "˚": "°", "μ": "µ", "^": "" };

export { KINDS };

/** A spelling with what may stand for another thing made alike. */
function keyOf(spelling) {
  const same = spelling.replace(/[²³º˚μ^]/g, (sign) => SAME[sign]);
  return same.replace(/[ \-·⋅∙•*.]+/g, "·").replace(/·?\/·?|·per·/g, "/").replace(/^·+|·+$/g, "");
}

/** The units a kind may be written in, the usual ones first. */
export const unitsOf = (kind) => [...new Set(Object.values(INDEX[kind]))].map((number) => units[number]);

/**
 * The unit a reader means under a kind; refuses what could be two units, such as a bare ton.
 * @returns {Unit|Problem}
 */
export function findUnit(spelling, kind) {
  const key = keyOf(spelling);
  const known = INDEX[kind];
  const has = (name) => Object.hasOwn(known, name);
  const found = has(key) ? key : has(folded(key)) ? folded(key) : null;
  if (found !== null && (has(key) || units[known[found]].system !== "metric" || [...key].length > 4)) return units[known[found]];
  const symbols = unitsOf(kind).slice(0, 6).map((unit) => unit.symbol).filter(Boolean);
  let offers = symbols.length ? `write ${[symbols.slice(0, -1).join(", "), symbols.at(-1)].filter(Boolean).join(" or ")}` : "write a plain number";
  if (!key) return new Problem(`the unit is missing (${kind})`, `${offers} after the number`);
  if (Object.hasOwn(AMBIGUOUS, folded(key))) return new Problem(`“${spelling}” could be more than one unit`, `write ${AMBIGUOUS[folded(key)]}`);
  const other = Object.keys(INDEX).find((name) => Object.hasOwn(INDEX[name], key));
  if (other) return new Problem(`“${spelling}” measures ${other}, not ${kind}`, offers);
  const names = Object.keys(known);
  const size = [...key].length;
  const near = names.find((name) => folded(name) === folded(key)) ?? (size > 2 && size <= 40 ? closest(key, names) : undefined);
  if (near !== undefined && units[known[near]].symbol) offers = `write ${units[known[near]].symbol} if that is meant`;
  return new Problem(`“${[...spelling].slice(0, 40).join("")}” is no unit for ${kind}`, offers);
}

/** The unit or units in which the other system shows this one; often none. */
export function counterpart(unit, kind) {
  return (unit.there[kind] ?? []).map((key) => units[INDEX[kind][key]]);
}

/** The name most like a word, where enough of it is alike: the longest runs in common, left and right of each other. */
export function closest(word, names) {
  let best = null;
  for (const name of names) {
    const likeness = 2 * inCommon(name, word) / (name.length + word.length);
    if (likeness >= 0.6 && (!best || likeness > best[0] || (likeness === best[0] && name > best[1]))) best = [likeness, name];
  }
  return best?.[1];
}

function inCommon(one, other) {
  let [from, there, longest] = [0, 0, 0];
  for (let i = 0; i < one.length; i += 1) {
    for (let j = 0; j < other.length; j += 1) {
      let run = 0;
      while (i + run < one.length && j + run < other.length && one[i + run] === other[j + run]) run += 1;
      if (run > longest) [from, there, longest] = [i, j, run];
    }
  }
  if (!longest) return 0;
  return longest + inCommon(one.slice(0, from), other.slice(0, there)) + inCommon(one.slice(from + longest), other.slice(there + longest));
}
