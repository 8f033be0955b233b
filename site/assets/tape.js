/** A tape measure's fractions, which a phone's number pad cannot type: in the bar that stays in sight, while such a field is typed in. */

const box = /** @type {HTMLElement | null} */ (document.getElementById("fractions"));

/** A whole number, if there is one; any fraction or decimals; inches, if a unit is there at all. */
const LENGTH = /^\s*([-−]?(?:\d{1,3}(?:,\d{3})+|\d+)(?!\d*\s*[/⁄]))?[-−\d\s.,/⁄¼½¾⅛⅜⅝⅞⅓⅔]*(|in|inch|inches|["″])\s*$/i;

/** Puts a fraction behind the whole number. @param {string} text a length in inches @param {string} fraction "1/4" */
export function withFraction(text, fraction) {
  const [, whole, unit] = LENGTH.exec(text) ?? [];
  return [whole, fraction, unit].filter(Boolean).join(" ");
}

/** @param {import("./worksheet.js").Worksheet} worksheet @param {HTMLFormElement} form */
export function watchTape(worksheet, form) {
  if (!box) return;
  let field = /** @type {import("./field.js").Field | undefined} */ (undefined);
  const look = (/** @type {Event} */ e) => {
    const id = /** @type {HTMLElement} */ (e.target).closest("[data-tape]")?.getAttribute("data-field");
    const found = id ? worksheet.field(id) : undefined;
    field = found?.input === e.target && found?.unit?.value === "in" && LENGTH.test(found.input.value) ? found : undefined;
    box.hidden = !field;
  };
  form.addEventListener("focusin", look);
  form.addEventListener("input", look);
  form.addEventListener("focusout", () => (box.hidden = true));
  box.addEventListener("mousedown", (e) => e.preventDefault()); // the field keeps the focus
  box.addEventListener("click", (e) => {
    const fraction = /** @type {HTMLElement} */ (e.target).dataset.fraction;
    if (!field || !fraction) return;
    field.input.value = withFraction(field.input.value, fraction);
    worksheet.typed(field);
  });
}
