/* The search box: fetches what finding needs when the reader first turns to it, and shows hits as plain links.
   Hidden until this script runs, so that a page without scripts shows no dead box. */
(function () {
  "use strict";

  const HERE = document.currentScript.src;
  const SHOWN = 10;
  const PARTS = ["minisearch.js", "unpack.js", "find.js", "landing.js"];

  const ON_A_STICK = location.protocol === "file:"; // where nothing can be fetched, the data stands there as scripts

  function script(name, from) {
    return new Promise(function (resolve, reject) {
      const element = document.createElement("script");
      element.src = new URL(name, from || HERE).href;
      element.onload = resolve;
      element.onerror = () => reject(new Error(name));
      document.head.append(element);
    });
  }

  function element(name, className, text) {
    const made = document.createElement(name);
    if (className) made.className = className;
    if (text) made.textContent = text;
    return made;
  }

  function start(box) {
    const form = box.querySelector("form");
    const input = box.querySelector("input");
    const panel = box.querySelector("[data-wm-search-panel]");
    const status = box.querySelector("[data-wm-search-status]");
    const list = box.querySelector("ol");
    const words = box.dataset;
    const root = new URL(words.base.replace(/\/*$/, "/"), location.href);
    const excerpts = new Map();
    let ready = null;
    let asked = 0;

    function fetched(path) {
      if (ON_A_STICK) return script(path.replace(/json$/, "js"), root).then(() => window.witnessmarkSearchData[path]);
      return fetch(new URL(path, root)).then(function (answer) {
        if (!answer.ok) throw new Error(path + ": " + answer.status);
        return answer.json();
      });
    }

    function finder() {
      if (!ready) {
        ready = Promise.all([
          fetched("search/index.json"),
          PARTS.reduce((before, name) => before.then(() => script(name)), Promise.resolve()),
        ]).then(([index]) => window.witnessmarkSearch.Finder(index, window.MiniSearch));
        ready.catch(() => { ready = null; }); // the next letter tries again
      }
      return ready;
    }

    function excerpt(number) {
      if (!excerpts.has(number)) {
        excerpts.set(number, fetched("search/" + number + ".json").catch(function () {
          excerpts.delete(number);
          return null;
        }));
      }
      return excerpts.get(number);
    }

    function row(hit, place) {
      const link = element("a", "wm-search__hit");
      link.href = new URL(hit.url + (ON_A_STICK ? "index.html" : "") + (place.anchor ? "#" + place.anchor : ""), root).href;
      link.append(element("span", "wm-search__title", hit.title), element("span", "wm-search__context", hit.context));
      if (place.text) link.append(element("span", "wm-search__line", place.text));
      if (place.off) {
        const template = place.off < 0 ? words.textNearLess : words.textNearMore;
        link.append(element("span", "wm-search__near", template.replace("{}", (100 * Math.abs(place.off)).toFixed(1))));
      }
      const item = element("li");
      item.append(link);
      return item;
    }

    function open(opened) {
      panel.hidden = !opened;
    }

    async function search() {
      const mine = (asked += 1);
      const query = input.value.trim();
      panel.setAttribute("aria-busy", "true");
      if (!query) {
        list.replaceChildren();
        status.textContent = "";
        panel.removeAttribute("aria-busy");
        return open(false);
      }
      let rows = [];
      let text = words.textFailed;
      try {
        const found = await finder();
        const hits = found.find(query);
        const shown = hits.slice(0, SHOWN);
        const places = await Promise.all(shown.map(async (hit) =>
          window.witnessmarkSearch.landing(hit, await excerpt(hit.number), found.stop)));
        rows = shown.map((hit, place) => places[place] && row(hit, places[place])).filter(Boolean);
        const count = hits.length - shown.length + rows.length;
        text = (count === 0 ? words.textNone : count === 1 ? words.textOne : words.textSome).replace("{}", count);
        if (count > rows.length) text += " " + words.textFirst.replace("{}", rows.length);
      } catch (problem) {
        rows = [];
      }
      if (mine !== asked) return; // a later letter is being answered
      list.replaceChildren(...rows);
      status.textContent = text;
      panel.removeAttribute("aria-busy");
      panel.dataset.query = query;
      open(box.contains(document.activeElement));
    }

    function step(event, by) {
      const stops = [input, ...list.querySelectorAll("a")];
      const at = stops.indexOf(document.activeElement);
      const next = stops[at + by];
      if (at < 0 || !next || panel.hidden) return;
      event.preventDefault();
      next.focus();
    }

    form.addEventListener("submit", async function (event) {
      event.preventDefault();
      if (panel.dataset.query !== input.value.trim()) await search();
      const first = list.querySelector("a");
      if (first) first.click();
    });
    input.addEventListener("input", search);
    input.addEventListener("focus", function () {
      finder().catch(() => {});
      if (list.children.length) open(true);
    });
    box.addEventListener("keydown", function (event) {
      event.stopPropagation(); // single letters are shortcuts of the page around
      if (event.key === "ArrowDown") step(event, 1);
      if (event.key === "ArrowUp") step(event, -1);
      if (event.key === "Escape") {
        input.focus();
        open(false);
      }
    });
    box.addEventListener("focusout", function (event) {
      if (event.relatedTarget && !box.contains(event.relatedTarget)) open(false);
    });
    document.addEventListener("pointerdown", function (event) {
      if (!box.contains(event.target)) open(false);
    });
    list.addEventListener("click", (event) => { if (event.target.closest("a")) open(false); });
    form.hidden = false;
  }

  function startAll() {
    for (const box of document.querySelectorAll("[data-wm-search]")) start(box);
  }

  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", startAll);
  else startAll();
})();
