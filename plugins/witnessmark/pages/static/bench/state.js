/* What the log of marks says: pure functions, no clock, no storage.

   An entry is never changed or removed. A later one names the entries it replaces, those its maker saw standing; what
   nobody replaced stands. So two phones that wrote the same reading apart leave two values standing, whatever their
   clocks said, and a reload, a second tab or a joined file can lose nothing.

   Entry: {v: 1, id, device, at, book, machine, procedure, serial, place, step, slot, value, unit, meaning, variant, code,
   parts, shown, replaces: [id]}. parts: what came from a donor, "" for the machine's own. slot: "tick", "hold", "second", "answer", "note", "here", or "value <name> <place>". */

const TEXTS = ["id", "device", "at", "book", "machine", "procedure", "serial", "place", "step", "slot", "meaning", "variant", "code", "shown"];
const LONGEST = 4000;
const BETWEEN = "\u0000";

/** Whether something read from a file is an entry: strangers' files are data too. */
export function isEntry(entry) {
  return Boolean(entry) && typeof entry === "object" && entry.v === 1 && entry.id !== ""
    && TEXTS.every((name) => typeof entry[name] === "string" && entry[name].length <= LONGEST)
    && (typeof entry.value === "boolean" || (typeof entry.value === "string" && entry.value.length <= LONGEST))
    && [entry.unit, entry.parts].every((text) => text === undefined || (typeof text === "string" && text.length <= 200))
    && Array.isArray(entry.replaces) && entry.replaces.every((id) => typeof id === "string");
}

/** Both logs in one, each entry once. */
export function union(ours, theirs) {
  return [...new Map([...theirs, ...ours].map((entry) => [entry.id, entry])).values()];
}

/** The entries nobody replaced, by where they stand. */
export function standing(entries) {
  const replaced = new Set(entries.flatMap((entry) => entry.replaces.filter((id) => id !== entry.id)));
  const slots = new Map();
  for (const entry of entries) {
    if (replaced.has(entry.id)) continue;
    const key = [entry.machine, entry.serial, entry.procedure, entry.step, entry.slot, entry.place].join(BETWEEN);
    slots.set(key, [...(slots.get(key) || []), entry]);
  }
  return slots;
}

/**
 * What stands at a place. `procedures` and `steps` are the name of today with those it had before.
 * @param {Map<string, object[]>} slots of `standing`
 * @param {{machine: string, serial: string, procedures: string[], steps: string[], slot: string, place: string}} where
 */
export function at(slots, where) {
  return where.procedures.flatMap((procedure) => where.steps.flatMap((step) =>
    slots.get([where.machine, where.serial, procedure, step, where.slot, where.place].join(BETWEEN)) || []));
}

/**
 * "open", "done", or "old": ticked while the step meant something else or another part was fitted, and not answered since.
 * Ticked on one phone and cleared on another counts as open. A mark typed from paper of another sheet code is old too.
 * @param {object[]} ticks standing, @param {object[]} answers standing, @param {string} meaning of the step today
 * @param {?string} parts from a donor now; null where the step is the same whatever is fitted
 */
export function tickState(ticks, answers, meaning, parts = null) {
  const holds = (entry) => entry.meaning === meaning && (parts === null || (entry.parts || "") === parts);
  if (!ticks.length || ticks.some((entry) => entry.value !== true)) return "open";
  if (ticks.every(holds)) return "done";
  return answers.some((entry) => holds(entry) && entry.value !== "redo") ? "done" : "old";
}

/** The places at which a step is ticked or was ticked under an older figure, with the state of each. */
export function ticked(slots, entries, where, meaningOf) {
  const places = new Set(entries.filter((entry) => entry.slot === "tick" && entry.machine === where.machine && entry.serial === where.serial
    && where.procedures.includes(entry.procedure) && where.steps.includes(entry.step)).map((entry) => entry.place));
  return [...places].map((place) => {
    const ticks = at(slots, { ...where, place, slot: "tick" });
    const meaning = meaningOf(ticks[0] && ticks[0].variant);
    return { place, state: tickState(ticks, at(slots, { ...where, place, slot: "answer" }), meaning), entries: ticks };
  }).filter((one) => one.state !== "open");
}

/**
 * What is loose now on one machine: left by a tick, and closed by no tick that still holds.
 * @param {object[]} ends of the machine, from its loose.json
 */
export function looseNow(ends, entries, machine, serial) {
  const slots = standing(entries);
  const found = [];
  for (const end of ends) {
    const of = (step) => ticked(slots, entries, { machine, serial, procedures: step.procedures, steps: step.steps },
      (variant) => step.meaning[variant] || "");
    const spots = (step, ticks) => ticks.map((tick) => tick.place || step.at);
    const closed = new Set(end.ties.flatMap((tie) => spots(tie, of(tie).filter((tick) => tick.state === "done"))));
    const left = of(end.left);
    const need = end.need[left[0] && left[0].entries[0].variant] || [];
    for (const place of new Set(spots(end.left, left))) {
      const shut = closed.has(place) || closed.has("") || (place === "" && closed.size > 0 && need.every((each) => each === "" || closed.has(each)));
      if (!shut) found.push({ ...end, place });
    }
  }
  return found;
}

/** Where the work on this machine stopped and was not finished: the last "here" of each procedure and side, the newest by its date first. */
export function stoppedHere(entries, machine, serial) {
  return [...standing(entries).values()].flat().filter((entry) => entry.slot === "here" && entry.value && entry.machine === machine && (!serial || entry.serial === serial))
    .sort((a, b) => b.at.localeCompare(a.at));
}
