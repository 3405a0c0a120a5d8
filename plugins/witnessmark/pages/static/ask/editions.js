/* Finds a code among the files of the editions. What this phone holds is as old as its last fetch, and that day is part of the answer. */
import { store } from "../keep/store.js";

const STICK = "stick";

/**
 * @param {URL} root of the book
 * @param {string} book its id
 * @param {string} code as printed
 * @returns {Promise<{found: "sheet"|"unknown"|"unread", sheet?: object, newest: string, sent: number|"stick"|null}>} `sent` is when this phone fetched it
 */
export async function lookUp(root, book, code) {
  const folder = new URL("assets/witnessmark/editions/", root);
  const kept = () => store(`${book} ${root.pathname}`, root).kept();
  let newest = "", sent = null;
  try {
    const read = root.protocol === "file:" ? (url) => onAStick(url, root) : (url) => fetched(url, kept);
    const index = await read(new URL("index.json", folder));
    newest = index.data.newest ?? "";
    sent = index.sent;
    const prefix = code.slice(0, 2);
    if (!index.data.prefixes.includes(prefix)) return { found: "unknown", newest, sent };
    const part = await read(new URL(`${prefix}.json`, folder));
    newest = part.data.newest ?? "";
    sent = part.sent === STICK ? STICK : sent === null || part.sent === null ? null : Math.min(sent, part.sent);
    if (!Object.hasOwn(part.data.codes, code)) return { found: "unknown", newest, sent };
    return { found: "sheet", sheet: part.data.codes[code], newest, sent };
  } catch (problem) {
    console.warn(problem);
    return { found: "unread", newest, sent };
  }
}

/** From a stick nothing is fetched: there the same data stands as a script, under the path it has in the site. */
function onAStick(url, root) {
  const path = url.href.slice(root.href.length);
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = url.href.replace(/json$/, "js");
    script.onload = () => resolve({ data: window.witnessmarkSearchData[path], sent: STICK });
    script.onerror = () => reject(new Error(path));
    document.head.append(script);
  });
}

/** From the network where there is one, past everything kept; else what this phone keeps of the book, which is older. */
async function fetched(url, kept) {
  let answer = await fetch(url, { cache: "no-store" }).catch(() => null);
  const fresh = answer !== null;
  answer ??= await fetch(url, { cache: "force-cache" });
  if (!answer.ok) {
    answer.body?.cancel();
    throw new Error(`${url}: ${answer.status}`);
  }
  return { data: await answer.json(), sent: fresh ? Date.now() : await keptSince(answer, kept) };
}

/** When it was fetched: by the answer's own date, or by the day on which the book was kept, which the worker answers from; null where neither tells. */
async function keptSince(answer, kept) {
  const days = [answer.headers.get("date") ?? "", ...Object.values(await kept()).map((one) => one.fetched)].map(Date.parse);
  const told = days.filter((day) => !Number.isNaN(day));
  return told.length ? Math.max(...told) : null;
}
