/* The form for one figure: each question a field, the plain text under it as it is typed, kept on the phone with every letter. */
import { element } from "../bench/element.js";
import { filledIn } from "./text.js";
import { waysOut } from "./ways.js";

const LONG = new Set(["Source and page, or how measured", "What happened"]);

/**
 * @param {string} anchor of the figure
 * @param {{subject: string, given: Record<string, string>}} figure as figure.js reads it
 * @param {{data: object, say: object, kept: object, changed: () => void}} page
 */
export function correctionForm(anchor, { subject, given }, page) {
  const { data, say, kept } = page;
  const { names } = data;
  const fields = new Map();
  const state = element("p", { class: "said", role: "status" });
  const plain = element("pre", { class: "told", tabindex: "0" });
  const out = element("div", { class: "tools" });
  const before = kept.answers(anchor);

  function answers() {
    return Object.fromEntries([...fields].map(([name, field]) => [name, field.value]));
  }

  function show() {
    plain.textContent = filledIn(names, given, answers());
    out.replaceChildren(...waysOut(data, { subject, text: plain.textContent }, say));
  }

  function typed() {
    show();
    state.textContent = kept.keep(anchor, subject, plain.textContent, answers()) ? say.kept : say["not kept"];
    page.changed();
  }

  const rows = names.asked.flatMap((name, number) => {
    const id = `asked-${number}`;
    const field = element(LONG.has(name) ? "textarea" : "input", { id, name, maxlength: "2000", autocomplete: "off", rows: LONG.has(name) ? "3" : null, oninput: typed });
    field.value = String(before[name] ?? "");
    fields.set(name, field);
    return [element("label", { for: id }, name), field];
  });
  const form = element("form", { class: "asks", onsubmit: (event) => event.preventDefault() }, ...rows, state, element("h3", {}, say.plain), plain, out);
  show();
  return form;
}
