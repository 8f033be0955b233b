/** What the reader does on a worksheet: typing, pasting, choosing, tapping. */
import { copy, unfold, writeLink } from "./link.js";
import { oneLine } from "./rows.js";
import { watchTape } from "./tape.js";
import { view } from "./view.js";

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));

/**
 * @param {import("./worksheet.js").Worksheet} worksheet
 * @param {HTMLFormElement} form
 */
export function watchForm(worksheet, form) {
  const fieldOf = (/** @type {EventTarget | null} */ target) => {
    const id = /** @type {HTMLElement} */ (target).closest?.("[data-field]")?.getAttribute("data-field");
    return id ? worksheet.field(id) : undefined;
  };

  form.addEventListener("input", (e) => {
    const field = fieldOf(e.target);
    if (!field) return;
    const row = /** @type {HTMLElement} */ (e.target).closest(".row");
    if (e.target === field.input) field.rows?.textChanged();
    else if (row) {
      if (field.borrowed()) field.rows?.clear(row); // the example's readings never count among the reader's
      field.rows?.rowsChanged();
    }
    worksheet.typed(field);
  });
  form.addEventListener("submit", (e) => e.preventDefault());

  // An input drops line ends: 2600⏎2620 would become one number.
  const take = (/** @type {Event} */ e, /** @type {string} */ text) => {
    const field = fieldOf(e.target);
    const input = /** @type {HTMLInputElement} */ (e.target);
    if (!field || !input.matches("input")) return;
    const whole = field.rows && /[;\n\r]/.test(text.trim());
    if (!whole && !/[\r\n]/.test(text)) return;
    e.preventDefault();
    if (field.rows) {
      field.input.value = oneLine(text);
      field.rows.textChanged();
    } else {
      input.setRangeText(oneLine(text), input.selectionStart ?? 0, input.selectionEnd ?? 0, "end");
    }
    worksheet.typed(field);
  };
  form.addEventListener("paste", (e) => take(e, e.clipboardData?.getData("text") ?? ""));
  form.addEventListener("drop", (e) => take(e, e.dataTransfer?.getData("text") ?? ""));

  form.addEventListener("click", (e) => {
    const button = /** @type {Element} */ (e.target).closest("button");
    const field = fieldOf(e.target);
    if (!button || !field) return;
    if (button.matches(".remove")) field.borrowed() ? field.rows?.clear() : field.rows?.remove(button);
    else if (!button.matches(".chip")) return;
    else if (field.rows) {
      if (field.borrowed()) field.rows.clear();
      field.rows.offer(button.dataset.chip ?? "");
    }
    else field.show({ text: button.dataset.chip ?? "", unit: "", unitTo: "" });
    worksheet.typed(field);
  });

  watchTape(worksheet, form);
  form.addEventListener("keydown", (e) => {
    const input = /** @type {Element} */ (e.target);
    if (e.key !== "Enter" || !input.matches(".row input")) return;
    e.preventDefault();
    const all = [...(input.closest(".rows")?.querySelectorAll("input") ?? [])];
    all[all.indexOf(/** @type {HTMLInputElement} */ (input)) + 1]?.focus();
  });

  const borrowed = (/** @type {boolean} */ keep) => {
    for (const id of worksheet.examples) {
      const field = worksheet.field(id);
      if (!field) continue;
      if (!keep) field.show({ text: "", unit: "", unitTo: "" });
      field.own = true;
    }
    worksheet.ask();
  };
  byId("clear-example").addEventListener("click", () => {
    const first = worksheet.field(worksheet.examples[0]);
    borrowed(false);
    if (first) unfold(first.node);
    first?.node.querySelector("input")?.focus();
  });
  byId("keep-example").addEventListener("click", () => borrowed(true));
}

/** Makes values from elsewhere the reader's own. @param {import("./worksheet.js").Worksheet} worksheet @param {{field: import("./field.js").Field, text: string}[]} values */
export function take(worksheet, values) {
  for (const { field, text } of values) {
    field.show({ text, unit: "", unitTo: "" });
    field.own = worksheet.untidy = true;
  }
  if (!values.length) return;
  view("typed");
  worksheet.ask();
}

/** The buttons of the answer. @param {import("./worksheet.js").Worksheet} worksheet */
export function watchAnswer(worksheet) {
  byId("change").addEventListener("click", () => {
    view("typed");
    byId("borrowed").hidden = !worksheet.examples.length;
    worksheet.fields[0].node.querySelector("input")?.focus();
  });
  byId("copy").addEventListener("click", async () => {
    if (worksheet.link.length) history.replaceState(history.state, "", writeLink(worksheet.link));
    byId("copied").textContent = (await copy(worksheet.address())) ? "Copied." : byId("copy").dataset.refused ?? "";
  });
}
