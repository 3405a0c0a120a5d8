/* One leaf fills the screen: back and next under the thumbs, the browser's own back button and arrow keys besides. */

/**
 * @param {(leaf: Element) => boolean} fits whether a leaf is for this machine
 * @param {(leaf: Element) => void} arrived
 */
export function stepping(fits, arrived) {
  const every = [...document.querySelectorAll(".leaf")];
  const thumbs = document.querySelector("[data-thumbs]");
  const [back, on] = thumbs.querySelectorAll(".thumb");
  let current = null;

  const leaves = () => every.filter((leaf) => !leaf.dataset.step || fits(leaf));

  function link(thumb, leaf) {
    if (leaf) {
      thumb.href = "#" + leaf.id;
      thumb.removeAttribute("aria-disabled");
    } else {
      thumb.removeAttribute("href");
      thumb.setAttribute("aria-disabled", "true");
    }
  }

  function show(leaf, focus) {
    const row = leaves();
    const at = Math.max(0, row.indexOf(leaf));
    const changed = current !== row[at];
    current = row[at];
    for (const other of every) other.classList.toggle("current", other === current);
    link(back, row[at - 1]);
    link(on, row[at + 1]);
    if (changed) {
      scrollTo(0, 0);
      if (focus) current.focus({ preventScroll: true });
    }
    arrived(current);
  }

  function asked() {
    const named = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    return (named && named.closest(".leaf")) || every[0];
  }

  addEventListener("hashchange", () => show(asked(), true));
  addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.target.closest("input, select, textarea, pre")) return;
    if (event.key === "ArrowLeft" && back.hasAttribute("href")) back.click();
    if (event.key === "ArrowRight" && on.hasAttribute("href")) on.click();
  });
  document.documentElement.classList.add("stepping");
  thumbs.hidden = false;
  return { begin: () => show(asked(), false), again: () => show(current || asked(), false), leaves, current: () => current };
}
