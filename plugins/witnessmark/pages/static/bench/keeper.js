/* The marks of one page: what stands for the machine on the bench, and new entries made with all that belongs to them. */
import { corner } from "./element.js";
import { freshId, openLog } from "./log.js";
import { at, isEntry, looseNow, standing, stoppedHere, tickState } from "./state.js";

/**
 * @param {object} data of the page
 * @param {() => object} now the machine on the bench: serial, place, variant, combination
 * @param {() => void} changed after every addition, from whatever tab
 */
export async function keeper(data, now, changed) {
  const id = corner(`${data.name} device`);
  const device = id.read(null) || freshId().slice(0, 8);
  id.write(device);
  const saved = corner(`${data.name} saved`);
  let asked = null;                                             // the answer to asking for storage that stays
  let slots = new Map();
  const log = await openLog(`${data.name} marks`, renew);
  let ends = [];

  function renew() {
    slots = standing(log.all());
    changed();
  }

  const names = (step) => ({ procedures: [data.procedure, ...data.was], steps: [step.id, ...step.was] });
  const marks = (step, slot, place) => at(slots, { machine: data.machine, serial: now().serial, ...names(step), slot, place });
  const meaning = (step) => step.meaning[now().variant] || "";
  const parts = (step) => (step["by parts"] ? now().parts : null);

  async function persistent() {
    if (asked === null) {
      try {
        asked = await navigator.storage.persisted() || await navigator.storage.persist();
      } catch {
        asked = false;
      }
      changed();
    }
  }

  function entry(step, slot, place, value, more = {}) {
    const { serial, variant } = now();
    return { v: 1, id: freshId(), device, at: new Date().toISOString(), book: data.book, machine: data.machine, procedure: data.procedure, serial,
      place, step: step ? step.id : "", slot, value, meaning: step ? meaning(step) : "", variant: variant || "", code: data.codes[variant] || "",
      parts: now().parts, shown: "", replaces: (step ? marks(step, slot, place) : heads(slot, place)).map((one) => one.id), ...more };
  }

  function heads(slot, place) {
    return at(slots, { machine: data.machine, serial: now().serial, procedures: [data.procedure], steps: [""], slot, place });
  }

  const keeper = {
    marks, meaning, entry,
    get kept() { return log.kept; },
    get stays() { return asked; },
    all: () => log.all(),
    /** The state of a tick, or of an inspection that belongs to it: these fall with the figure too. */
    tick: (step, place, slot = "tick") => tickState(marks(step, slot, place), marks(step, "answer", place), meaning(step), parts(step)),
    add: async (...entries) => {
      await log.add(entries);
      renew();
      persistent();
    },
    /** Remembers the step on screen: once for each arrival, so that a crash loses nothing; null when all is done. */
    here: (step) => {
      const { serial, place } = now();
      const last = heads("here", place)[0];
      const value = step ? step.id : "";
      if (serial && (last ? last.value !== value : value)) return keeper.add(entry(null, "here", place, value));
    },
    stopped: () => stoppedHere(log.all(), data.machine, now().serial).filter((one) => [data.procedure, ...data.was].includes(one.procedure)),
    loose: () => (now().serial ? looseNow(ends, log.all(), data.machine, now().serial) : []),
    /** The loose ends of the whole machine; a phone without them says nothing of them. */
    async readEnds() {
      try {
        ends = await (await fetch(new URL(`${data.machine}/loose.json`, data.base))).json();
        changed();
      } catch {
        ends = [];
      }
    },
    file: () => {
      const entries = log.all().filter((one) => one.machine === data.machine);
      saved.write({ at: new Date().toISOString(), count: entries.length });
      return { what: "witnessmark marks", version: 1, book: data.book, machine: data.machine, entries };
    },
    saved: () => saved.read(null),
    /** Takes the entries of a file in; gives how many were new, or null where it is no such file. */
    async join(text) {
      let file = null;
      try {
        file = JSON.parse(text);
      } catch {
        return null;
      }
      if (!file || file.what !== "witnessmark marks" || file.book !== data.book || !Array.isArray(file.entries)) return null;
      const known = new Set(log.all().map((one) => one.id));
      const fresh = file.entries.filter((one) => isEntry(one) && !known.has(one.id));
      if (fresh.length) await keeper.add(...fresh);
      return fresh.length;
    },
  };
  slots = standing(log.all());
  return keeper;
}
