/** Two records of one machine as before and after: their values go, by quantity, to a page that compares such. */
import { node } from "./ask.js";
import { day } from "./entry.js";
import { writeLink } from "./link.js";

/** @typedef {import("./entry.js").Job} Job */
/** @typedef {import("./entry.js").Value} Value */
/** @typedef {{pairs: {Quantity: string, Before: string, After: string, Apart: {Key: string, Value: string}}[], fields: {id: string, quantity: string, options: string[], optional: boolean}[]}} Compares */

/** What a record says of its gauge, by quantity. @param {Job} job */
const gaugeOf = (job) => new Map(job.known.filter((k) => k.quantity.startsWith("gauge ")).map((k) => [k.quantity, k.text]));

const valueOf = (/** @type {Value[]} */ values, /** @type {string} */ quantity) => values.find((v) => v.quantity === quantity)?.text;

/**
 * The pages that can compare the two, each with the link that does: what the
 * machine keeps and what both records say alike goes along.
 * @param {Value[]} lasting the machine's numbers @param {Job} before @param {Job} after
 * @returns {{title: string, href: string}[]}
 */
export function ways(lasting, before, after) {
  const [first, second] = [gaugeOf(before), gaugeOf(after)];
  const shared = [...first.keys()].filter((q) => second.has(q));
  const other = (/** @type {string} */ q) => first.has(q) && second.has(q) && first.get(q) !== second.get(q);
  const one = shared.length > 0 && !shared.some(other);
  return [.../** @type {NodeListOf<HTMLAnchorElement>} */ (document.querySelectorAll("[data-compares]"))].flatMap((a) => {
    const { pairs, fields } = /** @type {Compares} */ (JSON.parse(a.dataset.compares ?? ""));
    const taken = /** @type {[string, string][]} */ ([]);
    for (const { Quantity, Before, After, Apart } of pairs) {
      const [b, c] = [valueOf(before.known, Quantity), valueOf(after.known, Quantity)];
      if (!b || !c) return [];
      taken.push([Before, b], [After, c]);
      if (!one) taken.push([Apart.Key, Apart.Value]);
    }
    for (const { id, quantity, options, optional } of fields) {
      if (taken.some(([key]) => key === id) || other(quantity)) continue; // of two gauges the coarser counts, which is not known here
      const lasts = (/** @type {Value} */ k) => lasting.some((v) => v.quantity === k.quantity) || valueOf(before.known, k.quantity) === k.text;
      const text = valueOf(after.known.filter(lasts), quantity) ?? valueOf(lasting, quantity);
      if (text && (!options.length || options.includes(text))) taken.push([id, text]);
      else if (optional) taken.push([id, ""]); // the example's would be nobody's
    }
    return [{ title: a.textContent ?? "", href: a.href + writeLink([...taken, ["end", "1"]]) }];
  });
}

/** @param {HTMLFormElement} form @param {{values: Value[]}} machine @param {Job[]} records the newest first */
export function watchCompare(form, machine, records) {
  const fit = records.filter((r) => ways(machine.values, r, r).length);
  form.hidden = fit.length < 2;
  if (form.hidden) return;
  const [before, after] = /** @type {HTMLSelectElement[]} */ ([form.querySelector(".before"), form.querySelector(".after")]);
  for (const select of [before, after]) select.replaceChildren(...fit.map((r) => new Option(`${day(r.date)}: ${r.head}`, r.id)));
  before.value = fit[1].id;
  after.value = fit[0].id;
  const list = /** @type {HTMLElement} */ (form.querySelector(".compared"));
  form.addEventListener("submit", (e) => {
    e.preventDefault();
    const [b, a] = [before, after].map((s) => /** @type {Job} */ (fit.find((r) => r.id === s.value)));
    const found = b === a ? [] : ways(machine.values, b, a);
    if (found.length === 1) return location.assign(found[0].href);
    list.replaceChildren(...found.map(({ title, href }) => {
      const li = node("", "li");
      const link = /** @type {HTMLAnchorElement} */ (node(title, "a"));
      link.href = href;
      li.append(link);
      return li;
    }));
    if (!found.length) list.replaceChildren(node(b === a ? "Choose two records, not one twice." : "These two have no value in common that a page compares.", "li"));
  });
}
