/* The page for corrections comes to life: a form under the figure that is asked for, and what this phone still keeps. Without it every link still works. */
import { element } from "../bench/element.js";
import { figureIn } from "./figure.js";
import { correctionForm } from "./form.js";
import { keptCorrections } from "./kept.js";
import { waysOut } from "./ways.js";

const read = (id) => JSON.parse(document.getElementById(id).textContent);
const [data, say] = ["correct-data", "correct-words"].map(read);
const kept = keptCorrections(data);
const list = document.querySelector("[data-kept]");
const places = new Map([...document.querySelectorAll("[data-fill]")].map((place) => [place.parentElement.id, place]));
let open = null;

/** Opens the form under one figure and shuts the other; the figure is named in the address, so that it can be led to. */
function fill(anchor) {
  if (open) places.get(open).replaceChildren(button(open));
  const again = open !== anchor;
  open = again ? anchor : null;
  if (!again) return;
  const place = places.get(anchor);
  place.replaceChildren(button(anchor, say.close), correctionForm(anchor, figureIn(place.parentElement, data), { data, say, kept, changed: showKept }));
}

function button(anchor, words = say.fill) {
  return element("button", { type: "button", "aria-expanded": String(words === say.close), onclick: () => fill(anchor) }, words);
}

/** A figure by its own name, or of a spec or result with one line only that; what the address names beyond that is nothing of ours. */
function named() {
  let name = location.hash.slice(1);
  try {
    name = decodeURIComponent(name);
  } catch {
    return null;
  }
  if (places.has(name)) return name;
  const [first, ...more] = document.getElementById(name)?.querySelectorAll("[data-fill]") ?? [];
  return first && (!more.length || first.closest(".figures")) ? first.parentElement.id : null;
}

function showKept() {
  const entries = kept.all();
  const parts = entries.map(([name, entry]) => {
    const remove = element("button", { type: "button", onclick: () => {
      if (remove.textContent !== say.really) return void (remove.textContent = say.really);
      kept.remove(name);
      showKept();
    } }, say.remove);
    const where = new URL(`${encodeURI(String(entry.page))}correct/#${encodeURIComponent(String(entry.anchor))}`, kept.base);
    return element("li", { class: "told" }, element("p", {}, element("b", {}, String(entry.subject))), element("pre", {}, entry.text),
      element("div", { class: "tools" }, element("a", { class: "wide", href: where.href.startsWith(kept.base.href) ? where.href : "#" }, say.open), ...waysOut(data, entry, say), remove));
  });
  list.replaceChildren(...(entries.length ? [element("h2", {}, say.list), element("p", {}, say["list says"]), element("ul", { class: "changes" }, ...parts)] : []));
}

function begin() {
  const anchor = named();
  if (anchor && anchor !== open) fill(anchor);
}

for (const [anchor, place] of places) place.append(button(anchor));
for (const link of document.querySelectorAll("[data-static]")) link.remove();     // the form fills it with what was found
document.querySelector("[data-without]").hidden = true;
showKept();
begin();
addEventListener("hashchange", begin);
