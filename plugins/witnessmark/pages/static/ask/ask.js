/* The page that is asked by a sheet's code: by the address, or by typing it. */
import { answered } from "./answer.js";
import { readCode } from "./code.js";
import { lookUp } from "./editions.js";

const say = JSON.parse(document.getElementById("ask-words").textContent);
const main = document.querySelector("main");
const place = document.querySelector("[data-answer]");
const form = document.querySelector("[data-ask]");
const root = new URL(main.dataset.root, location.href);
let asked = 0;

function show(...nodes) {
  place.replaceChildren(...nodes);
}

/** What stands behind # in the address; text that is no address encoding is taken as it is. */
function typed() {
  const text = location.hash.slice(1);
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

async function ask() {
  const turn = ++asked;
  const text = typed();
  if (!text) return show();
  const code = readCode(text);
  form.code.value = code ?? text.slice(0, 20);
  if (!code) return show(say["no code"]);
  show(say.reading);
  const answer = await lookUp(root, main.dataset.book, code);
  if (turn !== asked) return;                                   // another code was asked meanwhile
  show(...answered(answer, { code, date: main.dataset.date, root, now: Date.now(), say }));
  place.focus();
}

form.addEventListener("submit", (event) => {
  event.preventDefault();
  const code = readCode(form.code.value);
  if (!code) return show(say["no code"]);
  if (location.hash === `#${code}`) return ask();
  location.hash = code;
});
addEventListener("hashchange", ask);
form.hidden = false;
document.querySelector("[data-without]").hidden = true;
ask();
