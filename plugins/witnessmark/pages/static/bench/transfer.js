/* Marks saved to a file and loaded from one: what carries them to another phone, and over a browser that forgets. */
import { element, filled } from "./element.js";

const DAY = 86400000;

/** "last saved" in days, or by its date when the clock was set back since. */
export function lastSaved(saved, today, say) {
  if (!saved) return say["never saved"];
  const days = Math.floor((today - new Date(saved.at).getTime()) / DAY);
  return days < 0 || Number.isNaN(days) ? filled(say["saved on"], saved.at.slice(0, 10)) : days === 0 ? say["saved today"] : filled(say["saved days"], days);
}

/** Two buttons and what came of them. */
export function transfer(data, keeper, say) {
  const said = element("p", { class: "said", role: "status" }, lastSaved(keeper.saved(), Date.now(), say));
  const save = element("button", { type: "button", onclick: () => {
    const address = URL.createObjectURL(new Blob([JSON.stringify(keeper.file(), null, 1)], { type: "application/json" }));
    const link = element("a", { href: address, download: `marks-${data.machine}-${new Date().toISOString().slice(0, 10)}.json` });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
    said.textContent = lastSaved(keeper.saved(), Date.now(), say);
  } }, say.save);
  const input = element("input", { type: "file", accept: "application/json,.json", id: "marks-file", onchange: async () => {
    const file = input.files[0];
    if (!file) return;
    const count = file.size > 20e6 ? null : await keeper.join(await file.text());
    said.textContent = count === null ? say["no file of marks"] : filled(say.joined, count);
    input.value = "";
  } });
  return element("section", { class: "transfer" }, element("h2", {}, say.transfer), element("div", { class: "tools" }, save,
    element("div", {}, element("label", { for: "marks-file" }, say.load), input), said));
}
