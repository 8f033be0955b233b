/** Takes a forum post apart: what it says of pressure and load is marked in its text and offered to the fields. */
import { take } from "./form.js";
import { list } from "./paint.js";
import { system } from "./units.js";

/** @typedef {{field: string, value: string, shown: string, sure: boolean, ask: string}} Pick */

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** Starts when it is opened for the first time. @param {import("./worksheet.js").Worksheet} worksheet */
export function start(worksheet) {
  const text = /** @type {HTMLTextAreaElement} */ (byId("post-text"));
  const use = /** @type {HTMLButtonElement} */ (byId("use-post"));
  const say = (/** @type {string} */ said) => (byId("post-said").textContent = said);
  let picks = /** @type {Pick[]} */ ([]);
  const boxes = () => /** @type {HTMLInputElement[]} */ ([...byId("post-picks").querySelectorAll("input")]);

  const read = /** @type {HTMLButtonElement} */ (byId("read-post"));
  read.disabled = false;
  read.addEventListener("click", () => {
    const asked = worksheet.client.beside({ op: "post", worksheet: worksheet.id, system: system(), text: text.value });
    say(asked ? "" : "The calculator is not there yet; try again in a moment.");
  });

  worksheet.answer.addEventListener("post", (e) => {
    const message = /** @type {CustomEvent} */ (e).detail;
    picks = message.picks.filter((/** @type {Pick} */ p) => worksheet.field(p.field));
    byId("post-marked").replaceChildren(...message.pieces.map((/** @type {any} */ piece) => {
      if (piece.pick < 0) return piece.text;
      const mark = document.createElement("mark");
      mark.textContent = piece.text;
      mark.classList.toggle("asks", !message.picks[piece.pick].sure);
      return mark;
    }));
    list("post-picks", picks.map((p) => ({ use: `${worksheet.field(p.field)?.label}: ${p.shown}`, ask: p.ask })));
    boxes().forEach((box, i) => (box.checked = picks[i].sure && picks.findIndex((p) => p.field === picks[i].field && p.sure) === i));
    use.hidden = !picks.length;
    say(picks.length ? "Look at each, tick what is right, and use it." : "Nothing here says what a pressure or a load was before and after.");
  });

  // One field takes one value.
  byId("post-picks").addEventListener("change", (e) => {
    const all = boxes();
    const i = all.indexOf(/** @type {HTMLInputElement} */ (e.target));
    if (all[i]?.checked) all.forEach((box, j) => (box.checked &&= j === i || picks[j].field !== picks[i].field));
  });

  use.addEventListener("click", () => {
    const all = boxes();
    const taken = picks.filter((_, i) => all[i]?.checked).map((p) => ({ field: /** @type {import("./field.js").Field} */ (worksheet.field(p.field)), text: p.value }));
    take(worksheet, taken);
    say(taken.length ? "Used; what the post does not say is still the example's. Look through the fields." : "Nothing is ticked.");
  });
}
