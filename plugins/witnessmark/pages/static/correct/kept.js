/* Corrections kept on this phone until they are sent: for the whole book, under a name that no other book of this host has. */
import { corner } from "../bench/element.js";

const LONGEST = 2_000;

/**
 * @param {{book: string, root: string, page: string}} data of the page
 * An entry is {page, anchor, subject, text, answers, at}, under `page#anchor`.
 */
export function keptCorrections(data) {
  const base = new URL(data.root, location.href);
  const place = corner(`${data.book} ${base.pathname} corrections`);
  const read = () => {
    const all = place.read({});
    return all && typeof all === "object" && !Array.isArray(all) ? all : {};
  };
  const key = (anchor) => `${data.page}#${anchor}`;
  return {
    base,
    all: () => Object.entries(read()).filter(([, entry]) => entry && typeof entry.text === "string"),
    answers: (anchor) => read()[key(anchor)]?.answers ?? {},
    /** Keeps what was typed; gives whether the browser does. Answers that are all empty are not kept. */
    keep(anchor, subject, text, answers) {
      const all = read();
      const short = Object.fromEntries(Object.entries(answers).map(([name, value]) => [name, value.slice(0, LONGEST)]));
      if (Object.values(short).some((value) => value.trim())) all[key(anchor)] = { page: data.page, anchor, subject, text, answers: short, at: new Date().toISOString() };
      else delete all[key(anchor)];
      return place.write(all);
    },
    remove(name) {
      const all = read();
      delete all[name];
      return place.write(all);
    },
  };
}
