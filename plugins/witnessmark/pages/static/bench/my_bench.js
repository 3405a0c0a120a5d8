/* The page "My bench": takes in a press, wrenches, units and text size; what cannot be believed is not kept. */
import { element, filled } from "./element.js";
import { keptBench, setSize } from "./my_bench_kept.js";
import { judgePress } from "./my_press.js";
import { wrenchSetting } from "./wrench_setting.js";
import { say } from "./my_bench_words.js";

const main = document.querySelector("main");
const forms = main.querySelector("[data-forms]");
const kept = keptBench(main.dataset);

function plain(problem) {
  forms.hidden = true;
  main.querySelector("[data-broken]").hidden = false;
  console.warn(problem);
}

addEventListener("error", (event) => plain(event.error || event.message));
addEventListener("unhandledrejection", (event) => plain(event.reason));

/** What stands in the fields of a form: name -> [number, unit]; fields of the other way to know the area are left out. */
function fieldsOf(form, unit) {
  const found = {};
  for (const field of form.querySelectorAll("[data-field]")) {
    if (field.closest("[hidden]")) continue;
    const number = field.querySelector("input").value.trim();
    const own = field.querySelector("select")?.value ?? field.querySelector("span").textContent;
    if (number) found[field.dataset.field] = [number, own || unit];
  }
  return found;
}

/** A unit typed with the number counts; else the one chosen beside it. */
const textOf = ([number, unit]) => (/[a-z°"%]/i.test(number.replace(/\bto\b/, "")) ? number : `${number} ${unit}`.trim());
const textsOf = (fields, names) => Object.fromEntries(Object.entries(fields).filter(([name]) => !names.includes(name)).map(([name, typed]) => [name, textOf(typed)]));

function fill(form, fields) {
  for (const [name, [number, unit]] of Object.entries(fields)) {
    const field = form.querySelector(`[data-field="${name}"]`);
    if (!field) continue;
    field.querySelector("input").value = number;
    const select = field.querySelector("select");
    if (select && [...select.options].some((option) => option.value === unit)) select.value = unit;
  }
}

function tell(form, lines) {
  form.querySelector("[data-said]").replaceChildren(...lines.map((line) => element("p", {}, line)));
}

const keep = (form, change, lines) => tell(form, kept.write(change) ? lines : [say["not kept"]]);
const labelOf = (name) => forms.querySelector(`[data-field="${name}"] label`).textContent;
const facts = (texts) => element("dl", { class: "facts" }, ...Object.entries(texts).filter(([name]) => name !== "side")
  .flatMap(([name, text]) => [element("dt", {}, labelOf(name)), element("dd", {}, text)]));

// The press
const press = forms.querySelector("[data-press]");
const gaugeUnit = press.querySelector("#gauge-unit");

function arrange() {
  const by = press.elements.by.value;
  for (const part of press.querySelectorAll("[data-by]")) part.hidden = part.dataset.by !== by;
  for (const unit of press.querySelectorAll("[data-gauge-unit]")) unit.textContent = gaugeUnit.value;
}

function showPress() {
  const { press: own } = kept.read();
  forms.querySelector("[data-kept-press]").replaceChildren(...(own ? [element("p", {}, element("b", {}, own.name)), facts(own.texts)] : []));
  press.querySelector("[data-forget]").hidden = !own;
}

press.addEventListener("change", arrange);
press.addEventListener("submit", (event) => {
  event.preventDefault();
  const fields = fieldsOf(press, gaugeUnit.value);
  const texts = textsOf(fields, ["name"]);
  const by = press.elements.by.value;
  if (by === "bore") texts.side = press.querySelector("#side").value;
  const judged = judgePress(texts);
  if (judged.problems.length) return tell(press, [say["refuse press"], ...judged.problems]);
  const own = { name: fields.name?.[0] ?? forms.querySelector("#press").textContent, by, fields, unit: gaugeUnit.value, texts };
  keep(press, { press: own }, [judged.agree, ...judged.unusual.map((each) => filled(say.unusual, each))]);
  return showPress();
});
press.querySelector("[data-forget]").addEventListener("click", () => {
  keep(press, { press: null }, [say.forgotten]);
  showPress();
});

// Wrenches
const wrench = forms.querySelector("[data-wrench]");
const wrenchUnit = wrench.querySelector("#wrench-unit");

function showWrenches() {
  const { wrenches } = kept.read();
  for (const unit of wrench.querySelectorAll("[data-gauge-unit]")) unit.textContent = wrenchUnit.value;
  forms.querySelector("[data-kept-wrenches]").replaceChildren(...(wrenches.length ? wrenches.map((own, at) => element("div", { class: "kept" },
    element("p", {}, element("b", {}, own.name)), facts(own.texts), element("button", { type: "button", class: "wide", onclick: () => forget(at) }, filled(say.remove, own.name))))
    : [element("p", {}, say["no wrench"])]));
}

function forget(at) {
  keep(wrench, { wrenches: kept.read().wrenches.filter((_, other) => other !== at) }, [say.forgotten]);
  showWrenches();
  wrench.querySelector("input").focus();
}

wrench.addEventListener("change", showWrenches);
wrench.addEventListener("submit", (event) => {
  event.preventDefault();
  const fields = fieldsOf(wrench, wrenchUnit.value);
  const texts = textsOf(fields, ["wrench name"]);
  const asked = wrenchSetting({ ...texts, torque: texts["wrench highest"] ?? texts["wrench graduation"] ?? "" });
  const wrong = ["wrench lowest", "wrench highest", "wrench graduation"].filter((name) => !texts[name]).map((name) => filled(say.missing, labelOf(name)));
  const problems = [...wrong, ...(wrong.length ? [] : [...asked.problems.map((each) => `${each.message}; ${each.mend}.`), ...asked.refusals.map((each) => `${each.message}; ${each.instead}.`)])];
  if (problems.length) return tell(wrench, problems);
  const own = { name: fields["wrench name"]?.[0] ?? texts["wrench highest"], texts };
  keep(wrench, { wrenches: [...kept.read().wrenches, own] }, [filled(say["wrench kept"], own.name)]);
  wrench.reset();
  return showWrenches();
});

// Units and text size
const looks = forms.querySelector("[data-looks]");
looks.addEventListener("change", () => {
  const [units, size] = ["units", "size"].map((name) => looks.querySelector(`#${name}`).value);
  keep(looks, { units, size }, []);
  setSize(size);
});
looks.addEventListener("submit", (event) => event.preventDefault());
forms.querySelector("[data-print]").addEventListener("click", () => print());

const bench = kept.read();
if (bench.press) {
  press.elements.by.value = bench.press.by;
  gaugeUnit.value = bench.press.unit;
  if (bench.press.texts.side) press.querySelector("#side").value = bench.press.texts.side;
  fill(press, bench.press.fields);
}
for (const name of ["units", "size"]) looks.querySelector(`#${name}`).value = bench[name];
setSize(bench.size);
arrange();
showPress();
showWrenches();
forms.hidden = false;
