/* Height of a disc pack and the wear that is left in it: the browser's copy of workings/disc_pack.py (pack). */
import { hypotenuse } from "./exact.js";
import { outcome, refused, run } from "./given.js";
import { value } from "./printed.js";

const FINE = { in: "0.001", mm: "0.01" };

/** @param {Object<string, string>} texts the inputs of the working disc-pack */
export const discPack = (texts) => run("disc-pack", texts, compute);

const half = (given) => (given ? (given.high - given.low) / 2 : 0);

function compute(given) {
  const discs = given["friction discs"].likely;
  const plates = given["steel plates"]?.likely ?? 0;
  const [disc, plate] = [given["friction disc"], given["steel plate"]];
  if (plates && !plate) return refused("how thick a steel plate is, is not given", "measure one, or give no plates");
  const unit = disc.quantity.unit.system === "metric" ? "mm" : "in";
  const length = (name, si, side) => value(name, "length", si, unit, FINE[unit], side);
  const height = discs * disc.likely + plates * (plate?.likely ?? 0);
  const worst = discs * half(disc) + plates * half(plate);
  const made = [length("height", height)];
  if (half(disc) || half(plate)) {
    made.push(length("likely tolerance", hypotenuse(Math.sqrt(discs) * half(disc), Math.sqrt(plates) * half(plate))), length("worst tolerance", worst, "up"));
  }
  const least = leastHeight(given, discs, plates);
  if (least === null) return outcome(made);
  if (least >= height) return refused("the worn pack is not thinner than the new one", "check which figures are new and which are worn");
  made.push(length("least height", least, "up"), length("wear allowed", height - least, "down"));
  if (!given["pack now"]) return outcome(made);
  const now = given["pack now"].likely;
  made.push(value("wear left", "share", Math.min(Math.max((now - least) / (height - least), 0), 1), "%", "1"));
  return outcome(made, [], judged(given["pack now"].text, now, least, height + worst));
}

/** The pack that is worn out: as given, or from each part's own limit; a plate without one does not wear. */
function leastHeight(given, discs, plates) {
  if (given["least pack"]) return given["least pack"].likely;
  if (!given["worn friction disc"]) return null;
  const plate = given["worn steel plate"] ?? given["steel plate"];
  return discs * given["worn friction disc"].likely + plates * (plate?.likely ?? 0);
}

function judged(text, now, least, most) {
  if (now < least * (1 - 1e-9)) return [`${text} is under the least height: the pack is worn out`];
  return now > most + 1e-9 ? [`${text} is thicker than a new pack: dirt, oil, a warped plate or a disc too many`] : [];
}
