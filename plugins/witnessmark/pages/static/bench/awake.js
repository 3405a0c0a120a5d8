/* The screen kept on while the page is in front: only when asked for, and said plainly when the browser cannot. */
import { element } from "./element.js";

/** A button and what came of it. */
export function awake(label, say) {
  let lock = null;
  let wanted = false;
  const said = element("p", { class: "said", role: "status" });
  const button = element("button", { type: "button", class: "tick", "aria-pressed": "false", onclick: toggle }, label);

  function tell(words) {
    button.setAttribute("aria-pressed", String(lock !== null));
    said.textContent = say[words];
  }

  async function ask() {
    try {
      lock = await navigator.wakeLock.request("screen");
      lock.addEventListener("release", () => {
        lock = null;
        tell(wanted ? "awake lost" : "awake off");
      });
      tell("awake");
    } catch {
      lock = null;
      tell("awake refused");
    }
  }

  async function toggle() {
    wanted = !lock;
    if (!navigator.wakeLock) return tell("no awake");
    if (wanted) await ask();
    else await lock.release();
  }

  document.addEventListener("visibilitychange", () => { if (wanted && !lock && document.visibilityState === "visible") ask(); });
  return element("div", { class: "tools" }, button, said);
}
