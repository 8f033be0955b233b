/**
 * Saving and deleting with the question that it takes when another tab, or an
 * earlier answer, has changed the same entry meanwhile: nothing is written over
 * without asking.
 */
import { ask } from "./ask.js";
import { called, newId, same } from "./entry.js";
import { change } from "./store.js";

/**
 * @typedef {import("./entry.js").Kind} Kind
 * @typedef {{kind: Kind, entry: any, base: number}} Change  an entry as it shall be, and the rev that it was made from; 0 for a new one
 */

/**
 * Saves all of them or none. An entry whose base is no longer what is kept is asked about.
 * @param {Change[]} changes
 * @returns {Promise<"saved" | "left" | "">} left: the reader chose what is kept already; "": called it off
 */
export async function save(changes) {
  let said = /** @type {"saved" | "left"} */ ("saved");
  for (;;) {
    const clashes = await change((kept) => {
      const found = changes.filter(({ kind, entry, base }) => (kept[kind].get(entry.id)?.rev ?? 0) !== base)
        .map((one) => ({ one, theirs: /** @type {any} */ (kept[one.kind].get(one.entry.id)) }));
      if (found.length) return { result: found };
      const now = new Date().toISOString();
      return { put: changes.map(({ kind, entry, base }) => [kind, { ...entry, changed: now, rev: base + 1 }]) };
    });
    if (!clashes) return said;
    for (const { one, theirs } of clashes) {
      const choice = await settle(changes, one, theirs);
      if (!choice) return "";
      if (choice === "theirs") said = "left";
    }
  }
}

/** @param {Change[]} changes @param {Change} one @param {any} theirs what is kept now, if it still is @returns {Promise<string>} the choice, "" for none */
async function settle(changes, one, theirs) {
  const { kind, entry } = one;
  const drop = () => void changes.splice(changes.indexOf(one), 1);
  if (theirs && same(kind, theirs, entry)) {
    drop();
    return "same";
  }
  const name = called(kind, theirs ?? entry);
  const { choice } = theirs
    ? await ask("Changed in another tab", [`Meanwhile ${name} was changed in another tab or window.`, "Which shall be kept?"],
      { mine: "Mine", theirs: "The other", both: "Both", "": "Cancel" })
    : await ask("Deleted in another tab", [`Meanwhile ${name} was deleted in another tab or window.`, "Save it again?"],
      { mine: "Save it again", "": "Cancel" });
  if (choice === "mine") one.base = theirs?.rev ?? 0;
  else if (choice === "theirs") drop();
  else if (choice === "both") copyOf(changes, one);
  return choice;
}

/** Makes a change one of a new entry; what belongs to a machine goes with it. @param {Change[]} changes @param {Change} one */
function copyOf(changes, one) {
  const old = one.entry.id;
  one.base = 0;
  one.entry = { ...one.entry, id: newId() };
  if (one.kind === "records") return;
  one.entry.name = second(one.entry.name);
  for (const other of changes) if (other.entry.machine === old) other.entry = { ...other.entry, machine: one.entry.id };
}

/** A name for the second of two machines of one name. @param {string} name */
export const second = (name) => `${name.slice(0, 180)} (second)`;

/** Asks the browser to keep this even when the device is short of room, and says what it answered. */
export async function persist() {
  const promised = await navigator.storage?.persist?.().catch(() => false);
  return promised ? " The browser promised to keep it until you delete it." : " The browser did not promise to keep it when the device is short of room: download a copy now and then.";
}
