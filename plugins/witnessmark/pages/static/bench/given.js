/* Texts to inputs of a working: the browser's copy of workings/read_inputs.py. Which inputs there are comes from the build. */
import { readQuantity } from "./quantity.js";
import { closest, Problem } from "./units.js";
import { WORKINGS } from "./workings_table.js";

const FAR = 1e15;

/** Why there is no number, and what would do instead. */
export const refusal = (message, instead) => ({ message, instead });
/** What a working gave. */
export const outcome = (values = [], refusals = [], warnings = []) => ({ values, refusals, warnings });
export const refused = (message, instead) => outcome([], [refusal(message, instead)]);

/**
 * An input as read: its text and a band in SI; one number has low = likely = high. `several` holds each of many.
 * @typedef {{text: string, low: number, likely: number, high: number, quantity: ?object, several: object[]}} Given
 */

/**
 * The inputs of a working that could be read, and a problem for each that is missing, unknown or wrong.
 * @param {string} id of the working
 * @param {Object<string, string|Given>} texts
 */
export function givenInputs(id, texts) {
  const { inputs } = WORKINGS[id];
  const given = {};
  const problems = [];
  for (const [name, text] of Object.entries(texts)) {
    const declared = inputs.find((input) => input.name === name);
    if (typeof text !== "string") {
      given[name] = text;
    } else if (!declared) {
      const near = closest(name, inputs.map((input) => input.name));
      problems.push(new Problem(`${id} has no input '${name}'`, near ? `write ${near}` : `write one of ${inputs.map((input) => input.name).join(", ")}`));
    } else {
      const read = readGiven(declared, text);
      if (read instanceof Problem) problems.push(new Problem(`${name}: ${read.message}`, read.mend));
      else given[name] = read;
    }
  }
  for (const declared of inputs) {
    if (declared.required && !Object.hasOwn(texts, declared.name)) {
      const example = declared.example ? `write it such as ${declared.name}: ${declared.example}` : "add it";
      problems.push(new Problem(`${id} needs '${declared.name}' (${declared.doc})`, example));
    }
  }
  return { given, problems };
}

/**
 * One run: `problems` where an input cannot be read, else what `compute` gives, warnings of unusual inputs first.
 * @param {string} id
 * @param {Object<string, string|Given>} texts
 * @param {(given: Object<string, Given>) => object} compute
 */
export function run(id, texts, compute) {
  const { given, problems } = givenInputs(id, texts);
  if (problems.length) return { ...outcome(), problems };
  const out = compute(given);
  return { ...out, warnings: [...unusual(id, given), ...out.warnings], problems };
}

/** A sentence for each input outside its usual range. */
export function unusual(id, given) {
  const said = [];
  for (const { name, kind, usual, outside } of WORKINGS[id].inputs) {
    if (!usual || !given[name]) continue;
    const low = siOf(readQuantity(usual[0], kind), "low");
    const high = siOf(readQuantity(usual[1], kind), "high");
    const slack = 1e-9 * Math.abs(high);
    if (given[name].low < low - slack || given[name].high > high + slack) {
      said.push(`${name} ${given[name].text} is outside the usual ${usual[0]} to ${usual[1]}: ${outside}`);
    }
  }
  return said;
}

const siOf = (quantity, end) => (quantity[end] === null ? null : quantity.unit.toSI(quantity[end]).double());

/** One input: a choice word, a quantity, a band 'low / likely / high', or several with commas. @returns {Given|Problem} */
export function readGiven(declared, text) {
  if (declared.many) return several(declared, text);
  if (declared.kind === "choice" && !declared.choices.includes(text)) return new Problem(`'${text}' is no choice here`, `write ${declared.choices.join(" or ")}`);
  if (declared.kind === "choice") return { text: text.trim(), low: 0, likely: 0, high: 0, quantity: null, several: [] };
  const parts = text.split(" / ");
  if (parts.length === 3) return band(declared, text, parts);
  let quantity = readQuantity(text, declared.kind);
  if (quantity instanceof Problem) return quantity;
  let [low, high] = [siOf(quantity, "low"), siOf(quantity, "high")];
  if (low === null || high === null) {         // a limit is worth itself: all that is given is that number
    low = high = low ?? high;
    const limit = quantity.low ?? quantity.high;
    quantity = { ...quantity, low: limit, high: limit };
  }
  return positive(declared, { text, low, likely: low === high ? low : (low + high) / 2, high, quantity, several: [] });
}

/** '0.12 / 0.15 / 0.20': the unit may stand once, after the last. */
function band(declared, text, parts) {
  const last = readQuantity(parts[2], declared.kind);
  if (last instanceof Problem) return last;
  const ends = [];
  for (const part of parts.slice(0, 2)) {
    let end = readQuantity(part, declared.kind);
    if (end instanceof Problem) end = readQuantity(`${part} ${last.unit.symbol}`, declared.kind);
    if (end instanceof Problem) return end;
    ends.push(siOf(end, "low"));
  }
  const [low, likely, high] = [...ends, siOf(last, "low")];
  if ([low, likely, high].includes(null) || !(low <= likely && likely <= high)) {
    return new Problem(`'${text}' does not rise`, "write low / likely / high, such as 0.12 / 0.15 / 0.20");
  }
  return positive(declared, { text, low, likely, high, quantity: last, several: [] });
}

function several(declared, text) {
  const parts = text.split(",").map((part) => readGiven({ ...declared, many: false }, part.trim()));
  const wrong = parts.find((part) => part instanceof Problem);
  if (wrong) return new Problem(wrong.message, `${wrong.mend}; several stand with a comma between`);
  return { text, low: Math.min(...parts.map((part) => part.low)), likely: parts[0].likely, high: Math.max(...parts.map((part) => part.high)),
    quantity: parts[0].quantity, several: parts };
}

/** Most of what is measured is over zero; an angle and an accuracy may be nothing. */
function positive(declared, given) {
  if ([given.low, given.high].some((end) => end && !(Math.abs(end) > 1 / FAR && Math.abs(end) < FAR))) {
    return new Problem(`'${given.text}' is beyond anything measured`, `check the figure and its unit: ${declared.doc}`);
  }
  const zeroToo = declared.sign === "zero or over" || declared.kind === "angle" || declared.kind === "share";
  if (declared.sign === "signed" || given.low > 0 || (zeroToo && given.low >= 0)) return given;
  return new Problem(`'${given.text}' is ${zeroToo ? "under" : "not over"} zero`, `check ${declared.name}: ${declared.doc}`);
}
