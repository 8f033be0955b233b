/** What is kept, as the machines' page shows it: a card for each machine, with its records, the newest first. */
import { node } from "./ask.js";
import { watchCompare } from "./compare.js";
import { day } from "./entry.js";
import { writeLink } from "./link.js";
import { list, write } from "./paint.js";

/** @typedef {import("./entry.js").Job} Job */
/** @typedef {import("./store.js").Kept} Kept */

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));
const copyOf = (/** @type {string} */ id) => /** @type {HTMLElement} */ (/** @type {HTMLTemplateElement} */ (byId(id)).content.firstElementChild?.cloneNode(true));
const part = (/** @type {Element} */ of, /** @type {string} */ selector) => /** @type {HTMLElement} */ (of.querySelector(selector));

/** The pages that calculate, by worksheet. @returns {Map<string, HTMLAnchorElement>} */
export const sheets = () => new Map([.../** @type {NodeListOf<HTMLAnchorElement>} */ (document.querySelectorAll("[data-sheet]"))].map((a) => [a.dataset.sheet ?? "", a]));

/** The page's own link of a record; "" if there is no such page here. @param {Job} record */
export function linkOf(record) {
  const page = sheets().get(record.worksheet)?.href;
  return page ? page + writeLink(record.link) : "";
}

/** A record's machine is gone or damaged: it still has a card. */
const NOBODY = { id: "", name: "Records without a machine", notes: "The machine they belong to can't be read or is gone. Edit a record to give it another.", values: [] };

/** @param {Kept} kept */
export function paintShelf(kept) {
  const focused = document.activeElement instanceof HTMLElement ? document.activeElement.dataset.key : "";
  const open = new Set([...document.querySelectorAll("#machines details[open]")].map((d) => d.closest("section")?.id));
  const machines = [...kept.machines.values()].sort((a, b) => a.name.localeCompare(b.name));
  const records = [...kept.records.values()].sort((a, b) => (a.date === b.date ? compare(b.made, a.made) : compare(b.date, a.date)));
  const orphans = records.filter((r) => !kept.machines.has(r.machine));
  byId("machines").replaceChildren(
    ...machines.map((m) => card(m, records.filter((r) => r.machine === m.id), open)),
    ...orphans.length ? [card(NOBODY, orphans, open)] : [],
  );
  byId("begin").hidden = machines.length + records.length > 0;
  byId("broken").hidden = !kept.broken.length;
  byId("broken-head").textContent = kept.broken.length === 1 ? "One entry can't be read" : `${kept.broken.length} entries can't be read`;
  list("broken-list", kept.broken.map((b) => ({ why: `A ${b.kind === "machines" ? "machine" : "record"} ${b.why}.` })), (li) => {
    for (const button of li.querySelectorAll("button")) button.dataset.id = String([...byId("broken-list").querySelectorAll("li")].indexOf(/** @type {HTMLLIElement} */ (li)));
  });
  if (focused) part(document.body, `[data-key="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
}

const compare = (/** @type {string} */ a, /** @type {string} */ b) => (a < b ? -1 : a > b ? 1 : 0);

/** @param {any} machine @param {Job[]} records @param {Set<string | undefined>} open */
function card(machine, records, open) {
  const box = copyOf("machine");
  const n = machine.values.length;
  write(box, { ...machine, count: n === 1 ? "Its number" : `Its ${n} numbers` });
  box.id = "m-" + machine.id;
  const numbers = /** @type {HTMLDetailsElement} */ (part(box, "details"));
  numbers.hidden = !n;
  numbers.open = open.has(box.id);
  part(numbers, "dl").replaceChildren(...machine.values.flatMap((/** @type {any} */ v) => [node(v.label, "dt"), node(v.shown, "dd")]));
  hideEmpty(box);
  for (const button of box.querySelectorAll("button[data-act]")) name(button, machine.id, machine.name);
  part(box, "[data-act=work]").hidden = !n;
  part(box, ".give").hidden = machine === NOBODY;
  watchCompare(/** @type {HTMLFormElement} */ (part(box, ".compare")), machine, records);
  part(box, ".jobs").replaceChildren(...records.map(row));
  return box;
}

/** @param {Job} record */
function row(record) {
  const li = copyOf("record");
  const circumstances = [record.hours && `${record.hours} hours`, record.by && `by ${record.by}`, record.oil && `oil ${record.oil}`, record.rpm && `engine ${record.rpm}`];
  write(li, {
    ...record, day: day(record.date),
    figures: record.figures.map((f) => `${f.label} ${f.text}`).join(" · "),
    circumstances: circumstances.filter(Boolean).join(" · "),
  });
  const time = /** @type {HTMLTimeElement} */ (part(li, "time"));
  time.dateTime = record.date;
  const link = linkOf(record);
  const open = part(li, "[data-open]");
  if (link) open.setAttribute("href", link);
  else open.replaceWith(node("Its page is not in this version.", "span"));
  for (const button of li.querySelectorAll("button, a")) name(button, record.id, `the record of ${day(record.date)}`);
  hideEmpty(li);
  return li;
}

/** Several buttons say the same: a screen reader hears of what. @param {Element} button @param {string} id @param {string} what */
function name(button, id, what) {
  const { dataset } = /** @type {HTMLElement} */ (button);
  dataset.id = id;
  dataset.key = `${dataset.act ?? "open"} ${id}`;
  button.setAttribute("aria-label", `${button.textContent}: ${what}`);
}

/** @param {Element} box */
function hideEmpty(box) {
  for (const p of /** @type {NodeListOf<HTMLElement>} */ (box.querySelectorAll(".remark"))) p.hidden = !p.textContent;
}
