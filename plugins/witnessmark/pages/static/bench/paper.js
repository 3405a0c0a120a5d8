/* A printed sheet typed back in: all steps as short rows under the code and date that stand on the paper. */
import { element, filled, titleOf } from "./element.js";
import { placesOf, shownAt } from "./marks.js";

/** A code as it is typed by hand: capitals, no spaces or dashes, I and L for 1, O for 0. */
export function codeOf(typed) {
  const signs = typed.toUpperCase().replace(/[\s-]/g, "").replace(/[IL]/g, "1").replace(/O/g, "0");
  return /^[0-9A-HJKMNP-TV-Z]{8}$/.test(signs) ? `${signs.slice(0, 4)}-${signs.slice(4)}` : null;
}

/** The form. Ticks of a sheet whose code is another count as done under that sheet, and wait to be answered. */
export function paper(data, leaves, now, keeper, say) {
  const code = element("input", { id: "paper-code", autocomplete: "off", autocapitalize: "characters", maxlength: "12" });
  const date = element("input", { id: "paper-date", type: "date" });
  const said = element("p", { class: "said", role: "status" });
  const rows = leaves.flatMap((leaf) => {
    const step = data.steps.find((each) => each.id === leaf.dataset.step);
    const ticks = placesOf(step.places, now()).map((place) => row(`${step.number} ${place}`.trim(), { leaf, step, place, slot: "tick" }));
    const values = step.records.flatMap((told) => placesOf(told.places.length ? told.places : step.places, now())
      .map((place) => field(`${step.number} ${[told.label, place].filter(Boolean).join(", ")}`, { leaf, step, place, slot: `value ${told.name}`, told })));
    return [...ticks, ...values];
  });
  const form = element("form", { class: "asks", onsubmit: typed },
    element("div", {}, element("label", { for: "paper-code" }, say["paper code"]), code),
    element("div", {}, element("label", { for: "paper-date" }, say["paper date"]), date),
    ...rows.map((one) => one.drawn), element("button", {}, say["paper keep"]), said);
  return element("details", { class: "paper" }, element("summary", {}, say.paper), form);

  function row(label, about) {
    const box = element("input", { type: "checkbox" });
    return { ...about, value: () => box.checked, drawn: element("label", { class: "choice" }, box, `${label}: ${titleOf(about.leaf).slice(0, 80)}`) };
  }

  function field(label, about) {
    const id = `paper ${about.step.id} ${about.slot} ${about.place}`;
    const input = element("input", { id, autocomplete: "off", maxlength: "200" });
    const units = about.told.units.map((unit) => unit[0]).filter(Boolean);
    const select = units.length ? element("select", { "aria-label": `${say.unit}: ${label}` }, ...units.map((unit) => element("option", { value: unit }, unit))) : null;
    return { ...about, unit: () => (select ? select.value : ""), value: () => input.value.trim(),
      drawn: element("div", {}, element("label", { for: id }, label), element("div", { class: "typed" }, input, select)) };
  }

  function typed(event) {
    event.preventDefault();
    const read = codeOf(code.value);
    if (!read) return void (said.textContent = say["paper no code"]);
    if (!/^\d{4}-\d{2}-\d{2}$/.test(date.value)) return void (said.textContent = say["paper no date"]);
    const same = read === data.codes[now().variant];
    const entries = rows.filter((one) => one.value()).map((one) => keeper.entry(one.step, one.slot, one.place, one.value(), {
      at: `${date.value}T12:00:00.000Z`, code: read, meaning: same ? keeper.meaning(one.step) : `sheet ${read}`,
      shown: same ? shownAt(one.leaf) : "", ...(one.unit ? { unit: one.unit() } : {}) }));
    keeper.add(...entries);
    said.textContent = filled(same ? say["paper kept"] : say["paper old"], entries.length, read);
  }
}
