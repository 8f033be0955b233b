/** The slip that is filled in for a record: the texts beside the answer, and the record that they make with it. */
import { begin, isDay } from "./entry.js";
import { asValue } from "./lasting.js";

const TEXTS = /** @type {const} */ (["date", "hours", "by", "oil", "rpm", "notes"]);
const input = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ (document.getElementById(id));

/** What stands on a slip. @param {string} slip begins the ids of its inputs @returns {Record<typeof TEXTS[number], string>} */
export const read = (slip) => /** @type {any} */ (Object.fromEntries(TEXTS.map((key) => [key, input(`${slip}-${key}`).value.trim()])));

/** @param {string} slip @param {any} texts a record, or anything with some of its texts */
export function fill(slip, texts) {
  for (const key of TEXTS) input(`${slip}-${key}`).value = texts[key] ?? "";
}

/** The first input that lacks what a record needs, with what it lacks. @param {string} slip @returns {[HTMLInputElement, string] | null} */
export const lacks = (slip) => (isDay(input(slip + "-date").value) ? null : [input(slip + "-date"), "Give the date of the job first."]);

/**
 * The record of what stands on the page now.
 * @param {import("./worksheet.js").Worksheet} worksheet @param {string} machine its id
 * @param {string} slip @param {import("./entry.js").Job} [old] the record that it replaces
 * @returns {import("./entry.js").Job}
 */
export function recordOf(worksheet, machine, slip, old) {
  const { verdict, figures, known } = worksheet.newest;
  const shown = figures.filter((/** @type {any} */ f) => f.place === "key" && f.id !== "verdict" && f.value !== "");
  return {
    ...(old ?? begin()), ...read(slip), machine,
    worksheet: worksheet.id ?? "", title: document.querySelector("h1")?.textContent ?? "", link: worksheet.link,
    head: verdict.head, sentence: verdict.sentence, known: known.map(asValue),
    figures: shown.map((/** @type {any} */ f) => ({ label: f.label, text: f.text })),
  };
}
