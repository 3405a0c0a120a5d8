/* How one press, with one gauge, reaches a force: the browser's copy of workings/press_card.py and press_gauge.py.
   Of a draw stud it is given the section in m² (the build reads the thread), its yield as any other input. */
import { Exact, fixed, hypotenuse, lesser, plainly, roundTo } from "./exact.js";
import { outcome, refusal, refused, run } from "./given.js";
import { FORCE_STEPS, force, inUnit, tenStep, value } from "./printed.js";
import { findUnit } from "./units.js";
import { GAUGES } from "./workings_table.js";

export const SHARES = [50, 75, 90, 100];

/** A ram's area in m² and its gauge, all but the area in gauge units; `rated` is the reading at the ram's rating. */
class Press {
  constructor(area, unit, fullScale, division, accuracy, rated, gaugeLimit) {
    Object.assign(this, { area, unit, fullScale, division, accuracy, rated, gaugeLimit });
    this.pascals = unit.factor.double();
    this.limit = Math.min(rated, gaugeLimit);
    /** Class share of full scale and half a division, as squares. */
    this.uncertainty = hypotenuse(accuracy * fullScale.double(), division.double() / 2);
  }

  get limitWords() {
    if (this.rated <= this.gaugeLimit) return "nameplate";
    return this.fullScale.against(this.gaugeLimit) === 0 ? "end of the gauge" : "limit set for the gauge";
  }

  reading(newtons) { return newtons / this.area / this.pascals; }
  force(reading) { return reading * this.pascals * this.area; }
  down(reading) { return roundTo(reading, this.division, "down"); }
  up(reading) { return roundTo(reading, this.division, "up"); }
  shown(reading) { return this.text(reading, this.division); }
  finely(reading) { return this.text(reading, tenStep(this.division.double() / 20)); }
  text(reading, step) { return inUnit((reading instanceof Exact ? reading.double() : reading) * this.pascals, "pressure", this.unit, step); }
}

/** The card for these inputs as typed, or why there is none. @param {Object<string, string|object>} texts */
export const pressCard = (texts) => run("press-card", texts, compute);

function compute(given) {
  const job = jobOf(given);
  const press = ramOf(given);
  if (!(press instanceof Press)) return press;
  const wrong = wrongJob(job) ?? wrongStud(given, job);
  if (wrong) return outcome([], [wrong]);
  const verdict = judge(press, job);
  if (verdict.refusal) return refused(verdict.refusal.message, instead(press, job));
  let { warnings } = verdict;
  if (verdict.low) {
    const better = standardGauges(press, job);
    if (better.length) warnings = warnings.map((said) => (said.includes("bottom quarter") ? `${said}; better: ${better.join(" or ")}` : said));
  }
  if (given["draw stud section"] && !given["draw stud yield"]) warnings = [...warnings, "no yield is given for the draw stud, so its stress is not judged"];
  return outcome(values(given, press, job, verdict), [], warnings);
}

function instead(press, job) {
  const would = standardGauges(press, job);
  if (would.length) return `use ${would.join(" or ")}`;
  const wanted = job.target ?? job.ceiling;
  if (press.reading(wanted) > press.rated) return `use a press rated for ${force(wanted, job.unit)} or more`;
  return "no standard gauge fits inside this floor and ceiling on this ram: do not press with it";
}

/** The ram with its gauge, or the outcome that refuses it. @returns {Press|object} */
export function ramOf(given) {
  const area = areaOf(given);
  if (area === null) return refused("the ram's area is not known", "give the nameplate area, or the bore, or both rated force and rated pressure");
  if (area <= 0) return refused("the rod is as thick as the bore", "measure both again");
  const limits = [["rated pressure", 1], ["rated force", area]].filter(([name]) => given[name]).map(([name, by]) => given[name].likely / by);
  if (!limits.length) {
    return refused("the ram's rating is not given, so nothing says when a mark is over it", "give the rated pressure or the rated force from the nameplate");
  }
  const { unit } = given["full scale"].quantity;
  const pascals = unit.factor.double();
  const [fullScale, division] = ["full scale", "division"].map((name) => given[name].quantity.low.times(given[name].quantity.unit.factor).over(unit.factor));
  if (!(division.n > 0n && division.against(fullScale) < 0)) return refused("the division is not smaller than the full scale", "read both off the dial again");
  const gaugeLimit = given["gauge limit"] ? Math.min(given["gauge limit"].low / pascals, fullScale.double()) : fullScale.double();
  return new Press(area, unit, fullScale, division, given.accuracy.likely, Math.min(...limits) / pascals, gaugeLimit);
}

/** Nameplate area first: a hollow ram's ring cannot be told from its bore. */
function areaOf(given) {
  if (given.area) return given.area.likely;
  if (given.bore) {
    const pulling = given.side?.text === "pull";
    if (pulling && !given.rod) return null;
    const rod = pulling ? given.rod.likely : 0;
    return Math.PI / 4 * (given.bore.likely * given.bore.likely - rod * rod);
  }
  return given["rated force"] && given["rated pressure"] ? given["rated force"].likely / given["rated pressure"].likely : null;
}

/** The forces asked for in N, each at the end of its band that is the safer to believe. */
function jobOf(given) {
  const first = ["target", "ceiling", "window", "floor"].map((name) => given[name]).find(Boolean);
  const window = given.window ? [given.window.low, given.window.high] : null;
  return { unit: first ? first.quantity.unit : findUnit("kN", "press force"), window, target: given.target?.likely ?? null, floor: given.floor?.high ?? null,
    ceiling: given.ceiling ? given.ceiling.low : window ? window[1] : null };
}

function wrongJob(job) {
  const told = (newtons) => force(newtons, job.unit);
  const mend = "find out which of the two sources is right; do not press";
  if (job.ceiling === null) return refusal("no ceiling is given for this force, so nobody can say where to stop", "give a ceiling with its source");
  for (const name of ["floor", "target"]) {
    if (job[name] !== null && job[name] > job.ceiling) return refusal(`the ${name} of ${told(job[name])} is over the ceiling of ${told(job.ceiling)}`, mend);
  }
  if (job.target !== null && job.floor !== null && job.target < job.floor) {
    return refusal(`the target of ${told(job.target)} is under the floor of ${told(job.floor)}`, mend);
  }
  return null;
}

function wrongStud(given, job) {
  if (!given["draw stud section"] || !given["draw stud yield"]) return null;
  const strength = given["draw stud yield"];
  const stress = job.ceiling / given["draw stud section"].likely;
  if (stress < strength.low) return null;
  return refusal(`at the ceiling the draw stud would stand at ${inUnit(stress, "stress", strength.quantity.unit, "0.1", "up")}, not under its yield of ${strength.text}`,
    "use a larger stud, or push instead of pulling");
}

/** Marks a press may be worked to, or the refusal and no marks. Judged unrounded; only marks are rounded. */
function judge(press, job) {
  const told = (newtons) => force(newtons, job.unit);
  const wanted = job.target ?? job.ceiling;
  const exact = press.reading(wanted);
  if (exact > press.limit) {
    return { refusal: refusal(`${told(wanted)} is ${press.finely(exact)}, over the ${press.finely(press.limit)} ${press.limitWords}`, "") };
  }
  const warnings = [];
  let never = press.down(press.reading(job.ceiling) - press.uncertainty);
  if (never.against(press.limit) > 0) {
    never = press.down(press.limit);
    warnings.push(`the never-pass mark is held down to the ${press.limitWords}, ${press.finely(press.limit)}`);
  }
  if (never.n <= 0n) return { refusal: refusal("the gauge's uncertainty is as large as the ceiling itself", "") };
  let marks = [];
  if (job.target !== null) {
    marks = SHARES.map((share) => press.down(exact * share / 100));
    const wrong = wrongLastMark(press, job, marks[3]);
    if (wrong) return { refusal: wrong };
    if (marks.some((mark, at) => at && mark.against(marks[at - 1]) === 0) || marks[0].n <= 0n) {
      warnings.push("some of the four marks fall on one division: this gauge is coarse for the job");
    }
    if (job.floor === null) warnings.push("no floor is given: nothing says whether the low edge of the last mark still holds");
  }
  const last = marks[3] ?? never;
  const low = last.times(Exact.of(4n)).against(press.fullScale) < 0;
  if (low) {
    const share = fixed(last.times(Exact.of(100n)).over(press.fullScale).double(), 1);
    warnings.push(`the reading is in the bottom quarter of the gauge (${share} % of its range)`);
  }
  let band = null;
  if (job.window) {
    band = [press.up(press.reading(job.window[0]) + press.uncertainty), lesser(never, press.down(press.reading(job.window[1]) - press.uncertainty))];
    if (band[0].against(band[1]) > 0) {
      return { refusal: refusal(`with ${press.finely(press.uncertainty)} of uncertainty no mark is sure to lie between ${told(job.window[0])} and ${told(job.window[1])}`, "") };
    }
  }
  return { refusal: null, marks, never, band, low, warnings };
}

function wrongLastMark(press, job, mark) {
  const told = (newtons) => force(newtons, job.unit);
  const [low, high] = [-1, 1].map((side) => press.force(mark.double() + side * press.uncertainty));
  const meaning = `the last mark, ${press.shown(mark)}, means anything from ${told(low)} to ${told(high)}`;
  if (mark.n <= 0n) return refusal(`one division is more than the target: ${meaning}`, "");
  if (job.floor !== null && low < job.floor) return refusal(`${meaning}; its low edge is under the floor of ${told(job.floor)}`, "");
  if (high > job.ceiling) return refusal(`${meaning}; its high edge is over the ceiling of ${told(job.ceiling)}`, "");
  return null;
}

/** Standard gauges that on this ram accept the job outside their bottom quarter, coarsest class each. */
function standardGauges(press, job) {
  const bar = findUnit("bar", "pressure");
  const rated = press.rated * press.unit.factor.over(bar.factor).double();
  const found = new Map();
  for (const [fullScale, accuracy, division] of GAUGES) {
    if (found.has(fullScale)) continue;
    const verdict = judge(new Press(press.area, bar, Exact.of(fullScale), Exact.of(division), Number(accuracy) / 100, rated, fullScale), job);
    if (!verdict.refusal && !verdict.low) found.set(fullScale, `a 0 to ${fullScale} bar gauge of class ${accuracy} in divisions of ${plainly(division)} bar`);
  }
  return [...found.values()].slice(0, 3);
}

/** Every figure of an accepted card; forces in the author's own unit, marks in the gauge's. */
function values(given, press, job, verdict) {
  const mark = (name, reading, side = "down") => value(name, "pressure", reading.double() * press.pascals, press.unit, press.division, side);
  const step = FORCE_STEPS[job.unit.symbol];
  const { uncertainty } = press;
  const made = [value("uncertainty", "pressure", uncertainty * press.pascals, press.unit, tenStep(uncertainty).over(Exact.of(100n))),
    value("uncertainty as force", "press force", press.force(uncertainty), job.unit, step), mark("never-pass mark", verdict.never)];
  if (verdict.marks.length) {
    const last = verdict.marks[3].double();
    made.unshift(value("exact reading", "pressure", job.target / press.area, press.unit, tenStep(press.division.double() / 20)),
      ...SHARES.map((share, at) => mark(`mark at ${share} %`, verdict.marks[at])));
    made.push(value("force at the last mark", "press force", [-1, 0, 1].map((side) => press.force(last + side * uncertainty)), job.unit, step));
  }
  if (verdict.band) made.push(mark("accept band low", verdict.band[0], "up"), mark("accept band high", verdict.band[1]));
  if (given["draw stud section"]) {
    const unit = given["draw stud yield"]?.quantity.unit.system === "metric" ? "MPa" : "ksi";
    for (const [name, newtons] of [["target", job.target], ["ceiling", job.ceiling]]) {
      if (newtons !== null) made.push(value(`draw stud stress at ${name}`, "stress", newtons / given["draw stud section"].likely, unit, unit === "ksi" ? "0.1" : "1"));
    }
  }
  return made;
}
