/** Taking in a copy: what is here and the same is left, what differs is asked about, and all of it happens at once or not at all. */
import { ask } from "./ask.js";
import { second } from "./commit.js";
import { called, KINDS, newId, same } from "./entry.js";
import { change, readAll } from "./store.js";

/** @typedef {import("./entry.js").Kind} Kind */
/** @typedef {import("./archive.js").Entries} Entries */
/** @typedef {{added: number, same: number, replaced: number, left: number}} Tally */

/**
 * @param {Entries} file
 * @returns {Promise<string>} what was done, in words
 */
export async function takeIn(file) {
  for (;;) {
    const kept = await readAll();
    const choices = await asked(file, kept);
    if (!choices) return "Nothing was taken in, and nothing here has changed.";
    const tally = await change((now) => {
      const other = differing(file, now).some(({ entry, here }) => choices.get(entry.id)?.rev !== here.rev);
      return other ? { result: null } : plan(file, now, choices); // another tab was quicker: ask again
    });
    if (tally) return words(tally);
  }
}

/** @typedef {Map<string, {choice: string, rev: number}>} Choices by id of what differs */

/** What the file has otherwise than this device. @param {Entries} file @param {import("./store.js").Kept} kept */
const differing = (file, kept) => KINDS.flatMap((kind) => file[kind].flatMap((entry) => {
  const here = /** @type {any} */ (kept[kind].get(entry.id));
  return here && !same(kind, entry, here) ? [{ kind, entry, here }] : [];
}));

/** Asks about each entry that differs. @param {Entries} file @param {import("./store.js").Kept} kept @returns {Promise<Choices | null>} null: called off */
async function asked(file, kept) {
  const choices = /** @type {Choices} */ (new Map());
  const found = differing(file, kept);
  let last = { choice: "", all: false };
  for (const [i, { kind, entry, here }] of found.entries()) {
    const rest = found.length - i - 1;
    if (!last.all) {
      last = await ask(rest || i ? `${i + 1} of ${found.length} that differ` : "One differs", [
        `The file and this device both have ${called(kind, here)}, and they differ.`,
        `Here it was changed ${when(here.changed)}, in the file ${when(entry.changed)}.`,
      ], { mine: "Keep mine", file: "Take the file's", both: "Keep both", "": "Cancel it all" }, rest ? `The same for the other ${rest}` : "");
    }
    if (!last.choice) return null;
    choices.set(entry.id, { choice: last.choice, rev: here.rev });
  }
  return choices;
}

/** @param {string} time */
const when = (time) => new Date(time).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });

/** @param {Entries} file @param {import("./store.js").Kept} kept @param {Choices} choices @returns {import("./store.js").Plan} */
function plan(file, kept, choices) {
  const put = /** @type {[Kind, any][]} */ ([]);
  const tally = { added: 0, same: 0, replaced: 0, left: 0 };
  const renamed = new Map(); // machines of the file that got an id of their own
  for (const kind of KINDS) { // machines first
    for (const from of file[kind]) {
      const entry = kind === "records" ? { ...from, machine: renamed.get(/** @type {any} */ (from).machine) ?? /** @type {any} */ (from).machine } : { ...from };
      const here = kept[kind].get(from.id);
      const choice = choices.get(from.id)?.choice;
      if (here && same(kind, from, here)) tally.same++;
      else if (!here || choice === "both") {
        if (here || taken(kept, kind, from.id)) entry.id = newId();
        if (kind === "machines" && entry.id !== from.id) {
          renamed.set(from.id, entry.id);
          entry.name = second(entry.name);
        }
        put.push([kind, { ...entry, rev: 1 }]);
        tally.added++;
      } else if (choice === "file") {
        put.push([kind, { ...entry, rev: here.rev + 1 }]);
        tally.replaced++;
      } else tally.left++;
    }
  }
  return { put, result: tally };
}

/** A damaged entry keeps its place: nothing is written over it. @param {import("./store.js").Kept} kept @param {Kind} kind @param {string} id */
const taken = (kept, kind, id) => kept.broken.some((b) => b.kind === kind && b.key === id);

/** @param {Tally} t */
function words({ added, same: alike, replaced, left }) {
  const parts = [[added, "added"], [replaced, "replaced"], [left, "left as they were here"], [alike, "the same already"]].filter(([n]) => n);
  return parts.length ? `Taken in: ${parts.map(([n, what]) => `${n} ${what}`).join(", ")}.` : "There was nothing in it to take in.";
}
