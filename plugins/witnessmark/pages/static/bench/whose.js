/* Which machine is on the bench: its variant by its serial, and which of the values on a page hold for it. Pure functions. */

/**
 * The variant whose range holds the serial; null where the serial is no number or stands in no range.
 * @param {string} serial as typed; spaces round it are dropped
 * @param {{variants: {id: string, first: ?number, last: ?number, ranged: boolean}[]}} carrier
 */
export function variantOf(serial, carrier) {
  const typed = serial.trim();
  if (!/^[0-9]{1,9}$/.test(typed)) return null;
  const number = Number(typed);
  const found = carrier.variants.filter((variant) => variant.ranged
    && (variant.first === null || number >= variant.first) && (variant.last === null || number <= variant.last));
  return found.length === 1 ? found[0].id : null;
}

/**
 * Carrier -> variant: the machine's own variant for every part, but for those taken from a donor.
 * @param {{id: string}[]} carriers the machine itself first
 * @param {string} variant of the machine
 * @param {Object<string, string>} parts carrier -> variant of a donor, "" for its own
 */
export function combinationOf(carriers, variant, parts) {
  return Object.fromEntries(carriers.map((carrier, place) => [carrier.id, (place > 0 && parts[carrier.id]) || variant]));
}

/**
 * Whether a value holds: by its cases where other parts decide, else by the machine's variants.
 * @param {{variants: string, case: string}} told both lists joined by spaces; a case is pairs `carrier:variant` joined by commas
 * @param {?Object<string, string>} combination null where the variant is not known: everything holds
 * @param {string} main the machine's own carrier
 */
export function holds(told, combination, main) {
  if (!combination) return true;
  if (told.case) {
    return told.case.split(" ").some((one) => one.split(",").every((pair) => {
      const cut = pair.indexOf(":");
      return combination[pair.slice(0, cut)] === pair.slice(cut + 1);
    }));
  }
  return !told.variants || told.variants.split(" ").includes(combination[main]);
}
