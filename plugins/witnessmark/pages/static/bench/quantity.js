/* A number and its unit as a reader types it: the browser's copy of core/quantity.py, refusing the same in the same words. */
import { Exact } from "./exact.js";
import { findUnit, KINDS, Problem } from "./units.js";

const DIGITS = "(?:0|[1-9][0-9]{0,2}(?:,[0-9]{3})+|[1-9][0-9]*)";
const UNSIGNED = `(?:[1-9][0-9]{0,3}-)?[1-9][0-9]{0,3}/[1-9][0-9]{0,3}|${DIGITS}(?:\\.[0-9]+)?|\\.[0-9]+`;
const NUMBER = `(?:[\\-−] ?)?(?:${UNSIGNED})`;
const UNIT = "(?![eE][0-9])[A-Za-zµμ°º˚%\"″”](?:[^0-9±+]|(?<=[A-Za-z^])[23](?![0-9]))*";   // the only figures in a unit are in² and cm³

const FORMS = Object.entries({
  ratio: `(?<a>${DIGITS}(?:\\.[0-9]+)?) ?: ?(?<b>${DIGITS}(?:\\.[0-9]+)?)(?<u>)`,
  limit: `(?<word>[aA][tT] [lL][eE][aA][sS][tT]|[aA][tT] [mM][oO][sS][tT]|[oO][vV][eE][rR]|[uU][nN][dD][eE][rR]) (?<a>${NUMBER})(?<u>(?: ?${UNIT})?)`,
  range: `(?<a>${NUMBER})(?<v>(?: ?${UNIT}?)?) to (?<b>${NUMBER})(?<u>(?: ?${UNIT})?)`,
  "plus-minus": `(?<a>${NUMBER})(?<v>(?: ?${UNIT}?)?) ?(?:±|\\+/-) ?(?<b>${UNSIGNED})(?<u>(?: ?${UNIT})?)`,
  tolerance: `(?<a>${NUMBER})(?<v>(?: ?${UNIT}?)?) \\+ ?(?<b>${UNSIGNED}) [\\-−] ?(?<c>${UNSIGNED})(?<u>(?: ?${UNIT})?)`,
  exact: `(?<a>${NUMBER})(?<u>(?: ?${UNIT})?)`,
}).map(([form, pattern]) => [form, new RegExp(`^(?:${pattern})$`, "u")]);

// Looked for only when no form fits, so that each usual slip gets its own lesson.
const SLIPS = [
  ["^[\\-+]?(nan|inf|infinity)\\b|[∞]", "not a number that can be measured", "write the figure itself, such as 57 lbf·ft"],
  ["[0-9.]e[\\-+]?[0-9]", "a number with an exponent", "write it out in full, such as 0.000012"],
  ["[¼½¾⅐-⅞⁄]", "a fraction sign that is easily misread", "write the fraction out, such as 1-1/2"],
  ["[0-9] [0-9]+/[0-9]", "a whole number and a fraction with a space between", "join them with a dash, such as 1-1/2"],
  ["[0-9]\\. [0-9]|[0-9] [0-9]{3}(?![0-9/])", "a space inside a number", "leave it out; a comma before each three digits of a whole number, such as 1,100"],
  ["^(about|approx[a-z.]*|circa|ca\\.|around|nominal[a-z]*|roughly|~)", "a figure with no bounds", "write the figure with its tolerance, such as 3.120 ± 0.030 in"],
  ["^(±|\\+/-|\\+-)", "a tolerance without its figure", "write the figure before it, such as 3.120 ± 0.030 in, or the figure without ±"],
  ["\\+ ?-|- ?/? ?\\+", "a tolerance in other signs", "write ± or +/-, such as 3.120 ± 0.030 in"],
  ["^between|[0-9][^0-9]* (thru|through|and|till|until) |[0-9]\\.[0-9]+ ?/ ?[0-9]*\\.", "a range in other words or signs",
    "write “to” between the figures, such as 0.018 to 0.030 in"],
  ["[0-9][^0-9]* ?[–—‒―~] ?\\.?[0-9]|[0-9] ?\\.\\.\\.? ?[0-9]", "a dash or dots for a range can be read as a minus",
    "write “to” between the figures, such as 0.018 to 0.030 in"],
  ["[0-9]+ ?- ?\\.?[0-9]+(?!.*/)", "a dash between two figures can be read as a minus or a fraction",
    "write “to” between the figures, such as 0.018 to 0.030 in"],
  ["[0-9],(?![0-9]{3}(?![0-9]))|,.*,.*\\.[0-9]*,|\\.[0-9]*,|\\b0[0-9,]*,", "a comma inside a number",
    "write a point for decimals; a comma only before each three digits of a whole number, such as 1,100"],
  ["(^|[^0-9.,])0[0-9]", "a number that begins with a needless 0", "leave the 0 out"],
  ["/ ?0(?![0-9.])", "a fraction over nothing", "write a fraction such as 1-1/2"],
  ["^(min|max|minimum|maximum|>=|<=|>|<|≥|≤|not over|not under|up to|more than|less than)|[0-9][^0-9]* (min|max|minimum|maximum)\\b", "a limit in other words",
    "begin with at least, at most, over or under"],
  ["[0-9]\\.(?![0-9])", "a point with no figure after it", "write the decimals, or leave the point out"],
  ["[^\\x00-\\x7f±°·⋅²³µμ″”−]", "a sign that is not used in quantities", "write it in plain letters and figures"],
  ["[0-9.][oli][0-9.]", "a letter inside a number", "write the figures 0 and 1, not the letters O and l"],
].map(([pattern, message, mend]) => [new RegExp(pattern, "iu"), message, mend]);

// What stands in the way of a unit. Looked for where no unit is known by those words.
const BEHIND = [
  ["[0-9.][oli][0-9.]", "a letter inside a number", "write the figures 0 and 1, not the letters O and l"],
  [" (min|max|minimum|maximum)\\b", "a limit in other words", "begin with at least, at most, over or under"],
  ["(±|\\+/-)[^%]*%$", "a tolerance in per cent", "write it in the unit of the figure, such as 3.120 ± 0.030 in"],
  ["\\(", "words in brackets behind the figure", "write the figure alone; in a source what goes with it stands under 'condition:'"],
].map(([pattern, message, mend]) => [new RegExp(pattern, "iu"), message, mend]);

const EXAMPLE = "write a number and its unit, such as 57 lbf·ft";
const SPACES = /[\t-\r\x1c-\x20\x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+/;

/**
 * `low` and `high` are Exact, in `unit`; null where the form leaves that side open.
 * @typedef {{text: string, form: string, low: ?Exact, high: ?Exact, unit: object, kind: string, decimals: number, whole: boolean}} Quantity
 */

/**
 * @param {string} typed
 * @param {string} kind a name in KINDS
 * @returns {Quantity|Problem}
 */
export function readQuantity(typed, kind) {
  if (!Object.hasOwn(KINDS, kind) || kind === "thread" || kind === "none") {
    return new Problem(`“${kind}” is not measured by a quantity`, "give the kind of figure that this is");
  }
  const text = [...typed].slice(0, 200).join("").split(SPACES).filter(Boolean).join(" ");
  if (!text || [...text].length > 100) return new Problem(text ? "far too long for a quantity" : "no quantity stands here", EXAMPLE);
  for (const [form, pattern] of FORMS) {
    const match = pattern.exec(text);
    if (match) return quantityOf(text, form, match.groups, kind);
  }
  const slip = SLIPS.find(([pattern]) => pattern.test(text));
  if (slip) return new Problem(`“${text}”: ${slip[1]}`, slip[2]);
  return new Problem(/[0-9]/.test(text) ? `“${text}” cannot be read as a quantity` : `“${text}” has no number`, EXAMPLE);
}

function quantityOf(text, typedForm, part, kind) {
  const typed = ["a", "b", "c"].map((name) => part[name]).filter(Boolean);
  const values = typed.map((number) => numberOf(number, kind));
  if (values.includes(null)) {
    return new Problem(`“${text}”: a fraction that is a whole or more, or over nothing`, "write whole and fraction with a dash, such as 1-1/2");
  }
  if (typedForm === "ratio" && !KINDS[kind].ratio) return new Problem(`“${text}”: a ${kind} is not written as a ratio`, EXAMPLE);
  const unit = unitOf(part, kind);
  if (unit instanceof Problem) {
    const slip = BEHIND.find(([pattern]) => pattern.test(text));
    return slip ? new Problem(`“${text}”: ${slip[1]}`, slip[2]) : unit;
  }
  const [a, b = Exact.of(0n), c] = values;
  let [form, low, high] = [typedForm, a, a];
  if (form === "ratio") {
    if (!a.n || !b.n) return new Problem(`“${text}”: a ratio with nothing`, "write it such as 1:12");
    low = high = a.over(b);
  } else if (form === "limit") {
    form = part.word.toLowerCase();
    [low, high] = form === "at least" || form === "over" ? [a, null] : [null, a];
  } else if (form === "range") {
    high = b;
  } else if (form === "plus-minus") {
    [low, high] = [a.minus(b), a.plus(b)];
  } else if (form === "tolerance") {
    [form, low, high] = ["plus-minus", a.minus(c), a.plus(b)];
  }
  const turn = low && high ? low.against(high) : -1;
  if (turn > 0) return new Problem(`“${text}”: the range runs backwards`, "write the smaller figure first");
  if (turn === 0 && (form === "range" || form === "plus-minus")) {
    return new Problem(`“${text}”: a range with no width cannot be met`, "write the figure once, or the room there is");
  }
  if (!KINDS[kind].signed && (low ?? high).n < 0n) return new Problem(`“${text}”: a ${kind} cannot be under zero`, "write it without a minus");
  if (KINDS[kind].counted && values.some((value) => value.d !== 1n)) {
    return new Problem(`“${text}”: a ${kind} is a whole number`, "write how many, such as 6");
  }
  const decimals = Math.max(...typed.map((number) => (number.split(".")[1] ?? "").length));
  return { text, form, low, high, unit, kind, decimals, whole: decimals === 0 };
}

/** The unit after the last number; one between the numbers must be the same, and may stand alone. */
function unitOf(part, kind) {
  const [last, first] = [part.u.trim(), (part.v ?? "").trim()];
  const unit = findUnit(last || first, kind);
  if (first && last && !(unit instanceof Problem) && findUnit(first, kind) !== unit) {
    return new Problem(`“${first}” and “${last}” in one quantity`, "write both figures in one unit");
  }
  return unit;
}

/** null for a fraction that is no proper one: 11/2 is a lost dash more often than five and a half. */
function numberOf(typed, kind) {
  const digits = typed.replace(/^[-− ]+/, "").replaceAll(",", "");
  const dash = digits.lastIndexOf("-");
  const [whole, fraction] = dash < 0 ? ["", digits] : [digits.slice(0, dash), digits.slice(dash + 1)];
  let value;
  if (fraction.includes("/")) {
    const [top, bottom] = fraction.split("/").map(BigInt);
    if (top >= bottom && !(KINDS[kind].ratio && dash < 0)) return null;
    value = new Exact(top, bottom).plus(new Exact(BigInt(whole || 0)));
  } else {
    value = Exact.of(digits);
  }
  return /^[-−]/.test(typed) ? value.negative() : value;
}
