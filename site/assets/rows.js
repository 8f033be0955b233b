/**
 * Rows of number fields in front of one named input, kept equal both ways.
 */

/** Texts of the items in a list as typed: semicolons, new lines, or a comma and a space. */
const items = (/** @type {string} */ text) => text.split(/[;\n]|,\s/).map((s) => s.trim()).filter(Boolean);

/** A text with the line ends that an input would drop made into separators. */
export const oneLine = (/** @type {string} */ text) => text.trim().replace(/\s*[\r\n]+\s*/g, "; ");

const MOST = 200;

export class Rows {
  /** @param {HTMLElement} node the field @param {HTMLInputElement} input the named one */
  constructor(node, input) {
    this.input = input;
    this.box = /** @type {HTMLElement} */ (node.querySelector(".rows"));
    this.blank = /** @type {HTMLTemplateElement} */ (this.box.querySelector("template"));
    this.pairs = node.dataset.shape === "pairs";
    node.querySelector(".add")?.addEventListener("click", () => this.#add().querySelector("input")?.focus());
  }

  #all() {
    return /** @type {HTMLElement[]} */ ([...this.box.querySelectorAll(".row")]);
  }

  /** @param {HTMLElement} row */
  static #texts(row) {
    return [...row.querySelectorAll("input")].map((i) => i.value.trim());
  }

  /** The rows that hold something, in order, as problems count them. */
  filled() {
    return this.#all().filter((row) => Rows.#texts(row).some(Boolean));
  }

  #add() {
    this.box.append(this.blank.content.cloneNode(true));
    this.#name();
    return /** @type {HTMLElement} */ (this.#all().at(-1));
  }

  /** Numbers the rows for those who hear them. */
  #name() {
    this.#all().forEach((row, i) => {
      for (const input of row.querySelectorAll("input")) input.setAttribute("aria-label", `${input.dataset.label} ${i + 1}`);
    });
  }

  /** A row was typed in: the named input follows, and the next row opens. */
  rowsChanged() {
    const separator = this.pairs ? " : " : "";
    this.input.value = this.filled().map((row) => Rows.#texts(row).join(separator)).join("; ");
    const last = this.#all().at(-1);
    if (!last || Rows.#texts(last).some(Boolean)) this.#add();
  }

  /** The named input changed: the rows follow. */
  textChanged() {
    this.fill(items(this.input.value).map((s) => (this.pairs ? s.split(":").map((t) => t.trim()) : [s])));
  }

  /** @param {string[][]} texts one or two texts a row */
  fill(texts) {
    if (texts.length > MOST) return; // the named input keeps them all
    while (this.#all().length < texts.length + 1) this.#add();
    this.#all().forEach((row, i) => {
      if (i > texts.length) row.remove();
      else row.querySelectorAll("input").forEach((input, j) => (input.value = texts[i]?.[j] ?? ""));
    });
  }

  /** @param {Element} button of the row to remove */
  remove(button) {
    button.closest(".row")?.remove();
    if (!this.#all().length) this.#add();
    this.#name();
    this.rowsChanged();
  }

  /** Empties every row but one, where it stands. @param {Element | null} [kept] */
  clear(kept) {
    for (const row of this.#all()) if (row !== kept) row.querySelectorAll("input").forEach((input) => (input.value = ""));
  }

  /** Puts a text into the first row whose first number is empty. @param {string} text */
  offer(text) {
    const row = this.#all().find((r) => !r.querySelector("input")?.value.trim()) ?? this.#add();
    const inputs = row.querySelectorAll("input");
    inputs[0].value = text;
    (inputs[1] ?? inputs[0]).focus();
    this.rowsChanged();
  }

  /** @param {(i: number) => {text: string, wrong: boolean} | undefined} says what stands under row i */
  say(says) {
    const filled = this.filled();
    this.#all().forEach((row, i) => {
      const said = filled.includes(row) ? says(filled.indexOf(row)) : undefined;
      const p = /** @type {HTMLElement} */ (row.querySelector(".row-says"));
      p.id = `${this.input.id}-row-${i}`;
      p.hidden = !said;
      p.textContent = said?.text ?? "";
      p.classList.toggle("error", !!said?.wrong);
      for (const input of row.querySelectorAll("input")) {
        input.setAttribute("aria-describedby", p.id);
        input.setAttribute("aria-invalid", String(!!said?.wrong));
      }
    });
  }
}
