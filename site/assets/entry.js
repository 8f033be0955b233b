/**
 * What is kept on the device: machines, and dated records of jobs on them. What
 * is not shaped as one is never taken for one, wherever it comes from.
 */

/**
 * @typedef {{quantity: string, label: string, text: string, shown: string}} Value  a number as a link writes it, and as read
 * @typedef {{id: string, name: string, notes: string, values: Value[], made: string, changed: string, rev: number}} Machine
 * @typedef {{id: string, machine: string, worksheet: string, title: string, link: [string, string][], date: string, hours: string,
 *   by: string, oil: string, rpm: string, notes: string, head: string, sentence: string, figures: {label: string, text: string}[],
 *   known: Value[], made: string, changed: string, rev: number}} Job  a record
 * @typedef {"machines" | "records"} Kind
 */

const string = (/** @type {number} */ most, least = 0) => (/** @type {any} */ x) => typeof x === "string" && x.length >= least && x.length <= most;
const list = (/** @type {number} */ most, /** @type {(x: any) => boolean} */ each) => (/** @type {any} */ x) => Array.isArray(x) && x.length <= most && x.every(each);
const shaped = (/** @type {Record<string, (x: any) => boolean>} */ shape) => (/** @type {any} */ x) => !fault(shape, x);

/** A day of the calendar, "2026-11-25". @param {any} x */
export const isDay = (x) => typeof x === "string" && /^[12]\d{3}-\d\d-\d\d$/.test(x) && new Date(x + "T00:00Z").toJSON()?.slice(0, 10) === x;

const id = (/** @type {any} */ x) => typeof x === "string" && /^[0-9a-z]{8,40}$/.test(x);
const time = (/** @type {any} */ x) => typeof x === "string" && x.length <= 30 && !isNaN(Date.parse(x));
const count = (/** @type {any} */ x) => Number.isSafeInteger(x) && x > 0;
const pair = (/** @type {any} */ x) => Array.isArray(x) && x.length === 2 && x.every(string(20_000));
const values = list(100, shaped({ quantity: string(60, 1), label: string(200, 1), text: string(400, 1), shown: string(400) }));
const figures = list(100, shaped({ label: string(300), text: string(1000) }));

export const LINE = 200; // most characters of a name or of a short remark
export const NOTES = 20_000;
const times = { made: time, changed: time, rev: count };

/** By kind, what each part of an entry must be. @type {Record<Kind, Record<string, (x: any) => boolean>>} */
export const SHAPES = {
  machines: { id, name: string(LINE, 1), notes: string(NOTES), values, ...times },
  records: {
    id, machine: id, worksheet: (x) => typeof x === "string" && /^[a-z][a-z0-9-]{0,40}$/.test(x), title: string(LINE), link: list(500, pair),
    date: isDay, hours: string(LINE), by: string(LINE), oil: string(LINE), rpm: string(LINE), notes: string(NOTES),
    head: string(400), sentence: string(4000), figures, known: values, ...times,
  },
};
export const KINDS = /** @type {Kind[]} */ (Object.keys(SHAPES));

/**
 * Says what keeps something from being an entry; "" if nothing does.
 * @param {Record<string, (x: any) => boolean>} shape @param {any} x
 */
export function fault(shape, x) {
  if (typeof x !== "object" || x === null || Array.isArray(x)) return "is no entry";
  for (const key of Object.keys(x)) if (!Object.hasOwn(shape, key)) return `has “${key.slice(0, 40)}”, which this version does not know`;
  for (const key of Object.keys(shape)) {
    if (!Object.hasOwn(x, key)) return `has no “${key}”`;
    if (!shape[key](x[key])) return key === "date" ? "has a date that is none; it is written 2026-11-25" : `has a “${key}” that can't be right`;
  }
  return "";
}

/** Whether two entries say the same, whenever they were saved. @param {Kind} kind @param {any} a @param {any} b */
export function same(kind, a, b) {
  const keys = Object.keys(SHAPES[kind]).filter((key) => !Object.hasOwn(times, key));
  return keys.every((key) => said(a[key]) === said(b[key]));
}

/** The same text for the same value, in whatever order its parts come. @param {any} value */
const said = (value) => JSON.stringify(value, (_, x) => (x && typeof x === "object" && !Array.isArray(x) ? Object.entries(x).sort(([a], [b]) => (a < b ? -1 : 1)) : x));

/** @returns {string} an id that no other device will give, and that no spreadsheet takes for a number */
export const newId = () => "k" + [...crypto.getRandomValues(new Uint8Array(12))].map((b) => b.toString(16).padStart(2, "0")).join("");

/** What every new entry begins with. */
export function begin() {
  const now = new Date().toISOString();
  return { id: newId(), made: now, changed: now, rev: 1 };
}

/** A day as it is read: "25 Nov 2026". @param {string} date */
export const day = (date) => (isDay(date) ? new Date(date + "T00:00Z").toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }) : date);

/** What an entry is called in a question. @param {Kind} kind @param {any} entry */
export const called = (kind, entry) => (kind === "machines" ? `the machine “${entry.name}”` : `the record of ${day(entry.date)}, “${entry.head}”`);
