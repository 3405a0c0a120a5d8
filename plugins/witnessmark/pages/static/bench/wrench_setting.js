/* Setting a torque wrench: graduations, its range, an adapter in the way, and rounds. The browser's copy of workings/wrench.py. */
import { Exact, lesser, nearestWhole, roundTo, TOLERANCE } from "./exact.js";
import { outcome, refusal, run } from "./given.js";
import { inUnit, value } from "./printed.js";

const PASS_SHARES = { 1: [], 2: [70], 3: [50, 75], 4: [25, 50, 75] };

/**
 * What to set for a torque, or the lowest and highest setting for a window, and what the fastener then gets.
 * @param {Object<string, string>} texts torque, wrench lowest, highest, graduation, accuracy and length, adapter length and angle, passes
 */
export const wrenchSetting = (texts) => run("wrench-setting", texts, compute);

function compute(given) {
  const { torque } = given;
  const found = torque.low < torque.high ? windowOn(given, torque.low, torque.high) : settingOn(given, torque.likely);
  return Array.isArray(found) ? outcome(found) : outcome([], [found]);
}

/** Torque at the fastener over torque on the wrench: 1 without an adapter. */
function lever(given) {
  if (!given["adapter length"]) return 1;
  if (!given["wrench length"]) {
    return refusal("the adapter changes the torque and the wrench's length is not given", "measure from the drive square to the middle of the hand");
  }
  const length = given["wrench length"].likely;
  const effective = length + given["adapter length"].likely * Math.cos(given["adapter angle"]?.likely ?? 0);
  if (effective <= 0 || length <= 0) {
    return refusal("turned back this far the adapter takes all the leverage away", "turn the adapter in line or square to the wrench");
  }
  return effective / length;
}

/** One end of the wrench's range in a unit, exactly: a setting at the very end is inside. */
const end = (given, unit) => given.quantity.low.times(given.quantity.unit.factor).over(unit.factor);

function windowOn(given, low, high) {
  const ratio = lever(given);
  if (typeof ratio !== "number") return ratio;
  const { unit, low: graduation } = given["wrench graduation"].quantity;
  const out = given["wrench accuracy"]?.high ?? 0;
  if (out >= 1) return refusal("a wrench that may be out by all it shows says nothing", "have the wrench checked");
  const ends = [roundTo(unit.fromSI(low / (1 - out) / ratio), graduation, "up"), roundTo(unit.fromSI(high / (1 + out) / ratio), graduation, "down")];
  const reach = `${inUnit(low, "torque", unit, "0.1")} to ${inUnit(high, "torque", unit, "0.1")}`;
  if (ends[0].against(ends[1]) > 0) return refusal(`no graduation of this wrench keeps the fastener inside ${reach}`, "use a finer wrench, or one that is out by less");
  const lowest = given["wrench lowest"] ? end(given["wrench lowest"], unit) : ends[0];
  const highest = given["wrench highest"] ? end(given["wrench highest"], unit) : ends[1];
  if (ends[0].against(lowest) < 0 || ends[1].against(highest) > 0) {
    return refusal(`settings for ${reach} lie outside the range of the wrench`, `use a wrench for ${reach} at the fastener`);
  }
  return [value("lowest setting", "torque", unit.toSI(ends[0]).double(), unit, graduation, "up"),
    value("highest setting", "torque", unit.toSI(ends[1]).double(), unit, graduation, "down")];
}

function settingOn(given, torque) {
  const ratio = lever(given);
  if (typeof ratio !== "number") return ratio;
  const { unit, low: graduation } = given["wrench graduation"].quantity;
  const wanted = unit.fromSI(torque / ratio);
  const setting = roundTo(wanted, graduation, "down");
  const [least, most] = [given["wrench lowest"], given["wrench highest"]];
  const reach = inUnit(torque / ratio, "torque", unit, "0.1");
  if (setting.n <= 0n) return refusal(`${reach} on the wrench is less than one graduation`, "use a smaller wrench");
  const under = least && setting.against(end(least, unit)) < 0;
  if (under || (most && wanted.against(end(most, unit).times(Exact.of(1n).plus(TOLERANCE))) > 0)) {
    return refusal(`${reach} on the wrench is outside its range${least && most ? `, ${least.text} to ${most.text}` : ""}`,
      `use a wrench that can be set to ${reach}${under ? "" : ", or a longer adapter in line with a new setting"}`);
  }
  const worth = (number) => number.times(unit.factor).double();
  const out = given["wrench accuracy"]?.high ?? 0;
  const gets = worth(setting) * ratio;
  const made = [value("setting", "torque", worth(setting), unit, graduation, "down"),
    value("delivered torque", "torque", out ? [gets * Math.max(0, 1 - out), gets, gets * (1 + out)] : gets, unit, lesser(graduation, Exact.of(1n)))];
  const rounds = given.passes ? nearestWhole(given.passes.likely) : 1;
  (PASS_SHARES[rounds] ?? []).forEach((share, at) => {
    const part = roundTo(wanted.times(new Exact(BigInt(share), 100n)), graduation, "down");
    made.push(value(`pass ${at + 1}`, "torque", worth(part), unit, graduation, "down"));
  });
  if (rounds > 1 && PASS_SHARES[rounds]) made.push(value(`pass ${rounds}`, "torque", worth(setting), unit, graduation, "down"));
  return made;
}
