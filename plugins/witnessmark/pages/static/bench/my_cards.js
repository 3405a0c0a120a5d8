/* The reader's own card under each built press card, and own settings under each torque; all in `.wm-mine`, all labelled as the reader's. */
import { element, filled } from "./element.js";
import { pressCard, SHARES } from "./press_card.js";
import { wrenchSetting } from "./wrench_setting.js";
import { say } from "./my_bench_words.js";

/**
 * All cards are made before the first is shown: where one cannot be made there is none.
 * @param {object} bench as kept
 * @param {string} root of the site, from this page
 */
export function showCards(bench, root) {
  const made = [];
  if (bench.press) {
    for (const built of oncePerForce(document.querySelectorAll(".wm-card[data-job]"))) made.push([built, built, pressLeaf(built.querySelector("h3").textContent, built.dataset.job, bench.press, root)]);
    for (const row of oncePerForce(document.querySelectorAll(".wm-donors tr[data-job]")).reverse()) {    // each goes before the one after it
      const table = row.closest("table");
      made.push([row, table, pressLeaf(`${table.dataset.title}, ${row.querySelector("th").textContent}`, row.dataset.job, bench.press, root)]);
    }
  }
  for (const built of document.querySelectorAll(".wm-judged[data-job]")) {
    for (const own of bench.wrenches) made.push([built, built, wrenchLines(own, JSON.parse(built.dataset.job))]);
  }
  for (const [built, after, own] of made) {
    after.after(own);
    const follow = () => { own.hidden = built.hidden; };        // the bench view hides what is for another machine
    new MutationObserver(follow).observe(built, { attributes: true, attributeFilter: ["hidden"] });
    follow();
  }
}

/** Of the cards of several presses for one and the same force, the first: the reader has one press. */
function oncePerForce(cards) {
  const where = (card) => card.closest("table")?.parentNode || card.parentNode;
  const force = (card) => [where(card), card.dataset.spec || card.closest("table").dataset.spec, card.dataset.case || card.dataset.variant, card.dataset.job];
  const same = (one, other) => force(one).every((part, at) => part === force(other)[at]);
  return [...cards].filter((built, at, all) => all.findIndex((other) => same(built, other)) === at);
}

const pair = (word, text) => [element("dt", {}, word), element("dd", {}, text)];
const both = ({ printed, converted }) => (converted ? `${printed}${printed.includes("(") ? ` = ${converted}` : ` (${converted})`}` : printed);
const sentences = (list) => list.map((said) => element("p", { class: "wm-warning" }, said.charAt(0).toUpperCase() + said.slice(1) + "."));

function refusedWords(out, words) {
  const said = [...out.problems.map((each) => [each.message, each.mend]), ...out.refusals.map((each) => [each.message, each.instead])];
  return said.flatMap(([message, instead]) => [element("p", { class: "wm-refused" }, element("strong", {}, filled(words, message))), element("p", {}, filled(say.instead, instead))]);
}

function pressLeaf(title, asked, press, root) {
  const job = JSON.parse(asked);
  const out = pressCard({ ...press.texts, ...job });
  const value = Object.fromEntries(out.values.map((each) => [each.name, each]));
  const leaf = element("section", { class: "wm-mine" },
    element("h3", { class: "wm-h" }, filled(say["my card"], press.name)),
    element("p", { class: "wm-mine-for" }, `${document.querySelector("h1").textContent}: ${title}`),
    element("p", { class: "wm-yours" }, say.yours));
  if (out.problems.length || out.refusals.length) {
    leaf.append(...refusedWords(out, say.refused));
  } else {
    const marks = SHARES.map((share) => [share, value[`mark at ${share} %`]]).filter(([, mark]) => mark);
    if (marks.length) {
      leaf.append(element("table", { class: "wm-marks" }, element("caption", {}, say.marks),
        element("tbody", {}, element("tr", {}, ...marks.map(([share]) => element("th", { scope: "col" }, `${share} %`))),
          element("tr", {}, ...marks.map(([share, mark]) => element("td", { "data-share": share }, element("b", { class: "wm-mark" }, mark.printed), " ",
            element("span", { class: "wm-converted" }, mark.converted)))))));
    }
    const never = value["never-pass mark"];
    leaf.append(element("p", { class: "wm-never", "data-share": "never" }, element("b", {}, say.never), " ", element("b", { class: "wm-mark" }, never.printed), " ",
      element("span", { class: "wm-converted" }, never.converted)));
    const told = [[say.means, value["force at the last mark"]], [say.uncertain, value.uncertainty]].filter(([, each]) => each).flatMap(([word, each]) => pair(word, both(each)));
    if (value["accept band low"]) told.push(...pair(say.accept, filled(say.to, value["accept band low"].printed, value["accept band high"].printed)));
    leaf.append(element("dl", {}, ...told));
  }
  leaf.append(...sentences(out.warnings), element("p", {}, say["no stud"]),
    element("p", {}, element("b", {}, say.inputs)), list(press.texts),
    element("p", {}, element("b", {}, say.asked)), list(job),
    element("p", { class: "wm-mine-tools" }, element("button", { type: "button", class: "wm-button", onclick: () => printAlone(leaf) }, say.print), " ",
      element("a", { class: "wm-button", href: `${root}bench/` }, say.edit)));
  return leaf;
}

const list = (texts) => element("dl", { class: "wm-inputs" }, ...Object.entries(texts).flatMap(([name, text]) => pair(name, text)));

/** The card as a leaf of its own: the rest of the page stays off the paper. */
function printAlone(leaf) {
  leaf.classList.add("wm-leaf");
  document.documentElement.classList.add("wm-print-leaf");
  addEventListener("afterprint", () => {
    leaf.classList.remove("wm-leaf");
    document.documentElement.classList.remove("wm-print-leaf");
  }, { once: true });
  print();
}

function wrenchLines(own, job) {
  const out = wrenchSetting({ ...own.texts, ...job });
  const value = Object.fromEntries(out.values.map((each) => [each.name, each]));
  const part = element("section", { class: "wm-mine" }, element("h4", { class: "wm-h" }, filled(say["my setting"], own.name)));
  if (out.problems.length || out.refusals.length) {
    part.append(...refusedWords(out, say["wrench refused"]));
  } else {
    const rounds = [1, 2, 3, 4].map((round) => value[`pass ${round}`]).filter(Boolean).map((each) => each.printed);
    part.append(element("p", { class: "wm-set" }, element("b", {}, `${say.setting} ${both(value.setting)}`), `, ${say.delivers} ${both(value["delivered torque"])}`,
      rounds.length > 1 ? `; ${say.rounds} ${rounds.join(", ")}` : ""));
  }
  part.append(...sentences(out.warnings), element("p", {}, element("b", {}, say.inputs)), list(own.texts));
  return part;
}
