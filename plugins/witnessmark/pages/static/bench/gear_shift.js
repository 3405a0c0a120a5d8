/* Bevel gear backlash at the radius of the dial, and how far to move the gear: the browser's copy of workings/backlash.py. */
import { Exact, lesser, roundTo } from "./exact.js";
import { outcome, refused, run } from "./given.js";
import { accepted, inUnit, span, spread, value, words } from "./printed.js";
import { findUnit } from "./units.js";

const FINE = { in: "0.0001", mm: "0.001" };
const SPREAD = 76.2e-6;
const TEN = Exact.of(10n);

/** @param {Object<string, string>} texts the inputs of the working backlash */
export const dialWindow = (texts) => run("backlash", texts, computeWindow);
/** @param {Object<string, string>} texts the inputs of the working gear-shift */
export const gearShift = (texts) => run("gear-shift", texts, computeShift);

const atRadius = (backlash, readAt, wantedAt) => backlash * wantedAt / readAt;
const unitOf = (given) => (given.quantity.unit.system === "metric" ? "mm" : "in");

function computeWindow(given) {
  const [pitch, dial, gap] = [given["pitch radius"].likely, given["dial radius"].likely, given["pitch window"]];
  if (!(dial / pitch >= 0.2 && dial / pitch <= 5)) {
    return refused(`a dial at ${given["dial radius"].text} does not read a gear of ${given["pitch radius"].text} pitch radius`,
      "check that both are radii, from the centre of the gear");
  }
  const unit = unitOf(gap);
  const [low, high] = [gap.low, gap.high].map((each) => atRadius(each, pitch, dial));
  const made = [span("exact dial window", "clearance", low, high, unit, FINE[unit])];
  if (given["dial division"] && low < high) {
    const division = given["dial division"];
    const usable = accepted("dial window", "clearance", low, high, division.quantity.unit, division.quantity.low);
    if (!usable) return refused(`a dial in ${division.text} divisions cannot show ${made[0].printed}`, "use a finer dial, or set it at a larger radius");
    made.push(usable);
  }
  return outcome(made);
}

function computeShift(given) {
  const cone = pitchAngle(given);
  if (cone === null) return refused("the pitch angle of the gear is not known", "give it, or the teeth of gear and pinion where the shafts are square");
  const flank = given["pressure angle"].likely;
  const spiral = given["spiral angle"]?.likely ?? 0;
  if (!(flank >= 0.1 && flank <= 0.7 && cone > 0 && cone < Math.PI / 2 && spiral < 1.2)) {
    return refused("these angles are of no bevel gear", "pressure angle 14.5 to 25°, pitch angle over 0 and under 90°, spiral under 60°");
  }
  const factor = 2 * Math.tan(flank) * Math.sin(cone) / Math.cos(spiral);
  const unit = unitOf(given["pitch window"]);
  const made = [value("backlash per shift", "gear ratio", factor, "", "0.001")];
  if (!given.readings) return outcome(made);
  const [found, warnings] = fromReadings(given, factor, unit);
  return outcome([...made, ...found], [], warnings);
}

function pitchAngle(given) {
  if (given["pitch angle"]) return given["pitch angle"].likely;
  return given["gear teeth"] && given["pinion teeth"] ? Math.atan2(given["gear teeth"].likely, given["pinion teeth"].likely) : null;
}

/** Backlash at pitch from the readings, the shift that brings it to the middle of its window, and what that leaves. */
function fromReadings(given, factor, unit) {
  const [pitch, dial, gap] = [given["pitch radius"].likely, given["dial radius"].likely, given["pitch window"]];
  const places = given.readings.several.map((each) => atRadius(each.likely, dial, pitch));
  const mean = places.reduce((sum, each) => sum + each, 0) / places.length;
  const wanted = (gap.low + gap.high) / 2;
  const length = findUnit(unit, "length");
  const fine = Exact.of(FINE[unit]).times(TEN);
  const shim = given["shim step"]?.quantity;
  const step = shim ? shim.low.times(shim.unit.factor) : fine.times(length.factor);
  const inside = places.every((place) => gap.low * (1 - 1e-9) <= place && place <= gap.high * (1 + 1e-9));
  const steps = inside ? 0 : roundTo(Math.abs(mean - wanted) / factor, step, "nearest").double();
  const shift = value("gear shift", "length", steps, unit, lesser(fine, step.over(length.factor)));
  const move = given.move?.likely ?? shift.likely;
  const closer = mean > wanted;
  const left = closer ? mean - factor * move : mean + factor * move;
  const way = inside && !given.move ? "leave it: every place is inside the window" : closer ? "towards the pinion" : "away from the pinion";
  const told = (si) => inUnit(si, "clearance", unit, FINE[unit]);
  const [least, most] = [Math.min(...places), Math.max(...places)];
  const warnings = [];
  if (most - least > SPREAD * 1.000001) {
    warnings.push(`the readings differ by ${told(most - least)} at pitch round the gear: that is run-out, find it before any shim is moved`);
  }
  if (left < gap.low * (1 - 1e-9) || left > gap.high * (1 + 1e-9)) warnings.push(`this move leaves ${told(left)}, outside ${gap.text}`);
  return [[value("backlash at pitch", "clearance", spread(least, mean, most), unit, FINE[unit]), words("which way", way), shift,
    value("leaves", "clearance", left, unit, FINE[unit])], warnings];
}
