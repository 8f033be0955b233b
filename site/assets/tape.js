/** A tape measure's fractions, which a phone's number pad cannot type: in the bar that stays in sight, while such a field is typed in. */

const box = /** @type {HTMLElement | null} */ (document.getElementById("fractions"));

/** Puts a fraction behind the whole number. @param {string} text as typed @param {string} fraction "1/4" */
export function withFraction(text, fraction) {
  const [, number, unit] = /^\s*([-−]?[\d.,/ ¼½¾]*)\s*(.*)$/.exec(text) ?? ["", "", ""];
  const whole = /^[-−]?\d+\s*\//.test(number) ? "" : /^[-−]?\d*/.exec(number)?.[0]; // "3/8" has no whole number
  return [whole, fraction, unit].filter(Boolean).join(" ");
}

/** @param {import("./worksheet.js").Worksheet} worksheet @param {HTMLFormElement} form */
export function watchTape(worksheet, form) {
  if (!box) return;
  let field = /** @type {import("./field.js").Field | undefined} */ (undefined);
  form.addEventListener("focusin", (e) => {
    const node = /** @type {HTMLElement} */ (e.target).closest?.("[data-tape]");
    field = node ? worksheet.field(node.getAttribute("data-field") ?? "") : undefined;
    box.hidden = !field || e.target !== field.input || field.unit?.value !== "in";
  });
  form.addEventListener("focusout", () => (box.hidden = true));
  box.addEventListener("pointerdown", (e) => e.preventDefault()); // the field keeps the focus
  box.addEventListener("click", (e) => {
    const fraction = /** @type {HTMLElement} */ (e.target).dataset.fraction;
    if (!field || !fraction) return;
    field.input.value = withFraction(field.input.value, fraction);
    worksheet.typed(field);
  });
}
