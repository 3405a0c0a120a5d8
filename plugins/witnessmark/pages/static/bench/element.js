/* Small pieces that every part of the bench view uses: elements, words with their gaps filled, a few letters kept. */

/** An element with attributes and children; `on…` attributes are listeners, false and null leave an attribute out. */
export function element(name, attributes = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) made.addEventListener(key.slice(2), value);
    else if (value === true) made.setAttribute(key, "");
    else if (value !== false && value !== null) made.setAttribute(key, value);
  }
  made.append(...children.filter((child) => child !== null));
  return made;
}

/** The words with each {} filled by the next value. */
export function filled(words, ...values) {
  return words.replace(/\{\}/g, () => values.shift() ?? "");
}

/** A corner of localStorage under a name of our own: nothing is lost but comfort where the browser refuses it. */
export function corner(name) {
  return {
    read(otherwise) {
      try {
        return JSON.parse(localStorage.getItem(name)) ?? otherwise;
      } catch {
        return otherwise;
      }
    },
    write(value) {
      try {
        localStorage.setItem(name, JSON.stringify(value));
        return true;
      } catch {
        return false;
      }
    },
  };
}

/** What a step says to do, without its number. */
export function titleOf(leaf) {
  return leaf.querySelector(".do").textContent.replace(/\s+/g, " ").trim().replace(/^\d+ /, "");
}
