/* The bench view comes to life. On any error of ours the page falls back to what it is without script: every step, one after another. */
import { asks } from "./asks.js";
import { awake } from "./awake.js";
import { stepping } from "./stepping.js";

const read = (id) => JSON.parse(document.getElementById(id).textContent);
const say = read("bench-words");

function plain(problem) {
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
data.name = `${data.book} ${data.base.pathname}`;      // storage belongs to the origin, which other books may share

const machine = asks(data, say, () => leaves.again());
const leaves = stepping(machine.fits, (leaf) => {
  document.title = leaf.id === "start" ? data.title : `${leaf.querySelector("h2").textContent.trim()} · ${data.title}`;
});
document.querySelector("[data-asks]").append(awake(say["awake label"], say));
leaves.begin();
