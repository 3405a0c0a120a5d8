/* What a reader told of the own bench, in this browser only, under a name of this book. */
import { corner } from "./element.js";

/**
 * @typedef {{name: string, fields: Object<string, string[]>, texts: Object<string, string>}} Thing  `texts` are inputs of a working as typed
 * @typedef {{press: ?Thing, wrenches: Thing[], units: string, size: string}} Bench
 */

/**
 * @param {{book: string, root: string}} told by the page
 * @returns {{read: () => Bench, write: (change: object) => boolean}}
 */
export function keptBench({ book, root }) {
  const place = corner(`${book} ${new URL(root, location.href).pathname} my bench`);
  const read = () => ({ press: null, wrenches: [], units: "", size: "", ...place.read({}) });
  return { read, write: (change) => place.write({ ...read(), ...change }) };
}

/** Text size is told to the style by a class. */
export function setSize(size) {
  for (const name of [...document.documentElement.classList]) if (name.startsWith("wm-text-")) document.documentElement.classList.remove(name);
  if (/^[0-9]{3}$/.test(size)) document.documentElement.classList.add(`wm-text-${size}`);
}
