/** What a machine keeps of an answer, and what it gives back to the worksheets. */
import { keep } from "./known.js";
import { list } from "./paint.js";

/** @typedef {import("./entry.js").Machine} Machine */
/** @typedef {import("./entry.js").Value} Value */

/**
 * The answer's lasting values that are new to the machine or differ from what it has.
 * @param {any[]} known of the answer @param {Machine | undefined} machine
 * @returns {{value: Value, text: string, differs: boolean}[]}
 */
function news(known, machine) {
  return known.filter((k) => k.lasts && k.shown).flatMap((k) => {
    const has = machine?.values.find((v) => v.quantity === k.quantity);
    if (has && (has.text === k.text || has.shown === k.shown)) return [];
    const text = has ? `${k.label}: has ${has.shown}; replace with ${k.shown}` : `${k.label}: ${k.shown}`;
    return [{ value: asValue(k), text, differs: !!has }];
  });
}

let offered = /** @type {ReturnType<typeof news>} */ ([]);
const ticks = () => /** @type {HTMLInputElement[]} */ ([...document.querySelectorAll("#keep-ticks input")]);

/**
 * Shows what the machine would learn, each with a tick: what is new has one, unless
 * the numbers came with a link; what differs has none; what the reader ticked stays.
 * @param {any[]} known @param {Machine | undefined} machine @param {boolean} linked
 */
export function paintNews(known, machine, linked) {
  const before = new Map(offered.map((o, i) => [o.text, ticks()[i]?.checked]));
  offered = news(known, machine);
  list("keep-ticks", offered);
  ticks().forEach((tick, i) => (tick.checked = before.get(offered[i].text) ?? (!offered[i].differs && !linked)));
  /** @type {HTMLElement} */ (document.getElementById("keep-values")).hidden = !offered.length;
}

/** The values with those in their places that are ticked. @param {Value[]} values @returns {Value[]} */
export function withTicked(values) {
  const taken = offered.filter((_, i) => ticks()[i].checked).map((o) => o.value);
  return [...values.filter((v) => !taken.some((t) => t.quantity === v.quantity)), ...taken];
}

/** @param {any} known @returns {Value} */
export const asValue = ({ quantity, label, text, shown }) => ({ quantity, label, text, shown });

const NOW = "plainlift.machine"; // the machine that is worked on in this tab

/** Offers the machine's numbers, and no others, to the worksheets. @param {Machine} machine */
export function workOn({ id, name, values }) {
  keep(Object.fromEntries(values.map(({ quantity, text, shown }) => [quantity, { text, shown, id: "machine " + id, title: name }])));
  session((s) => s.setItem(NOW, id));
}

/** @returns {string} the id of the machine that is worked on, "" for none */
export const workedOn = () => session((s) => s.getItem(NOW)) ?? "";

/** Offers nothing more of it. @param {string} id of a machine that is gone; "" for any */
export function leave(id) {
  if (id && workedOn() !== id) return;
  keep({});
  session((s) => s.removeItem(NOW));
}

/** @template T @param {(s: Storage) => T} act @returns {T | undefined} */
function session(act) {
  try {
    return act(sessionStorage);
  } catch {
    return undefined; // storage is refused: nothing is offered
  }
}
