/* The answer in words. Everything from the book's data becomes text, never markup. */
import { element, filled } from "../bench/element.js";

const DAY = 86_400_000;

/** How long ago this phone fetched what it answers by. */
export function ago(sent, now, say) {
  if (sent === null) return say.never;
  if (sent === "stick") return say.stick;
  const days = Math.floor(now / DAY) - Math.floor(sent / DAY);
  if (days < 0) return say.clock;
  return days === 0 ? say.today : days === 1 ? say.yesterday : filled(say.days, days);
}

/**
 * @param {object} answer of editions.js
 * @param {{code: string, date: string, root: URL, now: number, say: object}} asked `date` is the newest that the sources name
 * @returns {Node[]}
 */
export function answered(answer, asked) {
  const { say, code } = asked;
  const date = [asked.date, answer.newest].sort().at(-1) || say["no date"];
  const when = ago(answer.sent, asked.now, say);
  if (answer.found === "unread") return [verdict(say.unread), line(say["unread more"])];
  if (answer.found === "unknown") return [verdict(say.unknown), line(filled(say["unknown more"], date, when))];
  const sheet = answer.sheet;
  const whose = line(sheet.on ? filled(say.whose, sheet.title, sheet.variant, code, sheet.on) : filled(say["whose undated"], sheet.title, sheet.variant, code));
  if (sheet.state === "same") return [verdict(filled(say.same, date, when)), whose, line(say.later), ...ways(sheet, asked)];
  const done = element("p", { class: "done" }, element("b", {}, say["already done"][sheet["already done"]] ?? say["already done"].inspect));
  const state = sheet.state === "gone" ? say.gone : say.superseded;
  return [verdict(state, true), whose, done, ...ways(sheet, asked), ...changes(sheet, say), ...corrections(sheet, say)];
}

const line = (text) => element("p", {}, text);
const verdict = (text, grave = false) => element("h2", { class: grave ? "verdict grave" : "verdict" }, text);

/** A folder is a page only where a server stands behind it. */
const page = (url) => (url.protocol === "file:" && url.pathname.endsWith("/") ? `${url.href}index.html` : url.href);

function ways(sheet, { root, say }) {
  const way = (words, address) => element("p", {}, element("a", { class: "wide", href: page(new URL(address, root)) }, words));
  const code = sheet.now ? filled(say["now code"], say.now, sheet.now) : say.now;
  return [sheet.sheet && way(code, sheet.sheet), sheet.page && way(say.page, sheet.page)].filter(Boolean);
}

function changes(sheet, say) {
  if (sheet["left out"] === null) return [line(say["not kept"])];
  if (!sheet.changes.length) return [];
  const list = element("ul", { class: "changes" }, ...sheet.changes.map((change) => changed(change, say)));
  const more = sheet["left out"] ? [line(filled(say["left out"], sheet["left out"]))] : [];
  return [element("h3", {}, say.changes), list, ...more];
}

function changed(change, say) {
  const share = change["per cent"] ? ` ${filled(say["per cent"], (change["per cent"] > 0 ? "+" : "") + change["per cent"])}` : "";
  return element("li", { class: change.stop ? "told old" : "told" },
    change.stop ? element("b", { class: "grave" }, say.grave) : null,
    element("p", {}, element("b", {}, change.what), change.for ? `, ${change.for}` : ""),
    element("p", {}, `${say.was}: `, change.old === null ? say["was not"] : element("s", {}, both(change.old, change["old also"]))),
    element("p", {}, `${say.is}: `, change.new === null ? say["is not"] : element("b", {}, both(change.new, change["new also"])), share),
    change.why.length ? element("p", {}, say.why, change.why.join(", ")) : null);
}

const both = (text, also) => (also ? `${text} (${also})` : text);

function corrections(sheet, say) {
  if (!sheet.corrections.length) return [];
  const parts = sheet.corrections.map((each) => element("li", { class: "told" },
    element("p", {}, element("b", {}, filled(say.correction, each.id, each.on))),
    ...[[say.was, each.old], [say.is, each.new], [say.reason, each.reason], [say.evidence, each.evidence], [say.touches, each.touches]]
      .filter(([, text]) => text).map(([word, text]) => element("p", {}, `${word}: ${text}`)),
    element("p", {}, element("b", {}, say.done[each["if already done"]] ?? say.done.inspect))));
  return [element("h3", {}, say.corrections), element("ul", { class: "changes" }, ...parts)];
}
