/* The hand-over record: what was done, measured, noted and left loose on one machine and side, as text to copy or print. */
import { element, filled, titleOf } from "./element.js";
import { judgeTyped, limitsOf, limitText } from "./judge.js";
import { placesOf, shownAt } from "./marks.js";
import { when } from "./when.js";

const asRead = (one) => `${one.value} ${one.unit || ""}`.trim();

/** "OUTSIDE, over: 0.006 to 0.012 in" where one of the values that stand breaks a limit of today, or is no number; else "". */
function outside(told, values, data, now, say) {
  const limits = limitsOf(told, now().combination, data.carriers[0].id);
  const found = values.map((one) => judgeTyped(told, one.value, one.unit, limits)).find(({ verdict }) => !["none", "inside"].includes(verdict));
  return found ? [say[found.verdict], found.limit && limitText(found.limit)].filter(Boolean).join(": ") : "";
}

/** Readings that stand and lie outside: the leaf of their step, and words for a link to it. */
export function outsideReadings(data, leaves, now, keeper, say) {
  return leaves.flatMap((leaf) => {
    const step = data.steps.find((each) => each.id === leaf.dataset.step);
    return step.records.flatMap((told) => placesOf(told.places.length ? told.places : step.places, now()).flatMap((spot) => {
      const values = keeper.marks(step, `value ${told.name}`, spot);
      const found = outside(told, values, data, now, say);
      return found ? [{ leaf, text: `${[told.label, spot].filter(Boolean).join(", ")}: ${values.map(asRead).join(` ${say.and} `)}. ${found}` }] : [];
    }));
  });
}

/** The record in lines of plain text. Marks of steps that are no longer in the procedure are told last: none is lost. */
export function recordLines(data, leaves, now, keeper, say) {
  const { serial, place, variant, parts } = now();
  const lines = [data.title, data["machine title"], [filled(say.serial, serial), variant, parts, place].filter(Boolean).join(" · "),
    variant && data.codes[variant] ? filled(say["sheet code"], data.codes[variant]) : ""];
  const known = new Set();
  for (const leaf of leaves) {
    const step = data.steps.find((each) => each.id === leaf.dataset.step);
    for (const id of [step.id, ...step.was]) known.add(id);
    lines.push("", `${step.number}. ${titleOf(leaf)}`);
    for (const spot of placesOf(step.places, now())) {
      const at = spot ? `${spot}: ` : "";
      lines.push(`   ${at}${done(step, spot, leaf)}`);
      for (const [slot, words, asked] of [["hold", say.held, step.hold], ["second", say.second, step.second]]) {
        if (asked) lines.push(`   ${at}${words}: ${keeper.tick(step, spot, slot) === "done" ? when(keeper.marks(step, slot, spot)[0].at) : say["not done"]}`);
      }
    }
    for (const told of step.records) {
      for (const spot of placesOf(told.places.length ? told.places : step.places, now())) {
        const values = keeper.marks(step, `value ${told.name}`, spot);
        const found = outside(told, values, data, now, say);
        lines.push(`   ${[told.label, spot].filter(Boolean).join(", ")}: ${values.map(asRead).join(` ${say.and} `) || say["not read"]}${found ? `  ${found}` : values[0] && values[0].shown ? ` (${values[0].shown})` : ""}`);
      }
    }
    for (const one of keeper.marks(step, "note", place)) if (one.value) lines.push(`   ${say.note}: ${one.value}`);
  }
  const gone = keeper.all().filter((one) => one.machine === data.machine && one.serial === serial && [data.procedure, ...data.was].includes(one.procedure)
    && one.step && !data.steps.some((step) => [step.id, ...step.was].includes(one.step)));
  if (gone.length) lines.push("", say["steps gone"], ...gone.map((one) => `   ${one.step}, ${one.slot} ${one.place}: ${one.value} ${one.unit || ""} ${when(one.at)}`));
  const loose = keeper.loose();
  lines.push("", loose.length ? `${say["loose now"]}:` : say["nothing loose"], ...loose.map((end) => `   ${end.state}${end.place ? ` (${end.place})` : ""} ${end.title}`));
  return lines;

  /** Done, done under an older figure or with another part fitted, or not done. */
  function done(step, spot, leaf) {
    const [tick] = keeper.marks(step, "tick", spot);
    const state = keeper.tick(step, spot);
    if (state === "open") return say["not done"];
    if (state === "done") return [`${say.done} ${when(tick.at)}`, tick.parts].filter(Boolean).join(", ");
    const why = tick.meaning === keeper.meaning(step) ? say["other part"] : say.old;
    return `${why} ${when(tick.at)}: ${[tick.parts, tick.shown].filter(Boolean).join(": ")}; ${say["is now"]} ${shownAt(leaf)}`;
  }
}

/** The record with its two buttons. */
export function handover(lines, say) {
  const text = element("pre", { tabindex: "0", "aria-label": say.record }, lines.join("\n"));
  const said = element("p", { class: "said", role: "status" });
  const copy = element("button", { type: "button", onclick: async () => {
    try {
      await navigator.clipboard.writeText(lines.join("\n"));
      said.textContent = say.copied;
    } catch {
      getSelection().selectAllChildren(text);
      said.textContent = say["copy by hand"];
    }
  } }, say.copy);
  const print = element("button", { type: "button", onclick: () => {
    document.documentElement.classList.add("recording");
    addEventListener("afterprint", () => document.documentElement.classList.remove("recording"), { once: true });
    window.print();
  } }, say.print);
  return element("section", { class: "handover" }, element("h2", {}, say.record), element("div", { class: "tools" }, copy, print, said), text);
}
