/* The plain text of a correction: the lines that the page gives, then the answers. core/correction_text.py reads it back. */

/** A value as one line of the text; what follows a line break is indented, so that it cannot begin a line of its own. */
const line = (name, value) => `${name}: ${value.trim().split(/[\r\n\u2028\u2029\u0085\v\f]+/).join("\n  ")}`.trimEnd();

/**
 * @param {string} text with the questions open, as the build wrote it
 * @param {string[]} asked the names of the questions
 * @param {Record<string, string>} answers by name
 */
export function filledIn(text, asked, answers) {
  const head = text.slice(0, text.lastIndexOf(`\n${asked[0]}:`) + 1);
  return `${head}${asked.map((name) => line(name, answers[name] ?? "")).join("\n")}\n`;
}

/** The address of the forge's form with the text in it; null where it is too long to be an address. */
export function issueAddress(form, subject, text) {
  const address = `${form.address}?${encodeURIComponent(form.title)}=${encodeURIComponent(subject)}&${encodeURIComponent(form.body)}=${encodeURIComponent(text)}`;
  return address.length > 7_500 ? null : address;
}

export const mailAddress = (mail, subject, text) => `mailto:${mail}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(text.replace(/\n/g, "\r\n"))}`;
