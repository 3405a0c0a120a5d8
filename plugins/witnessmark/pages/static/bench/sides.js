/* The first and the last leaf: where the work stopped, what is loose now, the record, and the marks' way to a file and back. */
import { element, filled, titleOf } from "./element.js";
import { handover, outsideReadings, recordLines } from "./handover.js";
import { placesOf } from "./marks.js";
import { paper } from "./paper.js";
import { transfer } from "./transfer.js";
import { when } from "./when.js";

/** "Loose now" stands in the bar of every step, one tap away. */
export function looseInTheBar(loose, say) {
  document.querySelector(".loose-now")?.remove();
  if (loose.length) document.querySelector(".bar").append(element("a", { class: "loose-now", href: "#loose-now" }, filled(say["loose count"], loose.length)));
}

const made = new Map();

/** A part that is made once for a machine and side: what it has said, and what is typed into it, stays when the rest is drawn anew. */
function once(name, make) {
  if (!made.has(name)) made.set(name, make());
  return made.get(name);
}

/** Draws the first or the last leaf; not while somebody types there. */
export function drawSides(leaf, data, steps, machine, keeper, say) {
  const box = leaf.querySelector("[data-marks-start], [data-marks-end]");
  const foot = leaf.querySelector("[data-marks-foot]");          // of the first leaf: below what is read before the work
  if ((box.contains(document.activeElement) || foot?.contains(document.activeElement)) && document.activeElement.matches("input, textarea, select")) return;
  const { serial, place } = machine.now();
  const ready = serial && (!data.places.length || place);
  const marks = once(`transfer ${leaf.id}`, () => transfer(data, keeper, say));
  const draw = (into, ...parts) => into.replaceChildren(...parts.filter(Boolean));
  if (leaf.id === "start") {
    draw(box, warnings(), stopped(), looseList());
    draw(foot, marks, ready && once(`paper ${serial} ${place}`, () => paper(data, steps, machine.now, keeper, say)));
  } else if (ready) {
    const outside = outsideReadings(data, steps, machine.now, keeper, say);
    draw(box, warnings(), outsideList(outside), openSteps(outside.length === 0), handover(recordLines(data, steps, machine.now, keeper, say), say), otherSide(), marks);
  } else {
    draw(box, warnings(), marks);
  }

  function warnings() {
    const words = !keeper.kept ? say["not kept"] : keeper.stays === false ? say["may forget"] : "";
    return words ? element("p", { class: "told outside" }, words) : null;
  }

  function stopped() {
    const found = keeper.stopped();
    if (!found.length) return null;
    return element("section", {}, element("h2", {}, say.stopped), ...found.slice(0, 3).map((one) => {
      const step = data.steps.find((each) => [each.id, ...each.was].includes(one.value));
      return element("a", { class: "wide", href: step ? `#step-${step.id}` : "#start", onclick: () => machine.set({ serial: one.serial, place: one.place }) },
        `${filled(say.serial, one.serial)}${one.place ? `, ${one.place}` : ""}: ${step ? filled(say.step, step.number) : one.value} · ${when(one.at)}`);
    }));
  }

  function looseList() {
    const loose = keeper.loose();
    return element("section", { id: "loose-now" }, loose.length ? element("h2", {}, say["loose now"]) : null, ...loose.map((end) =>
      element("div", { class: "wm-loose" }, element("p", {}, element("b", {}, end.state), end.place ? ` (${end.place})` : "", ` ${end.title}`),
        end.never.length ? element("p", {}, element("b", {}, `${say.never}: `), end.never.join(", ")) : null,
        element("p", {}, end["if forgotten"]))));
  }

  function outsideList(found) {
    return found.length ? element("section", {}, element("h2", {}, filled(say["outside count"], found.length)),
      ...found.map((one) => element("a", { class: "wide", href: `#${one.leaf.id}` }, one.text))) : null;
  }

  /** @param {boolean} proved whether no reading lies outside: only then is the work finished and no place to come back to */
  function openSteps(proved) {
    const open = steps.filter((each) => {
      const step = data.steps.find((one) => one.id === each.dataset.step);
      return placesOf(step.places, machine.now()).some((spot) => keeper.tick(step, spot) !== "done");
    });
    if (!open.length && proved) keeper.here(null);
    return element("section", {}, element("h2", {}, open.length ? filled(say["open steps"], open.length) : say["all done"]),
      ...open.map((each) => element("a", { class: "wide", href: `#${each.id}` }, titleOf(each))));
  }

  /** The side is left: marks are offered to be saved just below, and the other side is one tap away. */
  function otherSide() {
    const others = data.places.filter((each) => each.name !== place);
    return others.length ? element("section", {}, element("h2", {}, say["save now"]), ...others.map((each) =>
      element("a", { class: "wide", href: "#start", onclick: () => machine.set({ place: each.name }) }, filled(say["go to side"], each.name)))) : null;
  }
}
