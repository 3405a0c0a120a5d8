/* End play changed by a gasket, and a bearing set by shim from what is measured: the browser's copy of workings/end_play.py. */
import { outcome, refused, run } from "./given.js";
import { banded, inUnit, span, spread, value, words } from "./printed.js";

const FINE = { in: "0.0001", mm: "0.001" };

/** @param {Object<string, string>} texts the inputs of the working gasket-end-play */
export const gasketEndPlay = (texts) => run("gasket-end-play", texts, computeGasket);
/** @param {Object<string, string>} texts the inputs of the working bearing-shim */
export const bearingShim = (texts) => run("bearing-shim", texts, computeShim);

const unitOf = (given) => (given.quantity.unit.system === "metric" ? "mm" : "in");

/** A gasket squeezed by a share of itself: least, likely, most. */
function inPlace(thickness, squeeze) {
  const { low, likely, high } = squeeze ?? { low: 0, likely: 0, high: 0 };
  return [thickness.low * (1 - high), thickness.likely * (1 - likely), thickness.high * (1 - low)];
}

function computeGasket(given) {
  if (["old squeeze", "new squeeze"].some((name) => given[name] && given[name].high >= 1)) {
    return refused("a gasket cannot be squeezed to nothing", "give the share of its thickness that it loses: paper 10 to 20 %, cork and rubber 25 to 40 %");
  }
  const [old, fresh] = [inPlace(given["old gasket"], given["old squeeze"]), inPlace(given["new gasket"], given["new squeeze"])];
  const change = [fresh[0] - old[2], fresh[1] - old[1], fresh[2] - old[0]];
  const unit = unitOf(given["new gasket"]);
  const told = (name, kind, band) => value(name, kind, spread(...band), unit, FINE[unit]);
  const made = [told("old gasket in place", "length", old), told("new gasket in place", "length", fresh), told("change of end play", "clearance", change)];
  const now = given["end play now"];
  if (!now) return outcome(made);
  const after = [now.low + change[0], now.likely + change[1], now.high + change[2]];
  return outcome([...made, told("end play after", "clearance", after)], [], judged(after, given.wanted, unit));
}

function judged(after, wanted, unit) {
  if (!wanted || (after[0] >= wanted.low * (1 - 1e-9) && after[2] <= wanted.high * (1 + 1e-9))) return [];
  const told = banded(after, "clearance", unit, FINE[unit]);
  return after[2] < wanted.low || after[0] > wanted.high ? [`end play of ${told} is outside ${wanted.text}: another gasket, or shims`]
    : [`end play of ${told} may be outside ${wanted.text}: measure it with the new gasket pulled down`];
}

const loosens = (given) => (given["more shim"].text === "loosens" ? 1 : -1);
const sign = (given) => (given.setting.text === "end play" ? 1 : -1);

function computeShim(given) {
  const unit = unitOf(given.wanted);
  const told = (si, kind) => inUnit(si, kind, unit, FINE[unit]);
  if (!given.gap && !(given["shim now"] && given["play read"])) {
    return refused("nothing is measured yet", "give the gap with the bearing snug and no shim, or the shim now in and the play read with it");
  }
  if (given.gap && given["play read"]) return refused("a gap and a play are two ways to the same shim", "give one of them");
  const [low, likely, high] = needed(given);
  if (low < 0) {
    return refused(`this setting would need ${told(low, "length")} of shim: less than none`,
      "measure again; if it is so, metal must come off the face that carries the shim");
  }
  const made = [span("shim", "length", low, high, unit, FINE[unit])];
  if (given["shim now"]) {
    const difference = likely - given["shim now"].likely;
    made.push(words("to do", Math.abs(difference) < 1e-7 ? "leave it" : `${difference > 0 ? "put in" : "take out"} ${told(Math.abs(difference), "length")}`));
  }
  if (!given["shim made"]) return outcome(made);
  const left = leaves(given);
  const what = left >= 0 ? "end play" : "preload";
  made.push(value("leaves", "clearance", Math.abs(left), unit, FINE[unit]), words("that is", what));
  const ends = [given.wanted.low, given.wanted.high].map((end) => sign(given) * end);
  const outside = !(Math.min(...ends) - 1e-9 <= left && left <= Math.max(...ends) + 1e-9);
  return outcome(made, [], outside ? [`a shim of ${given["shim made"].text} leaves ${told(Math.abs(left), "clearance")} ${what}, outside ${given.wanted.text}`] : []);
}

/** Least, likely and most shim. A gap is a play of minus itself with no shim in. */
function needed(given) {
  const way = loosens(given);
  const measured = given.gap ?? given["play read"];
  const start = given.gap ? 0 : given["shim now"].likely;
  const read = ["low", "likely", "high"].map((end) => (given.gap ? -way : 1) * measured[end]);
  const shim = (wanted, play) => start + way * (sign(given) * wanted - play);
  const ends = [given.wanted.low, given.wanted.high].flatMap((wanted) => [shim(wanted, read[0]), shim(wanted, read[2])]);
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  return [least, Math.min(Math.max(shim(given.wanted.likely, read[1]), least), most), most];
}

/** Play over zero, preload under it, with the shim that was made. */
function leaves(given) {
  const made = given["shim made"].likely;
  return given.gap ? loosens(given) * (made - given.gap.likely) : given["play read"].likely + loosens(given) * (made - given["shim now"].likely);
}
