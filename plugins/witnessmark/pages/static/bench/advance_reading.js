/* How far a hub climbs its taper and what a measured advance says: the browser's copy of that part of workings/taper_advance.py. */
import { outcome, refused, run } from "./given.js";
import { accepted, value, words } from "./printed.js";

const STEPS = { in: "0.0001", thou: "0.1", mm: "0.001", "µm": "1" };

/** @param {Object<string, string>} texts the inputs of the working taper-advance */
export const advanceReading = (texts) => run("taper-advance", texts, compute);

function compute(given) {
  const wrong = senseless(given);
  if (wrong) return refused(wrong, "check taper, length and diameters");
  const { force, friction } = given;
  const { unit } = given["mean diameter"].quantity;
  const rising = [[force.low, friction.high], [force.likely, friction.likely], [force.high, friction.low]].map(([newtons, mu]) => advance(given, newtons, mu));
  const made = [value("advance", "length", rising, unit, STEPS[unit.symbol] ?? "0.000001")];
  let [low, high] = [advance(given, force.likely, friction.high), advance(given, force.likely, friction.low)];
  if (given["scale division"]) {
    const division = given["scale division"].quantity;
    const band = accepted("advance to accept", "length", low, high, division.unit, division.low);
    if (!band) {
      return outcome(made, [], [`between the advances at either end of the friction band there is no full division of ${division.text}: read it on a finer tool`]);
    }
    made.push(band);
    [low, high] = [band.low, band.high];
  }
  if (given["measured advance"]) {
    const measured = given["measured advance"].likely;
    const slack = 1e-9 * high;
    made.push(words("reading", measured < low - slack ? "looks fouled" : measured > high + slack ? "looks oiled" : "dry as expected"));
    const taper = given.taper.likely;
    const shown = force.likely * give(given) / (measured * taper * Math.PI * given.length.likely) - taper / 2;
    if (shown > 0) made.push(value("friction it shows", "friction", shown, "", "0.01"));
  }
  return outcome(made);
}

const square = (number) => number * number;
const sizes = (given) => [given["mean diameter"].likely, given["hub diameter"].likely, given["shaft bore"]?.likely ?? 0];

/** What is wrong with the sizes, or "". */
function senseless(given) {
  const [diameter, outside, bore] = sizes(given);
  const half = given.length.likely * given.taper.likely / 2;
  if (half >= diameter) return "a taper this steep runs to a point within its length";
  if (outside <= diameter + half) return "the hub is no larger outside than the large end of the taper";
  if (outside <= diameter * (1 + 1e-6)) return "the hub is no larger outside than the shaft";
  if (bore >= diameter * (1 - 1e-6)) return "the bore of the shaft is as large as the shaft";
  return given["hub poisson"].likely >= 0.5 || given["shaft poisson"].likely >= 0.5 ? "no metal has a Poisson's ratio of a half or more" : "";
}

/** How far bore and shaft give way together, for each unit of pressure and diameter, in 1/Pa. */
function give(given) {
  const [d, outside, bore] = sizes(given);
  const hub = (square(outside) + square(d)) / (square(outside) - square(d));
  const shaft = (square(d) + square(bore)) / (square(d) - square(bore));
  return (hub + given["hub poisson"].likely) / given["hub modulus"].likely + (shaft - given["shaft poisson"].likely) / given["shaft modulus"].likely;
}

/** Along the shaft, in m, at one force and one friction. */
function advance(given, newtons, friction) {
  const [diameter] = sizes(given);
  const taper = given.taper.likely;
  const pressure = newtons / (Math.PI * diameter * given.length.likely * (friction + taper / 2));
  return pressure * diameter * give(given) / taper;
}
