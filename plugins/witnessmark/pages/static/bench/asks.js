/* Serial, side and donor parts: asked on the first leaf, always in sight in the bar, and what they pick on the page. */
import { corner, element, filled } from "./element.js";
import { combinationOf, holds, variantOf } from "./whose.js";

const TOLD = ".wm-figure[data-variant], .wm-judged[data-variant], .result > [data-variant]";

/**
 * @param {object} data of the page
 * @param {object} say words
 * @param {() => void} changed called after each change
 */
export function asks(data, say, changed) {
  const form = document.querySelector("[data-asks]");
  const kept = corner(`${data.name} whose ${data.machine}`);
  const main = data.carriers[0];
  const whose = { serial: "", place: "", donors: {}, ...kept.read({}) };
  const selects = new Map();

  const variant = () => variantOf(whose.serial, main);
  const combination = () => (variant() && data.variants.includes(variant()) ? combinationOf(data.carriers, variant(), parts()) : null);
  const places = () => data.places.filter((place) => !variant() || !place.only.length || place.only.includes(variant()));

  /** The side, where this procedure has sides and this machine has that one: it is remembered from another procedure. */
  const side = () => (places().some((place) => place.name === whose.place) ? whose.place : "");

  /** Carrier -> variant of a donor. One side may have one and the other its own: each side of each serial is asked for itself. */
  const spot = () => `${whose.serial.trim()} ${side()}`;
  const parts = () => whose.donors[spot()] || {};

  /** The parts from a donor, in words; one of the machine's own variant is as good as its own. */
  const fitted = () => data.carriers.slice(1).filter(({ id }) => (parts()[id] || variant()) !== variant()).map(({ id, title }) => `${title} ${parts()[id]}`).join(", ");

  function set(change) {
    Object.assign(whose, change);
    kept.write(whose);
    for (const [carrier, select] of selects) select.value = parts()[carrier] || "";
    pick();
    changed(Object.keys(change)[0]);
  }

  /** Hides what is for other machines; where the variant is not known nothing is hidden. */
  function pick() {
    const now = combination();
    const fits = (told) => holds({ variants: told.dataset.variant || "", case: told.dataset.case || "" }, now, main.id);
    const swapped = now && Object.values(now).some((each) => each !== now[main.id]);
    for (const told of document.querySelectorAll(TOLD)) told.hidden = !fits(told);
    for (const row of document.querySelectorAll(".wm-donors tr[data-case]")) {
      row.hidden = Boolean(now) && !(swapped && fits(row));
      const more = row.nextElementSibling;                  // its warnings name marks too
      if (more && more.matches(".wm-more")) more.hidden = row.hidden;
    }
    for (const card of document.querySelectorAll(".wm-card")) card.hidden = Boolean(now) && (swapped || !fits(card));
    for (const whole of document.querySelectorAll(".limit, .wm-torque, .result, .wm-donors")) {
      const parts = whole.querySelectorAll(`${TOLD}, tr[data-case]`);
      whole.hidden = parts.length > 0 && [...parts].every((part) => part.hidden);
    }
    bar();
  }

  function bar() {
    const serial = whose.serial.trim();
    const told = serial ? [filled(say.serial, serial)] : [say["no serial"]];
    if (variant()) told.push(variant());
    for (const carrier of data.carriers.slice(1)) if (parts()[carrier.id]) told.push(`${carrier.title} ${parts()[carrier.id]}`);
    if (side()) told.push(side());
    document.querySelector("[data-whose]").replaceChildren(element("a", { href: "#start" }, told.join(" · ")));
    answer.textContent = !serial ? "" : !variant() ? filled(say["unknown serial"], serial)
      : data.variants.includes(variant()) ? filled(say.for, variant(), main.variants.find((each) => each.id === variant()).title)
        : filled(say["not for"], filled(say.serial, serial), variant());
  }

  function choice(place) {
    const input = element("input", { type: "radio", name: "place", value: place.name, onchange: () => set({ place: place.name }) });
    input.checked = place.name === side();
    return element("label", { class: "choice" }, input, place.name);
  }

  function part(carrier) {
    const options = [element("option", { value: "" }, say.own), ...carrier.variants.map((each) =>
      element("option", { value: each.id }, each.measure ? `${each.title} (${each.measure})` : each.title))];
    const select = element("select", { id: `part-${carrier.id}`, onchange: () => set({ donors: { ...whose.donors, [spot()]: { ...parts(), [carrier.id]: select.value } } }) }, ...options);
    select.value = parts()[carrier.id] || "";
    selects.set(carrier.id, select);
    return element("div", {}, element("label", { for: select.id }, filled(say.part, carrier.title)), select);
  }

  const answer = element("p", { class: "said", role: "status" });
  const serial = element("input", { id: "serial", inputmode: "numeric", autocomplete: "off", maxlength: "12", oninput: () => set({ serial: serial.value }) });
  serial.value = whose.serial;
  form.append(element("div", {}, element("label", { for: "serial" }, filled(say["serial label"])), serial), answer);
  if (data.places.length) {
    form.append(element("fieldset", {}, element("legend", {}, filled(say["place label"], data.group)), ...data.places.map(choice)));
  }
  form.append(...data.carriers.slice(1).map(part));
  form.addEventListener("submit", (event) => event.preventDefault());
  form.hidden = false;
  document.querySelector("[data-variants]").hidden = true;
  pick();
  return {
    /** The machine on the bench: serial and side as given, which variant that is, and what of it comes from a donor. */
    now: () => ({ serial: whose.serial.trim(), place: side(), variant: variant(), combination: combination(), parts: fitted() }),
    fits: (leaf) => !combination() || leaf.dataset.variants.split(" ").includes(variant()),
    set(change) {
      set(change);
      serial.value = whose.serial;
      for (const input of form.querySelectorAll("[name=place]")) input.checked = input.value === side();
    },
  };
}
