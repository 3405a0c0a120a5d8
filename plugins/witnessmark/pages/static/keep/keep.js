/* Keeping a machine on this phone, as a reader sees it: the button, the progress, the date of the book held, and news of a newer one. */
import { Away, NoRoom, NotWhole, store } from "./store.js";

const data = JSON.parse(document.getElementById("keep-data").textContent);
const say = data.say;
const base = new URL(data.root || "./", location.href);
const name = `${data.book} ${base.pathname}`;
const able = "serviceWorker" in navigator && "caches" in self && "locks" in navigator && Boolean(self.crypto && crypto.subtle);
const machine = Object.keys(data.machines).find((id) => location.pathname.startsWith(new URL(`${id}/`, base).pathname));
const keep = store(name, base);
const line = document.querySelector("[data-wm-book]");
const box = document.querySelector("[data-wm-keep]");

const filled = (words, ...values) => words.replace(/\{\}/g, () => values.shift());
const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;

/** How long ago, in whole days; its date where the clock was set back since. */
export function ago(at, today) {
  const days = Math.floor((today - Date.parse(at)) / 86400000);
  if (Number.isNaN(days) || days < 0) return filled(say.on, at.slice(0, 10));
  return days === 0 ? say.today : days === 1 ? say.yesterday : filled(say.days, days);
}

function made(kind, words, click) {
  const button = document.createElement(kind);
  button.textContent = words;
  if (click) {
    button.type = "button";
    button.className = "wm-button";
    button.addEventListener("click", click);
  }
  return button;
}

function whatWentWrong(problem) {
  return problem instanceof NotWhole ? say["not whole"] : problem instanceof NoRoom ? say["no room"] : problem instanceof Away ? say.away : say.cannot;
}

function tellAge(held) {
  if (held) line.textContent = filled(say.kept, held.date || say["no date"], ago(held.fetched, Date.now()));
}

async function fetched(offer, told) {
  const bar = document.createElement("progress");
  bar.max = offer.bytes;
  told.replaceChildren(bar, " ", made("span", ""));
  return keep.alone(async () => {
    await keep.fetchWhole(machine, offer, (done, all) => {
      bar.value = done;
      told.lastChild.textContent = filled(say.keeping, megabytes(done), megabytes(all));
    });
    return true;
  }, true);
}

/** The part of a page that offers to keep its machine. */
async function offerToKeep() {
  const told = made("p", "");
  told.setAttribute("role", "status");
  const held = (await keep.kept())[machine];
  let offer = null;
  try {
    offer = (await keep.offered())[machine];
  } catch {
    told.textContent = held ? "" : say.away;
  }
  box.hidden = false;
  if (held) {
    box.replaceChildren(made("button", say.remove, async () => {
      await keep.remove(machine);
      told.textContent = say.removed;
      box.firstChild.remove();
    }), made("p", say.holds), told);
  } else if (offer) {
    box.replaceChildren(made("button", filled(say.keep, megabytes(offer.bytes)), async (event) => {
      event.target.disabled = true;
      try {
        await navigator.serviceWorker.register(new URL(`sw.js?book=${encodeURIComponent(data.book)}`, base), { scope: base.pathname });
        await navigator.serviceWorker.ready;
        if (!(await fetched(offer, told))) throw new Error(say.busy);
        await keep.adopt(machine, offer);
        if (navigator.storage && navigator.storage.persist) await navigator.storage.persist();
        told.textContent = "";
        tellAge((await keep.kept())[machine]);
        offerToKeep();
      } catch (problem) {
        told.textContent = problem.message === say.busy ? say.busy : whatWentWrong(problem);
        event.target.disabled = false;
      }
    }), made("p", say.holds), told);
  } else {
    box.replaceChildren(told);
  }
}

/** Looks whether the server has another build, fetches it whole beside the one in use, and says so; turning to it is the reader's to do. */
async function lookForNews(held) {
  const news = document.querySelector("[data-wm-news]");
  const told = made("p", "");
  told.setAttribute("role", "status");
  let offer = null;
  try {
    offer = (await keep.offered())[machine];
    if (!offer || offer.list === held.list) return;
    await keep.alone(() => keep.fetchWhole(machine, offer, () => {}));
  } catch (problem) {
    if (problem instanceof Away) return;
    told.textContent = `${whatWentWrong(problem)} ${filled(say.still, held.date || say["no date"])}`;
    news.replaceChildren(told);
    news.hidden = false;
    return;
  }
  const words = offer.date === held.date ? filled(say["same date"], held.date) : filled(say.news, offer.date, held.date);
  news.replaceChildren(made("p", words), made("button", say.use, async () => {
    if (await keep.adopt(machine, offer)) location.reload();
    else told.textContent = say["in a step"];
  }), told);
  news.hidden = false;
}

async function start() {
  if (!able) {
    if (box && machine) {
      box.hidden = false;
      box.textContent = say.cannot;
    }
    return;
  }
  const all = await keep.kept();
  const held = machine ? all[machine] : null;
  tellAge(held || (machine ? null : Object.values(all).sort((a, b) => a.fetched.localeCompare(b.fetched))[0]));
  if (box && machine) await offerToKeep();
  if (held) await lookForNews(held);
}

start().catch((problem) => {                    // a browser that refuses storage refuses it here: the page is whole without
  if (box && machine) {
    box.hidden = false;
    box.textContent = say.cannot;
  }
  console.warn(problem);
});
