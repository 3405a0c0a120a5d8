/* What is said of one figure, read off the page: it stands there once, for whoever reads it without a script too. */

const text = (entry, selector) => (entry.querySelector(selector)?.textContent ?? "").replace(/\s+/g, " ").trim();

/**
 * @param {Element} entry that holds the figure
 * @param {object} data of the page: `given` is what every text of it says
 * @returns {{subject: string, given: Record<string, string>}} by the names of core/correction_text.py
 */
export function figureIn(entry, data) {
  const section = entry.closest("[data-home]");
  const [word, when] = ["p > span", ".wm-case"].map((selector) => text(entry, selector));
  const label = section.dataset.name ? text(section, "h2") : text(document, ".bar .whose");
  return {
    subject: [label, word, when].filter(Boolean).join(", "),
    given: { ...data.given, Procedure: section.dataset.home, Spec: section.dataset.name, Role: entry.dataset.role, Case: when,
      Line: text(entry, "code"), "Printed figure": text(entry, ".big") },
  };
}
