/* Light or dark: as the reader chose last, else as the device asks. The button that is shown belongs to the scheme that is on and
   turns to the next. The choice is kept where the host's script at the top of the page reads it, before anything is painted. */
(() => {
  const PARTS = ["scheme", "primary", "accent"];
  const buttons = [...document.querySelectorAll("[data-wm-schemes] button")];
  if (!buttons.length) return;

  function chosen() {
    try {
      const kept = __md_get("__palette");
      return buttons.find((button) => kept && kept.color && button.dataset.scheme === kept.color.scheme) || null;
    } catch {
      return null;                                              // a browser that keeps nothing
    }
  }

  function show(on) {
    for (const button of buttons) button.hidden = button !== on;
    for (const part of PARTS) {
      const name = `data-md-color-${part}`;
      if (document.body.getAttribute(name) !== on.dataset[part]) document.body.setAttribute(name, on.dataset[part]);
    }
  }

  const asked = () => buttons.find((button) => matchMedia(button.dataset.media || "all").matches) || buttons[0];
  const now = () => show(chosen() || asked());

  for (const [at, button] of buttons.entries()) {
    button.addEventListener("click", () => {
      const next = buttons[(at + 1) % buttons.length];
      const color = Object.fromEntries([["media", next.dataset.media], ...PARTS.map((part) => [part, next.dataset[part]])]);
      __md_set("__palette", { index: buttons.indexOf(next), color });      // refuses in silence where nothing is kept
      show(next);
      next.focus();
    });
    matchMedia(button.dataset.media || "all").addEventListener("change", now);
  }
  now();
})();
