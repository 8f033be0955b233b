/** What an answer says of the fields: whose number each is, and what is wrong with it. */
import { paintSlide } from "./slide.js";

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** @param {import("./worksheet.js").Worksheet} worksheet @param {any} answer */
export function mark(worksheet, answer) {
  for (const state of answer.fields) {
    const f = /** @type {import("./field.js").Field} */ (worksheet.field(state.id));
    f.own = state.own;
    if (worksheet.untidy) f.tidy(state);
    else f.follow(state);
    f.node.hidden = !state.bears;
    f.node.toggleAttribute("data-example", state.example);
    paintSlide(f.id, state.slide);
    const here = (/** @type {any} */ x) => x.field === state.id;
    f.say(answer.problems.filter(here), answer.notes.filter(here), (text) => {
      f.show({ text, unit: "", unitTo: "" });
      worksheet.untidy = true;
      worksheet.typed(f);
    });
  }
  worksheet.untidy = false;
  worksheet.examples = answer.examples;
  byId("borrowed").hidden = !answer.examples.length || document.documentElement.dataset.view === "example";
  byId("borrowed-names").textContent = answer.borrowed.join(", ");
}
