/* The bench view comes to life. On any error of ours the page falls back to what it is without script: every step, one after another. */
import { asks } from "./asks.js";
import { awake } from "./awake.js";
import { keeper } from "./keeper.js";
import { drawMarks } from "./marks.js";
import { drawSides, looseInTheBar } from "./sides.js";
import { stepping } from "./stepping.js";
import { stepLock } from "../keep/store.js";

const read = (id) => JSON.parse(document.getElementById(id).textContent);
const say = read("bench-words");

/** Lets the page be seen, now that nothing on it will move. */
const seen = () => document.querySelector("main").removeAttribute("data-coming");

function plain(problem) {
  seen();
  document.documentElement.classList.remove("stepping");
  for (const part of document.querySelectorAll("[data-asks], [data-thumbs]")) part.hidden = true;
  for (const part of document.querySelectorAll("main [hidden]:not([data-asks]):not([data-broken])")) part.hidden = false;
  const told = document.querySelector("[data-broken]");
  told.textContent = say.broken;
  told.hidden = false;
  console.warn(problem);
}

addEventListener("error", (event) => plain(event.error || event.message));
addEventListener("unhandledrejection", (event) => plain(event.reason));

const data = read("bench-data");
data.base = new URL(data.root, location.href);
for (const step of data.steps) step["by parts"] = document.querySelector(`#step-${step.id} [data-case]:not([data-case=""])`) !== null;
data.name = `${data.book} ${data.base.pathname}`;      // storage belongs to the origin, which other books may share

const inStep = stepLock(data.name);
const machine = asks(data, say, () => leaves.again());
const leaves = stepping(machine.fits, (leaf) => {
  document.title = leaf.id === "start" ? data.title : `${leaf.querySelector("h2").textContent.trim()} · ${data.title}`;
  inStep(Boolean(leaf.dataset.step));
  if (marks) arrived(leaf);
});
document.querySelector("[data-asks]").append(awake(say["awake label"], say));
let marks = null;
leaves.begin();

marks = await keeper(data, machine.now, () => marks && draw(leaves.current()));
const ends = marks.readEnds();
leaves.begin();
await ends;
seen();

function arrived(leaf) {
  const step = data.steps.find((each) => each.id === leaf.dataset.step);
  if (step) marks.here(step);
  draw(leaf);
}

function draw(leaf) {
  const step = data.steps.find((each) => each.id === leaf.dataset.step);
  const steps = leaves.leaves().filter((each) => each.dataset.step);
  looseInTheBar(marks.loose(), say);
  if (step) drawMarks(leaf, step, data, machine.now, marks, say);
  else drawSides(leaf, data, steps, machine, marks, say);
}
