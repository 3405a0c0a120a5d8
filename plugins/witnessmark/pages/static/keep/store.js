/* Machines kept on this phone: fetched file by file, each verified by its hash, taken whole or not at all.
   Every name of a cache or lock begins with the book's id and path: other books share the origin. */

const LISTS = "assets/witnessmark/keep/lists/";
const AT_ONCE = 4;

export class NotWhole extends Error {}
export class Away extends Error {}
export class NoRoom extends Error {}

const hex = (buffer) => [...new Uint8Array(buffer)].map((byte) => byte.toString(16).padStart(2, "0")).join("");

export async function sha256(buffer) {
  return hex(await crypto.subtle.digest("SHA-256", buffer));
}

/**
 * @param {string} name the book's id and path
 * @param {URL} base the book's root
 */
export function store(name, base) {
  const chosenName = `${name} chosen`;
  const marker = (machine) => new URL(`${LISTS}${machine}.json`, base).href;
  const address = (path) => new URL(path, base).href;
  const cacheName = (machine, list) => `${name} keep ${machine} ${list.slice(0, 16)}`;
  const ofMachine = async (machine) => (await caches.keys()).filter((each) => each.startsWith(`${name} keep ${machine} `));

  async function fresh(path) {
    let answer = null;
    try {
      answer = await fetch(address(path), { cache: "no-store" });
    } catch {
      throw new Away(path);
    }
    if (!answer.ok) throw new NotWhole(path);
    return answer;
  }

  /** What the server offers: machine -> {title, date, files, bytes, list}. */
  async function offered() {
    return (await fresh(`${LISTS}index.json`)).json();
  }

  /** What is kept and read now: machine -> {cache, list, date, fetched}. */
  async function kept() {
    if (!("caches" in self) || !(await caches.has(chosenName))) return {};
    const cache = await caches.open(chosenName);
    const all = await Promise.all((await cache.keys()).map(async (key) => (await cache.match(key)).json()));
    return Object.fromEntries(all.map((one) => [one.machine, one]));
  }

  /** Fetches a whole build of a machine beside the one in use. Nothing is read from it before `adopt`. */
  async function fetchWhole(machine, offer, progress) {
    const text = await (await fresh(`${LISTS}${machine}.json`)).arrayBuffer();
    if (await sha256(text) !== offer.list) throw new NotWhole(machine);
    const { files } = JSON.parse(new TextDecoder().decode(text));
    const before = (await kept())[machine];
    const old = before && await caches.open(before.cache);
    const oldFiles = old ? (await (await old.match(marker(machine))).json()).files : {};
    const cache = await caches.open(cacheName(machine, offer.list));
    if (await cache.match(marker(machine))) return;              // whole already
    let done = 0;
    let failed = false;
    const rest = Object.entries(files);
    async function take() {
      for (let next = rest.pop(); next; next = rest.pop()) {
        const [path, [hash, size]] = next;
        if (!(await cache.match(address(path)))) await put(path, hash);   // what stands there was verified when it came
        if (failed) return;
        progress(done += size, offer.bytes);
      }
    }
    async function put(path, hash) {
      const same = oldFiles[path] && oldFiles[path][0] === hash && await old.match(address(path));
      const answer = same || await fresh(path);
      const body = await answer.arrayBuffer();
      if (await sha256(body) !== hash) throw new NotWhole(path);
      const headers = { "Content-Type": answer.headers.get("Content-Type") || "application/octet-stream" };
      await cache.put(address(path), new Response(body, { headers }));
    }
    try {
      await Promise.all(Array.from({ length: AT_ONCE }, take));
      await cache.put(marker(machine), new Response(text, { headers: { "Content-Type": "application/json" } }));
    } catch (problem) {
      failed = true;
      rest.length = 0;
      throw problem.name === "QuotaExceededError" ? new NoRoom() : problem;
    }
  }

  /** Turns to the build that was fetched; false while a step is on screen somewhere. Older builds of the machine go. */
  function adopt(machine, offer) {
    return navigator.locks.request(`${name} step`, { mode: "exclusive", ifAvailable: true }, async (lock) => {
      if (!lock) return false;
      const mine = cacheName(machine, offer.list);
      const whole = await (await caches.open(mine)).match(marker(machine));
      if (!whole) throw new NotWhole(machine);
      const chosen = await caches.open(chosenName);
      const entry = { machine, cache: mine, list: offer.list, date: offer.date, fetched: new Date().toISOString() };
      await chosen.put(address(`kept/${machine}`), new Response(JSON.stringify(entry)));
      for (const other of await ofMachine(machine)) if (other !== mine) await caches.delete(other);
      return true;
    });
  }

  async function remove(machine) {
    await (await caches.open(chosenName)).delete(address(`kept/${machine}`));
    for (const each of await ofMachine(machine)) await caches.delete(each);
  }

  /** One window fetches at a time; the others wait, or with `now` get null. */
  function alone(work, now = false) {
    return navigator.locks.request(`${name} keep`, { ifAvailable: now }, (lock) => (lock ? work() : null));
  }

  return { offered, kept, fetchWhole, adopt, remove, alone };
}

/** Held while a step is on screen, shared by all windows: no new build is turned to meanwhile. */
export function stepLock(name) {
  let release = null;
  return (inStep) => {
    if (!navigator.locks || inStep === (release !== null)) return;
    if (!inStep) {
      release();
      release = null;
      return;
    }
    const held = new Promise((resolve) => { release = resolve; });
    navigator.locks.request(`${name} step`, { mode: "shared" }, () => held).catch(() => {});    // refused with the rest of storage: nothing is kept then
  };
}
