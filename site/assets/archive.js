/** All that is kept as one JSON file, and back. */
import { fault, KINDS, SHAPES } from "./entry.js";

/** @typedef {{machines: import("./entry.js").Machine[], records: import("./entry.js").Job[]}} Entries */

const FORMAT = "plainlift-records";
const VERSION = 1;
export const MOST = 20_000_000; // bytes of a file

/** @param {Entries} entries @returns {string} */
export function toJSON({ machines, records }) {
  return JSON.stringify({ format: FORMAT, version: VERSION, made: new Date().toISOString(), machines: machines.map((m) => inOrder("machines", m)), records: records.map((r) => inOrder("records", r)) }, null, 1);
}

/** The same entry always gives the same text. @param {import("./entry.js").Kind} kind @param {any} entry */
const inOrder = (kind, entry) => Object.fromEntries(Object.keys(SHAPES[kind]).map((key) => [key, entry[key]]));

/**
 * @param {string} text of a file @returns {Entries}
 * @throws an Error that says in words why it is not taken
 */
export function fromJSON(text) {
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    throw new Error("This is no file of records: its text can't be read as JSON. It may be cut short.");
  }
  if (file?.format !== FORMAT) throw new Error("This is no file of records from this site: it does not say so at its head.");
  if (file.version !== VERSION) {
    if (file.version > VERSION) throw new Error(`This file is of form ${Number(file.version)}, which is newer than this page. Reload the page and try again; the file is as it was.`);
    throw new Error("This file does not say of which form it is, so it can't be read safely.");
  }
  for (const key of Object.keys(file)) {
    if (!["format", "version", "made", ...KINDS].includes(key)) throw new Error(`The file has “${key.slice(0, 40)}”, which this version does not know. Reload the page for a newer one and try again; the file is as it was.`);
  }
  return checked(file);
}

const NAMES = { machines: "Machine", records: "Record" };

/** @param {any} file @returns {Entries} with every entry looked at */
export function checked(file) {
  for (const kind of KINDS) {
    if (!Array.isArray(file[kind])) throw new Error(`The file has no list of ${kind}.`);
    const seen = new Set();
    file[kind].forEach((/** @type {any} */ entry, /** @type {number} */ i) => {
      const why = fault(SHAPES[kind], entry) || seen.has(entry.id) && "is in it twice";
      if (why) throw new Error(`${NAMES[kind]} ${i + 1} of the file ${why}. Nothing was taken from it.`);
      seen.add(entry.id);
    });
  }
  return { machines: file.machines, records: file.records };
}
