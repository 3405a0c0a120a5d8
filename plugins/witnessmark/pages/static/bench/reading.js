/* One value measured at one place: typed in the reader's own unit, held against its limits at once, kept when the field is left. */
import { corner, element, filled } from "./element.js";
import { judgeTyped, limitsOf, limitText } from "./judge.js";
import { when } from "./when.js";

/** The row of a reading: field, unit, what stands, what to do when it lies outside, what the other sides read. */
export function reading(record, told, place, step, data, now, keeper, say) {
  const slot = `value ${told.name}`;
  const units = corner(`${data.name} unit ${told.kind}`);
  const standing = keeper.marks(step, slot, place);
  const unitNamed = (symbol) => told.units.find((unit) => unit[0] === symbol) || told.units[0] || null;
  const kept = standing[0] || null;
  const label = place ? `${told.label}, ${place}` : told.label;
  const id = `${step.id} ${slot} ${place}`;
  const field = element("input", { id, inputmode: told.units.length ? "decimal" : "text", autocomplete: "off", maxlength: "200", "data-mark": id,
    "data-kept": kept ? kept.value : "", oninput: () => answer.replaceChildren(...verdict(field.value, select ? select.value : "")), onchange: keep });
  field.value = kept ? kept.value : "";
  const select = told.units.length > 0 && told.units[0][0] !== "" ? element("select", { "aria-label": `${say.unit}: ${label}`, onchange: () => {
    units.write(select.value);
    answer.replaceChildren(...verdict(field.value, select.value));
    if (field.value && (!kept || kept.unit !== select.value)) keep();
  } }, ...told.units.map((unit) => element("option", { value: unit[0] }, unit[0]))) : null;
  if (select) select.value = unitNamed(kept ? kept.unit : units.read(""))[0];
  const answer = element("div", { role: "status" });
  answer.replaceChildren(...(standing.length > 1 ? standing.flatMap((one) => [element("p", {}, `${one.value} ${one.unit || ""} · ${when(one.at)} · ${one.device}`),
    ...verdict(one.value, one.unit)]) : verdict(field.value, select ? select.value : "")));
  return element("div", { class: "reading" }, element("label", { for: id }, label),
    element("div", { class: "typed" }, field, select),
    standing.length > 1 ? element("p", { class: "told outside" }, element("b", { class: "verdict" }, filled(say["two values"], standing.length))) : null,
    answer, ...others());

  function keep() {
    if (field.value === field.dataset.kept && (!select || (kept && kept.unit === select.value))) return;
    field.dataset.kept = field.value;
    keeper.add(keeper.entry(step, slot, place, field.value.trim(), { unit: select ? select.value : "", shown: limits().map(limitText).join("; ") }));
  }

  function limits() {
    return limitsOf(told, now().combination, data.carriers[0].id);
  }

  function verdict(typed, symbol) {
    const { verdict: found, limit } = judgeTyped(told, typed, symbol, limits());
    if (found === "none") return [];
    if (found === "no number") return [element("p", { class: "told outside" }, element("b", { class: "verdict" }, say["no number"]))];
    const words = limitText(limit);
    if (found === "inside") return [element("p", { class: "told" }, element("b", { class: "verdict" }, `${say.inside}: ${words}`))];
    const todo = [...record.querySelectorAll(`[data-outside="${found}"], [data-outside="go"]`)].map((part) => part.cloneNode(true));
    return [element("div", { class: "told outside" }, element("b", { class: "verdict" }, `${say[found]}: ${words}`),
      ...(todo.length ? todo : [element("p", {}, say["outside"])]))];
  }

  /** What the other side read at the same step. */
  function others() {
    const side = now().place;
    return data.places.filter((each) => each.name !== side).flatMap((each) => {
      const there = side && place.startsWith(side) ? each.name + place.slice(side.length) : each.name;
      return keeper.marks(step, slot, there).map((one) => element("p", { class: "other-side" }, `${there}: ${one.value} ${one.unit || ""} · ${when(one.at)}`));
    });
  }
}
