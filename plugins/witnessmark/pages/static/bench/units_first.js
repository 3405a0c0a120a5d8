/* Figures in the reader's units first; the figure as printed stays beside it, marked as printed. */
import { UNITS } from "./units_table.js";
import { say } from "./my_bench_words.js";

const SYSTEMS = UNITS.filter(([symbol]) => symbol).map(([symbol, , , system]) => [symbol, system]).sort(([one], [other]) => other.length - one.length);

/** The system of the unit that a text ends in; "" where it ends in none. */
export function systemOf(text) {
  return SYSTEMS.find(([symbol]) => text.endsWith(` ${symbol}`) || (symbol === "°" && text.endsWith("°")))?.[1] ?? "";
}

/** @param {"inch"|"metric"} wanted */
export function unitsFirst(wanted) {
  for (const printed of document.querySelectorAll(".wm-figure .wm-printed")) {
    const other = printed.nextElementSibling;
    const system = systemOf(printed.textContent);
    if (!other?.matches(".wm-converted") || !system || system === "both" || system === wanted) continue;
    const first = document.createElement("span");
    first.className = "wm-mine-first";
    first.textContent = other.textContent.replace(/^\(|\)$/g, "");
    const mark = document.createElement("span");
    mark.className = "wm-converted wm-as-printed";
    mark.textContent = ` ${say["as printed"]}`;
    other.remove();
    printed.before(first, " ");
    printed.classList.add("wm-second");
    printed.after(mark);
  }
}
