/* What is ticked, measured and noted at a step: rows under it, drawn anew whenever the log has grown. */
import { element, filled } from "./element.js";
import { reading } from "./reading.js";
import { when } from "./when.js";

/** The places at which a thing of this page is ticked or read, on the side that is on the bench. */
export function placesOf(own, { place, variant }) {
  const names = own.filter((each) => !variant || !each.only.length || each.only.includes(variant)).map((each) => each.name);
  return names.length ? names.map((name) => (place ? `${place}, ${name}` : name)) : [place];
}

/** The figures a step shows now, in one line: kept with its tick, so that an old figure can still be told. */
export function shownAt(leaf) {
  const lines = [...leaf.querySelectorAll(".figures")].map((figures) => [figures.querySelector(".label").textContent,
    ...[...figures.querySelectorAll(".limit")].filter((limit) => !limit.hidden).map((limit) =>
      [limit.querySelector(".role").textContent, ...[...limit.querySelectorAll(".wm-figure")].filter((figure) => !figure.hidden)
        .map((figure) => figure.textContent)].join(" "))].join(", "));
  const cards = [...leaf.querySelectorAll(".wm-card")].filter((card) => !card.hidden).map((card) =>
    [...card.querySelectorAll(".wm-marks b, .wm-never .wm-mark")].map((mark) => mark.textContent).join(", "));
  const donors = [...leaf.querySelectorAll(".wm-donors tr[data-case]")].filter((row) => !row.hidden).map((row) =>
    [...row.querySelectorAll("td")].map((cell) => cell.textContent.trim()).join(", "));
  return [...lines, ...cards, ...donors].filter(Boolean).join("; ").replace(/\s+/g, " ").trim().slice(0, 2000);
}

/** Draws the marks of a step into its leaf. */
export function drawMarks(leaf, step, data, now, keeper, say) {
  const busy = document.activeElement;
  if (busy && leaf.contains(busy) && busy.matches("input, textarea") && busy.value !== busy.dataset.kept) return;   // somebody is typing
  const again = busy && leaf.contains(busy) ? busy.dataset.mark : null;
  const box = leaf.querySelector("[data-marks]");
  const missing = !now().serial ? say["ask serial"] : data.places.length && !now().place ? filled(say["ask place"], data.group) : "";
  for (const record of leaf.querySelectorAll("[data-record]")) {
    const told = step.records.find((each) => each.name === record.dataset.record);
    record.querySelector(".readings")?.remove();
    if (!missing) record.append(element("div", { class: "readings" }, ...places(told).map((place) => reading(record, told, place, step, data, now, keeper, say))));
  }
  if (!missing && step.follows.length && now().combination) follow();
  box.replaceChildren(...(missing ? [element("p", { class: "told" }, element("a", { href: "#start", class: "wide" }, missing))] : rows()));
  if (again) leaf.querySelector(`[data-mark="${CSS.escape(again)}"]`)?.focus();

  /** Below the readings, once all are in; the workings are fetched only where a step has use for them. */
  async function follow() {
    const told = step.records.find((each) => each.units.length > 0);
    const { followed, readingsText } = await import("./follows.js");
    const text = told && readingsText(places(told).map((place) => keeper.marks(step, `value ${told.name}`, place)));
    const record = leaf.querySelector(`[data-record="${told && CSS.escape(told.name)}"] .readings`);
    record?.querySelectorAll(".follows").forEach((old) => old.remove());
    if (text && record) record.append(...step.follows.map((each) => followed(each, text, now().combination, data.carriers[0].id, say)).filter(Boolean));
  }

  function places(told) {
    return placesOf(told.places.length ? told.places : step.places, now());
  }

  function rows() {
    const made = placesOf(step.places, now()).flatMap((place) => [old(place), step.hold ? button("hold", place, say.held) : null,
      button("tick", place, say.done), step.second ? button("second", place, say.second) : null]);
    return [...made, note()].filter(Boolean);
  }

  function button(slot, place, words) {
    const standing = keeper.marks(step, slot, place);
    const state = keeper.tick(step, place, slot);
    const label = place ? `${words}, ${place}` : words;
    const at = state === "done" ? ` · ${when(standing[0].at)}` : "";
    return element("button", { type: "button", class: "tick", "data-mark": `${slot} ${place}`, "aria-pressed": String(state === "done"),
      onclick: () => keeper.add(keeper.entry(step, slot, place, state !== "done", { shown: shownAt(leaf) })) }, label + at);
  }

  /** Done, but under a figure that holds no longer: told with both figures, and answered by the reader. */
  function old(place) {
    if (keeper.tick(step, place) !== "old") return null;
    const ticks = keeper.marks(step, "tick", place);
    const figures = shownAt(leaf);
    const parts = ticks.every((tick) => tick.meaning === keeper.meaning(step));        // the step is the same: only what is fitted is not
    const verdict = parts ? say["other part"] : say.old;
    const told = (tick) => (tick.shown && tick.shown !== figures ? tick.shown : parts ? "" : filled(say["old words"], tick.code));
    const answer = (value, words) => element("button", { type: "button", onclick: () => (value === "redone"
      ? keeper.add(keeper.entry(step, "tick", place, true, { shown: figures }))
      : keeper.add(keeper.entry(step, "answer", place, value, { shown: figures }))) }, words);
    return element("div", { class: "told old", role: "status" },
      element("b", { class: "verdict" }, place ? `${verdict}, ${place}` : verdict),
      ...ticks.map((tick) => element("p", {}, [when(tick.at), parts ? tick.parts || say["own parts"] : "", told(tick)].filter(Boolean).join(": "))),
      element("p", {}, [say["is now"], parts ? now().parts || say["own parts"] : "", figures || say["see step"]].filter(Boolean).join(": ")),
      ...(parts ? [] : step.corrections).map((one) => element("p", {}, `${one.id}, ${one.on}: ${one.old} → ${one.new} `, element("b", {}, say[`already ${one.done}`]))),
      answer("fine", say["answer fine"]), answer("redone", say["answer redone"]));
  }

  function note() {
    const place = now().place;
    const standing = keeper.marks(step, "note", place);
    const text = standing.map((one) => one.value).join("\n");
    const area = element("textarea", { id: `note-${step.id}`, rows: "2", maxlength: "2000", "data-mark": "note", "data-kept": text,
      onchange: () => { area.dataset.kept = area.value; keeper.add(keeper.entry(step, "note", place, area.value)); } });
    area.value = text;
    return element("details", { class: "note", open: Boolean(text) }, element("summary", {}, say.note), element("label", { for: area.id }, say["note label"]), area);
  }
}
