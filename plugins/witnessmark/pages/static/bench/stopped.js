/* On the home page and a machine's: where the work at the bench stopped, in one row over the foot of the screen. What stands
   on the page moves for nothing. A phone on which no bench view was ever opened fetches nothing more than this. */
import { corner, element, filled } from "./element.js";

const row = document.querySelector("[data-wm-stopped]");
const { book, root, machines } = JSON.parse(document.getElementById("keep-data").textContent);
const base = new URL(root, location.href);
const name = `${book} ${base.pathname}`;                        // as the bench view names what it keeps

/** The newest stop in a procedure that this page still links to. */
async function show() {
  if (corner(`${name} device`).read(null) === null) return;
  const [{ openLog }, { stoppedHere }, { when }] = await Promise.all([import("./log.js"), import("./state.js"), import("./when.js")]);
  const entries = (await openLog(`${name} marks`, () => {})).all();
  const links = new Map([...document.querySelectorAll("article a[href]")].reverse().map((link) => [link.href, link.textContent]));
  const here = Object.keys(machines).filter((id) => location.pathname.startsWith(new URL(`${id}/`, base).pathname));
  const page = (stop) => new URL(`${stop.machine}/${stop.procedure}/`, base).href;
  const [last] = (here.length ? here : Object.keys(machines)).flatMap((machine) => stoppedHere(entries, machine, ""))
    .filter((stop) => links.has(page(stop))).sort((a, b) => b.at.localeCompare(a.at));
  if (!last) return;
  const whose = corner(`${name} whose ${last.machine}`);
  row.append(element("a", { href: `${page(last)}bench/#step-${last.value}`, onclick: () => whose.write({ ...whose.read({}), serial: last.serial, place: last.place }) },
    element("span", {}, element("b", {}, `${row.getAttribute("aria-label")}: `), [filled(row.dataset.serial, last.serial), last.place].filter(Boolean).join(", "),
      `, ${links.get(page(last))} · ${when(last.at)}`)));
  row.hidden = false;
}

show().catch((problem) => console.warn(problem));               // comfort only: the page is whole without it
