/**
 * What the reader gave on one worksheet is offered on the next, by the quantity
 * that a field declares. It is kept for this visit only, on this device.
 */
import { take } from "./form.js";
import { keep, recall } from "./known.js";
import { readLink } from "./link.js";
import { list } from "./paint.js";

const box = /** @type {HTMLElement} */ (document.getElementById("offers"));

/** Somebody else's numbers, which a link brought, are nobody's to offer. @param {import("./worksheet.js").Worksheet} worksheet */
function learn(worksheet) {
  if (worksheet.answer.dataset.state !== "current" || document.documentElement.dataset.view === "link") return;
  const all = recall();
  for (const quantity of Object.keys(all)) if (all[quantity].id === worksheet.id) delete all[quantity];
  const title = document.querySelector("h1")?.textContent ?? "";
  for (const { quantity, text, shown } of worksheet.newest.known) all[quantity] = { text, shown, id: worksheet.id ?? "", title };
  keep(all);
}

/** The fields that are nobody's yet, and what is known for each. @param {import("./worksheet.js").Worksheet} worksheet */
function open(worksheet) {
  const all = recall();
  return worksheet.fields.flatMap((field) => {
    const known = all[field.node.dataset.quantity ?? ""];
    const fits = known && known.id !== worksheet.id && !field.own && !field.node.hidden;
    if (!fits || field.shape === "choice" && !field.input.querySelector(`option[value="${CSS.escape(known.text)}"]`)) return [];
    return [{ field, ...known, use: `${field.label}: use ${known.shown}`, from: `from “${known.title}”` }];
  });
}

/** @param {import("./worksheet.js").Worksheet} worksheet */
export function paintOffers(worksheet) {
  const offers = open(worksheet);
  document.documentElement.toggleAttribute("data-offers", offers.length > 0);
  list("offered", offers, (node, offer) => node.querySelector("button")?.setAttribute("data-offer", offer.field.id));
}

/** @param {import("./worksheet.js").Worksheet} worksheet */
export function watchOffers(worksheet) {
  box.addEventListener("click", (e) => {
    const button = /** @type {HTMLElement} */ (e.target).closest("button");
    if (!button) return;
    if (button.id === "forget-offers") keep({});
    const taken = open(worksheet).filter((o) => button.id === "take-offers" || o.field.id === button.dataset.offer);
    take(worksheet, taken);
    paintOffers(worksheet);
  });
  worksheet.answer.addEventListener("answered", () => {
    learn(worksheet);
    paintOffers(worksheet);
  });
  if (!readLink().length) paintOffers(worksheet);
}
