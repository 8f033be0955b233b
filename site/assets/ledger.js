/** All that is kept as a table, a row for each record, and back. */
import { checked } from "./archive.js";

/** @typedef {import("./archive.js").Entries} Entries */
/** @typedef {import("./entry.js").Job} Job */

// What a spreadsheet shows, and what only the way back needs: the last columns.
const COLUMNS = [
  "machine", "date", "hours", "by", "oil temperature", "engine speed", "notes", "page", "head", "sentence", "key figures", "link",
  "machine notes", "machine numbers", "machine id", "record id", "machine data", "record data",
];

/** A text that begins with an apostrophe gets a second one: the first of two, or of one before a formula, is taken off on the way back. */
const out = (/** @type {string} */ text) => (text.startsWith("'") ? "'" + text : text);
const back = (/** @type {string} */ text) => (/^'['=+\-@\t\r]/.test(text) ? text.slice(1) : text);

/** @param {Entries} entries @param {(record: Job) => string} linkOf @returns {string[][]} */
export function toRows({ machines, records }, linkOf) {
  const rows = [COLUMNS];
  const row = (/** @type {any} */ machine, /** @type {any} */ record) => {
    const { id = "", name = "", notes = "", ...data } = machine;
    const { id: rid = "", machine: owner = id, date = "", hours = "", by = "", oil = "", rpm = "", notes: said = "", ...rest } = record;
    const pairs = (/** @type {any[]} */ list) => (list ?? []).map((x) => `${x.label}: ${x.shown ?? x.text}`).join("; ");
    rows.push([
      name, date, hours, by, oil, rpm, said, rest.title ?? "", rest.head ?? "", rest.sentence ?? "", pairs(rest.figures), rid && linkOf(record),
      notes, pairs(data.values), owner, rid, id && JSON.stringify(data), rid && JSON.stringify(rest),
    ].map(out));
  };
  const byId = new Map(machines.map((m) => [m.id, m]));
  for (const record of records) row(byId.get(record.machine) ?? {}, record);
  for (const machine of machines) if (!records.some((r) => r.machine === machine.id)) row(machine, {});
  return rows;
}

/**
 * @param {string[][]} rows @returns {Entries}
 * @throws an Error that says in words why it is not taken
 */
export function fromRows([head = [], ...rows]) {
  const at = new Map(head.map((name, i) => [name.trim(), i]));
  const lost = COLUMNS.find((name) => !at.has(name));
  if (lost) throw new Error(`This table is not one that was downloaded here: it has no column “${lost}”. Nothing was taken from it.`);
  const machines = new Map();
  const records = /** @type {any[]} */ ([]);
  rows.forEach((cells, i) => {
    const cell = (/** @type {string} */ name) => back(cells[at.get(name) ?? -1] ?? "");
    const data = (/** @type {string} */ name) => {
      try {
        const read = JSON.parse(cell(name));
        if (read && typeof read === "object") return read;
      } catch {
        // As if it were no object.
      }
      throw new Error(`Row ${i + 2}: its “${name}” was changed or cut short, so it can't be read. Nothing was taken from the file.`);
    };
    const id = cell("machine id");
    if (cell("machine data")) {
      const machine = { ...data("machine data"), id, name: cell("machine"), notes: cell("machine notes") };
      const before = machines.get(id);
      if (before && JSON.stringify(before) !== JSON.stringify(machine)) throw new Error(`Row ${i + 2} says something else of the machine “${machine.name}” than an earlier row. Make them say the same; nothing was taken from the file.`);
      machines.set(id, machine);
    }
    if (cell("record id")) {
      const texts = { date: cell("date"), hours: cell("hours"), by: cell("by"), oil: cell("oil temperature"), rpm: cell("engine speed"), notes: cell("notes") };
      records.push({ ...data("record data"), ...texts, id: cell("record id"), machine: id });
    }
  });
  return checked({ machines: [...machines.values()], records });
}
