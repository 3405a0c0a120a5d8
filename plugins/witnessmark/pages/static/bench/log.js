/* The log of marks in IndexedDB: entries are added and read, nothing else. Other tabs hear of each addition. */
import { isEntry, union } from "./state.js";

const STORE = "entries";

function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function opened(name) {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: "id" });
  const database = await asked(request);
  database.onversionchange = () => database.close();
  return database;
}

function written(database, entries) {
  return new Promise((resolve, reject) => {
    const change = database.transaction(STORE, "readwrite", { durability: "strict" });
    for (const entry of entries) change.objectStore(STORE).put(entry);      // the same id is the same entry
    change.oncomplete = resolve;
    change.onabort = change.onerror = () => reject(change.error);
  });
}

/** Letters nobody else will draw. */
export function freshId() {
  return [...crypto.getRandomValues(new Uint8Array(10))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * Opens the log. Where the browser refuses storage, entries live as long as the page, and `kept` is false.
 * @param {string} name of database and channel: begins with the book's id and path
 * @param {() => void} changed called when another tab has added something
 */
export async function openLog(name, changed) {
  let entries = [];
  let database = null;
  try {
    database = await opened(name);
    entries = (await asked(database.transaction(STORE).objectStore(STORE).getAll())).filter(isEntry);
  } catch {
    database = null;
  }
  const channel = "BroadcastChannel" in self ? new BroadcastChannel(name) : null;
  if (channel) {
    channel.onmessage = (event) => {
      entries = union(entries, event.data.filter(isEntry));
      changed();
    };
  }
  return {
    get kept() { return database !== null; },
    all: () => entries,
    /** Adds entries; resolves to false where they could not be written to storage. */
    async add(added) {
      entries = union(entries, added);
      if (channel) channel.postMessage(added);
      if (!database) return false;
      try {
        await written(database, added);
        return true;
      } catch {
        database = null;
        return false;
      }
    },
  };
}
