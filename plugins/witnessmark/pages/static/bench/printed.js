/* A result with its band as text, in its unit and in the other system: the browser's copy of workings/printed.py and core/display.py. */
import { Exact, lesser, roundTo, wholeSteps } from "./exact.js";
import { counterpart, findUnit } from "./units.js";

/** A press force is never known better than this, so it is not printed finer. */
export const FORCE_STEPS = { "long ton": "0.01", "short ton": "0.01", tonne: "0.01", kN: "0.1", lbf: "1", N: "10", kgf: "1" };

const tenTo = (power) => (power < 0 ? new Exact(1n, 10n ** BigInt(-power)) : new Exact(10n ** BigInt(power)));
const named = (unit, kind) => (typeof unit === "string" ? findUnit(unit, kind) : unit);

/** The largest power of ten not over a size. */
export const tenStep = (size) => tenTo(Math.floor(Math.log10(size) + 1e-9));

/** '3600 psi': an SI value in a unit, rounded to a step of that unit. @param {number} si */
export function inUnit(si, kind, unit, step, side = "nearest") {
  const there = named(unit, kind);
  const [factor, offset] = there.doubles;
  let [value, whole] = [(si - offset) / factor, Exact.of(step)];
  if (10n ** 60n % whole.d) {                  // thirds have no last decimal: from a third to a millionth, to the same side
    value = roundTo(value, whole, side);
    whole = new Exact(1n, 10n ** 6n);
  }
  const number = inDecimals(wholeSteps(value, whole, side), whole);
  return there.symbol === "°" ? `${number}°` : `${number} ${there.symbol}`.trimEnd();
}

function inDecimals(steps, step) {
  let places = 0;
  while (10n ** BigInt(places) % step.d) places += 1;
  const size = (steps < 0n ? -steps : steps) * step.n * (10n ** BigInt(places) / step.d);
  const digits = size.toString().padStart(places + 1, "0");
  const whole = places ? digits.slice(0, -places) : digits;
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(?:[0-9]{3})+$)/g, ",") : whole;
  return (steps < 0n ? "-" : "") + grouped + (places ? `.${digits.slice(-places)}` : "");
}

const bare = (text, unit) => (unit.symbol && text.endsWith(unit.symbol) ? text.slice(0, -unit.symbol.length) : text).trim();

/** '11.0 long ton (9.3 to 13.1)' */
export function banded(si, kind, unit, step) {
  const [low, likely, high] = si.map((end) => inUnit(end, kind, unit, step));
  const own = named(unit, kind);
  return `${likely} (${bare(low, own)} to ${bare(high, own)})`;
}

/**
 * A result with both texts; `si` is one number or [low, likely, high].
 * A number with a side is worth what is printed, so that a mark used further on is the one read.
 */
export function value(name, kind, si, unit, step, side = "nearest") {
  const own = named(unit, kind);
  const exact = Exact.of(step);
  let worth = si;
  if (!Array.isArray(si) && side !== "nearest") {
    const [factor, offset] = own.doubles;
    worth = own.toSI(roundTo((si - offset) / factor, exact, side)).double();
  }
  const band = Array.isArray(worth) ? worth : [worth, worth, worth];
  const [printed, ...converted] = [own, ...counterpart(own, kind)].map((other) => {
    const there = other === own ? exact : convertedStep(band[1], stepThere(exact, own, other), other);
    return Array.isArray(worth) ? banded(worth, kind, other, there) : inUnit(worth, kind, other, there, side);
  });
  return { name, kind, low: band[0], likely: band[1], high: band[2], side, unit: own, printed, converted: converted.join(", ") };
}

/** A result in words: a direction, a verdict. */
export const words = (name, text) => ({ name, kind: "none", low: 0, likely: 0, high: 0, side: "nearest", unit: null, printed: text, converted: "" });

const stepThere = (step, unit, other) => tenStep(step.times(unit.factor).over(other.factor).double());

function convertedStep(si, step, unit) {
  const [factor, offset] = unit.doubles;
  const worth = Math.abs((si - offset) / factor);
  return worth ? lesser(step, tenTo(Math.floor(Math.log10(worth) + 1e-9) - 2)) : step;
}

/** A press force to the step usual for its unit. */
export const force = (si, unit) => inUnit(si, "press force", unit, FORCE_STEPS[unit.symbol]);

/** A band, or one number when the ends are the same. */
export const spread = (low, likely, high) => (low === high ? likely : [low, likely, high]);

/** '0.0180 to 0.0260 in': an accept band rounded inward to what the tool shows; null when nothing is left of it. */
export function accepted(name, kind, low, high, unit, step) {
  const own = named(unit, kind);
  const ends = [roundTo(own.fromSI(low), step, "up"), roundTo(own.fromSI(high), step, "down")];
  if (ends[0].against(ends[1]) >= 0) return null;
  const [from, to] = ends.map((end) => own.toSI(end).double());
  return between(name, kind, from, to, own, Exact.of(step), "inward", ["up", "down"]);
}

/** '7.2 to 11.2 lbf': a window as it comes out, to the nearest step; one figure where its ends are the same. */
export function span(name, kind, low, high, unit, step) {
  if (high - low <= 1e-9 * Math.abs(high)) return value(name, kind, low, unit, step);
  const own = named(unit, kind);
  const fine = lesser(Exact.of(step), tenStep((high - low) / own.factor.double() / 2.1));
  return between(name, kind, low, high, own, fine, "nearest", ["nearest", "nearest"]);
}

function between(name, kind, low, high, unit, step, side, sides) {
  const [printed, ...converted] = [unit, ...counterpart(unit, kind)].map((other) => {
    const there = other === unit ? step : lesser(stepThere(step, unit, other), tenStep((high - low) / other.factor.double() / 2.1));
    return `${bare(inUnit(low, kind, other, there, sides[0]), other)} to ${inUnit(high, kind, other, there, sides[1])}`;
  });
  return { name, kind, low, likely: (low + high) / 2, high, side, unit, printed, converted: converted.join(", ") };
}
