/**
 * The database on this device. Every change is one transaction that first reads
 * what is there: it happens as a whole or not at all, and one damaged entry
 * stops none of the others.
 */
import { fault, KINDS, SHAPES } from "./entry.js";

/** @typedef {import("./entry.js").Kind} Kind */
/**
 * @typedef {{kind: Kind, key: IDBValidKey, value: any, why: string}} Broken  what can't be read as an entry
 * @typedef {{machines: Map<string, import("./entry.js").Machine>, records: Map<string, import("./entry.js").Job>, broken: Broken[]}} Kept
 * @typedef {{put?: [Kind, any][], gone?: [Kind, IDBValidKey][], result?: any}} Plan  what to write, what to delete, what to tell the caller
 */

const NAME = "plainlift";
const VERSION = 1;
const PATIENCE = 8000; // ms for a browser that never answers

/** What went wrong: what happened, what is safe, what to do. */
const WORDS = {
  refused: "This browser keeps nothing for this page: it is a private window, or keeping site data is turned off. What you type can be downloaded as a file instead.",
  blocked: "Another tab holds what is kept here. Close the other tab and try again; what you typed still stands here.",
  full: "There is no room left on this device for it. Nothing was saved and nothing was lost: make room and try again, or download it as a file.",
  newer: "A newer version of this page has kept something here. Reload the page and try again.",
  failed: "The browser could not do that, so nothing was changed. What you typed still stands here; try again, or download it as a file.",
};

/** A failure that has its words as its message. */
export class Trouble extends Error {
  /** @param {keyof WORDS} kind */
  constructor(kind) {
    super(WORDS[kind]);
    this.kind = kind;
  }
}
/** @param {any} error */
function trouble(error) {
  if (error instanceof Trouble) return error;
  const kinds = /** @type {Record<string, keyof WORDS>} */ ({ QuotaExceededError: "full", VersionError: "newer", SecurityError: "refused" });
  return new Trouble(kinds[error?.name] ?? "failed");
}

let opening = /** @type {Promise<IDBDatabase> | null} */ (null);

function open() {
  opening ??= new Promise((/** @type {(db: IDBDatabase) => void} */ yes, no) => {
    if (!globalThis.indexedDB) throw new Trouble("refused");
    const request = indexedDB.open(NAME, VERSION);
    let late = setTimeout(() => fail("failed"), PATIENCE);
    const fail = (/** @type {keyof WORDS} */ kind) => {
      clearTimeout(late);
      late = 0; // whatever still comes comes too late
      no(new Trouble(kind));
    };
    request.onblocked = () => fail("blocked");
    request.onerror = () => fail(request.error?.name === "InvalidStateError" ? "refused" : trouble(request.error).kind);
    request.onupgradeneeded = (e) => {
      if (e.oldVersion < 1) for (const kind of KINDS) request.result.createObjectStore(kind, { keyPath: "id" });
    };
    request.onsuccess = () => {
      const db = request.result;
      if (!late) return db.close();
      clearTimeout(late);
      db.onclose = () => (opening = null);
      db.onversionchange = () => {
        db.close(); // a newer version of the page waits for this
        opening = null;
      };
      yes(db);
    };
  });
  opening.catch(() => (opening = null));
  return opening;
}

/** @param {IDBRequest} request @returns {Promise<any>} */
const done = (request) => new Promise((yes, no) => {
  request.onsuccess = () => yes(request.result);
  request.onerror = (e) => {
    e.preventDefault(); // one that fails does not end the transaction
    no(request.error);
  };
});

/** @param {IDBTransaction} tx @returns {Promise<Kept>} */
async function read(tx) {
  const kept = /** @type {Kept} */ ({ machines: new Map(), records: new Map(), broken: [] });
  await Promise.all(KINDS.map(async (kind) => {
    const store = tx.objectStore(kind);
    const keys = await done(store.getAllKeys());
    const values = await Promise.all(keys.map((/** @type {IDBValidKey} */ key) => done(store.get(key)).catch(() => undefined)));
    keys.forEach((/** @type {any} */ key, /** @type {number} */ i) => {
      const why = fault(SHAPES[kind], values[i]);
      if (why) kept.broken.push({ kind, key, value: values[i], why });
      else kept[kind].set(key, values[i]);
    });
  }));
  return kept;
}

/** All that is kept. @returns {Promise<Kept>} */
export const readAll = () => run("readonly", (kept) => ({ result: kept }));

/**
 * Changes what is kept as planned from what is kept, in one transaction.
 * @param {(kept: Kept) => Plan} plan @returns {Promise<any>} the plan's result
 */
export async function change(plan) {
  let changed = false;
  const result = await run("readwrite", (kept) => {
    const planned = plan(kept);
    changed = !!(planned.put?.length || planned.gone?.length);
    return planned;
  });
  if (changed) channel?.postMessage("changed");
  return result;
}

/** @param {IDBTransactionMode} mode @param {(kept: Kept) => Plan} plan */
async function run(mode, plan) {
  try {
    const db = await open();
    return await new Promise((yes, no) => {
      const tx = db.transaction(KINDS, mode, { durability: "strict" });
      let [result, failure] = /** @type {any[]} */ ([]);
      tx.oncomplete = () => yes(result);
      tx.onabort = () => no(failure ?? tx.error);
      read(tx).then((kept) => {
        const planned = plan(kept);
        result = planned.result;
        for (const [kind, key] of planned.gone ?? []) tx.objectStore(kind).delete(key);
        for (const [kind, entry] of planned.put ?? []) {
          if (fault(SHAPES[kind], entry)) throw new Trouble("failed");
          tx.objectStore(kind).put(entry);
        }
      }).catch((error) => {
        failure ??= error;
        if (tx.error === null) tx.abort();
      });
    });
  } catch (error) {
    throw trouble(error);
  }
}

const channel = globalThis.BroadcastChannel && new BroadcastChannel("plainlift.kept");

/** @param {() => void} changed told when another tab has changed something */
export const watch = (changed) => channel?.addEventListener("message", changed);
