/* Whether a press as the reader tells it can be believed: its area must agree with its own nameplate. Pure functions. */
import { fixed } from "./exact.js";
import { filled } from "./element.js";
import { givenInputs, unusual } from "./given.js";
import { ramOf } from "./press_card.js";
import { force } from "./printed.js";
import { say } from "./my_bench_words.js";

/** Area times pressure may differ from the nameplate's force by this share: nameplates round, and name another ton. */
const APART = 0.15;
const sentence = (problem) => `${problem.message}; ${problem.mend ?? problem.instead}.`;

/**
 * @param {Object<string, string>} texts inputs of a press card that belong to the press
 * @returns {{problems: string[], agree: string, unusual: string[]}}
 */
export function judgePress(texts) {
  const { given, problems } = givenInputs("press-card", texts);
  if (problems.length) return { problems: problems.map(sentence), agree: "", unusual: [] };
  if (!given["rated force"] || !given["rated pressure"]) return { problems: [say.both], agree: "", unusual: [] };
  if (given.side?.text === "pull" && !given.area && !given.rod) return { problems: [say.rod], agree: "", unusual: [] };
  const ram = ramOf(given);
  if (ram.refusals) return { problems: ram.refusals.map(sentence), agree: "", unusual: [] };
  if (!given.area && !given.bore) return { problems: [filled(say.missing, "area")], agree: "", unusual: [] };
  const { unit } = given["rated force"].quantity;
  const [makes, says] = [ram.area * given["rated pressure"].likely, given["rated force"].likely];
  const told = [force(makes, unit), force(says, unit)];
  if (Math.abs(makes / says - 1) <= APART) return { problems: [], agree: filled(say.kept, ...told), unusual: unusual("press-card", given) };
  const off = fixed(Math.abs(makes / says - 1) * 100, 0);
  return { problems: [filled(say.apart, ...told, off), ...guesses(says / makes, Boolean(given.area))], agree: "", unusual: [] };
}

/** What to measure, the likeliest slip first. @param {number} ratio nameplate over area times pressure */
function guesses(ratio, byArea) {
  const near = (much) => Math.abs(ratio / much - 1) < 0.15;
  const found = byArea ? [say["measure area"]] : [say["measure bore"]];
  if (!byArea && near(4)) found.unshift(say.radius);
  if (!byArea && near(1 / 4)) found.unshift(say.double);
  if (byArea && (near(6.4516) || near(1 / 6.4516))) found.unshift(say.inches);
  return found;
}
