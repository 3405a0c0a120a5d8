/* On a page of a procedure: looks whether a bench is kept in this browser, and only then fetches what works on it.
   On any error all that is the reader's own vanishes; the page stays as it was built. */
import { keptBench, setSize } from "./my_bench_kept.js";

const home = document.querySelector("[data-book][data-root]");
const bench = keptBench(home.dataset).read();

function vanish(problem) {
  for (const own of document.querySelectorAll(".wm-mine")) own.remove();
  console.warn(problem);
}

addEventListener("error", (event) => vanish(event.error || event.message));
addEventListener("unhandledrejection", (event) => vanish(event.reason));

if (bench.press || bench.wrenches.length || bench.units || bench.size) {
  document.head.append(Object.assign(document.createElement("link"), { rel: "stylesheet", href: new URL("mine.css", import.meta.url) }));
  setSize(bench.size);
  try {
    if (bench.press || bench.wrenches.length) (await import("./my_cards.js")).showCards(bench, home.dataset.root);
    if (bench.units) (await import("./units_first.js")).unitsFirst(bench.units);
  } catch (problem) {
    vanish(problem);
  }
}
