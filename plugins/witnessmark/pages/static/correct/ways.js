/* The ways a finished text can go: the clipboard, another app, mail, the forge. Which of them there are depends on phone and book. */
import { element } from "../bench/element.js";
import { issueAddress, mailAddress } from "./text.js";

/**
 * @param {object} data of the page: mail, issue
 * @param {{subject: string, text: string}} correction
 * @param {object} say
 * @returns {Node[]}
 */
export function waysOut(data, correction, say) {
  const told = element("p", { class: "said", role: "status" });
  const { text } = correction;
  const subject = say.subject.replace("{}", correction.subject);
  const copy = element("button", { type: "button", onclick: () => copied(text).then((done) => { told.textContent = done ? say.copied : say["no copy"]; }) }, say.copy);
  const share = navigator.share && element("button", { type: "button", onclick: () => navigator.share({ title: subject, text }).catch(() => {}) }, say.share);
  const mail = data.mail && element("a", { class: "wide", href: mailAddress(data.mail, subject, text) }, say.mail);
  const address = data.issue && issueAddress(data.issue, subject, text);
  const issue = address && element("a", { class: "wide", href: address, rel: "noopener" }, say.issue);
  const long = data.issue && !address && element("p", {}, say["too long"]);
  return [copy, share, mail, issue, long, told].filter(Boolean);
}

async function copied(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
