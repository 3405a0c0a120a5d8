/* The plain text of a correction: the lines that the page gives, then the answers. core/correction_text.py reads it back. */

/** A value as one line of the text; what follows a line break is indented, so that it cannot begin a line of its own. */
const line = (name, value) => `${name}: ${value.trim().split(/[\r\n\u2028\u2029\u0085\v\f\x1c-\x1e]+/).join("\n  ")}`.trimEnd();

/**
 * @param {{head: string, given: string[], asked: string[]}} names of the lines, in their order
 * @param {Record<string, string>} given what the page says, by name
 * @param {Record<string, string>} answers by name
 */
export function filledIn(names, given, answers) {
  const told = names.given.filter((name) => given[name]).map((name) => line(name, given[name]));
  return [names.head, ...told, "", ...names.asked.map((name) => line(name, answers[name] ?? "")), ""].join("\n");
}

/** The address of the forge's form with the text in it; null where it is too long to be an address. */
export function issueAddress(form, subject, text) {
  const address = `${form.address}?${encodeURIComponent(form.title)}=${encodeURIComponent(subject)}&${encodeURIComponent(form.body)}=${encodeURIComponent(text)}`;
  return address.length > 7_500 ? null : address;
}

export const mailAddress = (mail, subject, text) => `mailto:${mail}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(text.replace(/\n/g, "\r\n"))}`;
