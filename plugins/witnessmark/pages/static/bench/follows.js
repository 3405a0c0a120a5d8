/* What follows from the readings of a step: the working that waits for them, run on the spot with what was read.
   It stands beside what the build printed, never instead of it, and says nothing when anything goes wrong. */
import { advanceReading } from "./advance_reading.js";
import { discPack } from "./disc_pack.js";
import { element } from "./element.js";
import { bearingShim, gasketEndPlay } from "./end_play.js";
import { gearShift } from "./gear_shift.js";
import { numberOf } from "./judge.js";
import { shimStack } from "./shim_stack.js";
import { holds } from "./whose.js";

const RUN = { "bearing-shim": bearingShim, "disc-pack": discPack, "gasket-end-play": gasketEndPlay, "gear-shift": gearShift, "shim-stack": shimStack, "taper-advance": advanceReading };

/** The readings as an author would type them, commas between; null while one is missing, is no number, or stands twice. */
export function readingsText(readings) {
  const texts = readings.map((standing) => (standing.length === 1 && numberOf(standing[0].value) !== null ? `${standing[0].value} ${standing[0].unit}` : null));
  return texts.length && texts.every(Boolean) ? texts.join(", ") : null;
}

/**
 * @param {{working: string, title: string, input: string, cases: object[]}} follow of the page's data
 * @param {string} text the readings
 * @param {object} combination of the machine on the bench
 * @param {string} main its own carrier
 * @returns {?Element}
 */
export function followed(follow, text, combination, main, say) {
  try {
    const found = follow.cases.find((each) => holds(each, combination, main));
    const out = RUN[follow.working]({ ...found.inputs, [follow.input]: text });
    if (out.problems.length) return null;
    return element("div", { class: "told follows", role: "status" }, element("b", { class: "verdict" }, `${say.follows}: ${follow.title}`),
      ...out.refusals.map((one) => element("p", {}, element("b", {}, `${say.refused}: `), `${one.message}. ${say.instead}: ${one.instead}.`)),
      ...out.values.map((one) => element("p", {}, `${one.name}: `, element("b", {}, one.printed), one.converted ? ` (${one.converted})` : "")),
      ...out.warnings.map((one) => element("p", {}, one)),
      element("p", {}, `${say["reckoned with"]}: ${[`${follow.input} ${text}`, ...Object.entries(found.inputs).map((pair) => pair.join(" "))].join("; ")}.`));
  } catch {
    return null;
  }
}
