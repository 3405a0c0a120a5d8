/* A measured value held against the limits of its place: pure functions. */
import { holds } from "./whose.js";

const TOLERANCE = 1e-9;     // of the limit: what doubles lose in a change of units is no fault of the reading

/** The number typed, as a shop writes it: 0.008, .008, 1,100, 5/8, 1-1/2. null where it is none; a decimal comma is none. */
export function numberOf(typed) {
  const text = typed.trim().replace("−", "-");
  const mixed = /^(-?)(?:(\d{1,4})[- ])?(\d{1,4})\/(\d{1,4})$/.exec(text);
  if (mixed) {
    const part = Number(mixed[3]) / Number(mixed[4]);
    return Number.isFinite(part) ? (mixed[1] ? -1 : 1) * (Number(mixed[2] || 0) + part) : null;
  }
  if (!/^-?([1-9]\d{0,2}(,\d{3})+|\d{1,9})?(\.\d{1,9})?$/.test(text) || !/\d/.test(text)) return null;
  return Number(text.replaceAll(",", ""));
}

/** @param {number} value @param {[string, number, number]} unit symbol, factor, offset; gives SI */
export function toSi(value, unit) {
  return value * unit[1] + unit[2];
}

/** The limits of a reading in the case on the bench; none while the variant is not known. */
export function limitsOf(told, combination, main) {
  return (combination && told.cases.find((each) => holds(each, combination, main)) || { limits: [] }).limits;
}

/**
 * A reading as it was typed; what is taken down in words is judged by nobody.
 * @returns {{verdict: "none"|"inside"|"above"|"below"|"no number", limit: ?object}}
 */
export function judgeTyped(told, typed, symbol, limits) {
  const unit = told.units.find((each) => each[0] === symbol) || told.units[0];
  if (!unit || !typed.trim()) return { verdict: "none", limit: null };
  const number = numberOf(typed);
  return number === null ? { verdict: "no number", limit: null } : judge(toSi(number, unit), limits);
}

/** "0.006 to 0.012 in (0.16 to 0.30 mm)", "never more than 22 long ton" */
export const limitText = (limit) => `${limit.word} ${limit.text}`.trim();

const over = (value, limit) => value - limit > TOLERANCE * Math.abs(limit);

/**
 * @param {number} si
 * @param {{role: string, low: ?number, high: ?number, open: boolean}[]} limits
 * @returns {{verdict: "none"|"inside"|"above"|"below", limit: ?object}} the first limit that is broken
 */
export function judge(si, limits) {
  for (const limit of limits) {
    if (limit.role === "reject") {
      const below = limit.low === null || (limit.open ? over(si, limit.low) : !over(limit.low, si));
      const above = limit.high === null || (limit.open ? over(limit.high, si) : !over(si, limit.high));
      if (below && above) return { verdict: limit.high === null ? "above" : "below", limit };
      continue;
    }
    const ceiling = limit.role === "floor" ? null : limit.high;
    const floor = limit.role === "ceiling" || limit.role === "stop" ? null : limit.low;
    const exact = limit.open ? (a, b) => !over(b, a) : over;           // "over 0.05 in" does not hold at 0.05 in
    if (ceiling !== null && exact(si, ceiling)) return { verdict: "above", limit };
    if (floor !== null && exact(floor, si)) return { verdict: "below", limit };
  }
  return { verdict: limits.length ? "inside" : "none", limit: limits[0] || null };
}
