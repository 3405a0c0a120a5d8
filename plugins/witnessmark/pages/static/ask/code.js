/* Reads a sheet code as a person types it: in either case, with or without the dash, I and L for 1, O for 0. */

const SIGNS = /^[0-9A-HJKMNP-TV-Z]{8}$/;

/**
 * @param {string} text what was typed, or the whole address that stands in the square code
 * @returns {string|null} the code as it is printed, `0K7M-29QX`; null where it is none
 */
export function readCode(text) {
  const signs = text.slice(text.lastIndexOf("#") + 1).toUpperCase().replace(/[\s\-‐–—]/g, "").replace(/[IL]/g, "1").replace(/O/g, "0");
  return SIGNS.test(signs) ? `${signs.slice(0, 4)}-${signs.slice(4)}` : null;
}
