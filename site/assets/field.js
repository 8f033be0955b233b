/**
 * One field of the form: what is typed, whose it is, and what the worker is
 * told of it. Nothing typed is ever rewritten while it is being typed.
 */
import { Rows, oneLine } from "./rows.js";

/** @typedef {{text: string, unit: string, unitTo: string}} Typed */

export class Field {
  /** @param {HTMLElement} node */
  constructor(node) {
    this.node = node;
    this.id = /** @type {string} */ (node.dataset.field);
    this.shape = node.dataset.shape;
    this.own = false;
    this.input = /** @type {HTMLInputElement} */ (node.querySelector(`[name="${this.id}"]`));
    this.unit = /** @type {HTMLSelectElement | null} */ (node.querySelector(`select#unit-${this.id}`));
    this.unitTo = /** @type {HTMLSelectElement | null} */ (node.querySelector(`select#unit-to-${this.id}`));
    this.sign = /** @type {HTMLSelectElement | null} */ (node.querySelector("select.sign"));
    this.rows = node.querySelector(".rows") ? new Rows(node, this.input) : null;
    this.label = node.querySelector("label, legend")?.firstChild?.textContent ?? this.id;
    this.example = this.typed();
    this.said = "[[],[]]"; // nothing
    this.given = false; // a link has it
    /** After a switch of units: what was typed, in which system, and how it shows now. */
    this.kept = /** @type {{typed: Typed, system: string, shown: Typed, canonical: string} | null} */ (null);
  }

  /** @returns {Typed} */
  typed() {
    const minus = this.sign?.value && !/^\s*[-−]/.test(this.input.value) ? this.sign.value : "";
    return { text: (minus + this.input.value).slice(0, 20_001) /* more is refused unread */, unit: this.unit?.value ?? "", unitTo: this.unitTo?.value ?? "" };
  }

  /** @param {Typed} t */
  show(t) {
    if (this.sign) {
      const below = /^\s*[-−]/.test(t.text);
      this.sign.value = below ? "-" : "";
      t = { ...t, text: below ? t.text.replace(/^\s*[-−]/, "") : t.text };
    }
    if (this.shape === "choice" && ![...this.input.querySelectorAll("option")].some((o) => o.value === t.text)) {
      this.input.append(new Option(t.text.slice(0, 40), t.text)); // a link's bad choice is shown, not dropped
    }
    this.input.value = t.text;
    if (this.unit && t.unit) this.unit.value = t.unit;
    if (this.unitTo && t.unitTo) this.unitTo.value = t.unitTo;
    this.rows?.textChanged();
  }

  /** Whether it still holds the example's. */
  borrowed() {
    return !this.own && this.node.hasAttribute("data-example");
  }

  #untouched() {
    return this.kept && same(this.typed(), this.kept.shown);
  }

  /** What the worker is told; nothing of a field that holds its example, or what the link says. */
  entry() {
    if ((this.own || this.given) && this.#untouched()) return [this.id, this.kept?.canonical, "", "", this.own];
    if (!this.own) return null;
    const t = this.typed();
    return [this.id, t.text, t.unit, t.unitTo, true];
  }

  /** Shows a link's text, or the example where the link has none; whose it is the answer says. @param {string | undefined} text */
  load(text) {
    this.given = text !== undefined;
    this.own = false;
    this.kept = null;
    this.show(text === undefined ? this.example : { text: oneLine(text), unit: "", unitTo: "" });
  }

  /** A typed unit moves the chooser; numbers are left as typed. @param {any} state */
  follow(state) {
    const to = state.rows[0]?.unitB;
    const moves = this.unit && state.unit && this.unit.value !== state.unit || this.unitTo && to && this.unitTo.value !== to;
    if (!moves || this.#untouched()) return;
    if (this.unit && state.unit) this.unit.value = state.unit;
    if (this.unitTo && to) this.unitTo.value = to;
  }

  /** Takes a link's text apart: the number in its field, the unit in its chooser. @param {any} state */
  tidy(state) {
    if (this.shape !== "choice" && state.rows.length) this.show(shownAs(state));
  }

  /**
   * The switch of units. Coming back to the system it was typed in brings the
   * typed text back; a text that could not be read stays.
   * @param {any} state converted @param {string} from @param {string} to
   */
  convert(state, from, to) {
    this.own = state.own;
    if (!state.rows.length) return;
    const before = this.#untouched() ? this.kept : { typed: this.typed(), system: from, canonical: state.canonical };
    if (!before) return;
    if (before.system === to) {
      this.kept = null;
      this.show(before.typed);
    } else {
      this.show(shownAs(state));
      this.kept = { ...before, shown: this.typed() };
    }
    if (!this.own && !this.given) this.example = this.typed();
  }

  /** What stands under the field. @param {any[]} problems of this field @param {any[]} notes @param {(text: string) => void} choose */
  say(problems, notes, choose) {
    const said = JSON.stringify([problems, notes]);
    if (said === this.said && !this.rows) return; // most fields, at most answers; rows may have moved
    this.said = said;
    const error = /** @type {HTMLElement} */ (this.node.querySelector(".error[id]"));
    const whole = problems.filter((p) => p.row < 0 || !this.rows);
    error.replaceChildren(...whole.flatMap((p) => [p.message + " ", ...p.choices.map((/** @type {string} */ c) => button(c, () => choose(c)))]));
    error.hidden = !whole.length;
    const note = /** @type {HTMLElement} */ (this.node.querySelector(".note[id]"));
    note.textContent = notes.filter((n) => n.row < 0).map((n) => n.text).join(" ");
    note.hidden = !note.textContent;
    this.input.setAttribute("aria-invalid", String(problems.length > 0));
    this.node.classList.toggle("wrong", problems.length > 0);
    this.rows?.say((i) => {
      const p = problems.find((x) => x.row === i);
      const n = notes.find((x) => x.row === i);
      return p ? { text: p.message, wrong: true } : n && { text: n.text, wrong: false };
    });
  }
}

/** @param {any} state @returns {Typed} */
function shownAs(state) {
  const { unitA, unitB } = state.rows[0];
  const one = (/** @type {string} */ n, /** @type {string} */ u, /** @type {string} */ column) => (u === column ? n : `${n} ${u}`);
  const texts = state.rows.map((/** @type {any} */ r) => one(r.a, r.unitA, unitA) + (r.b ? ` : ${one(r.b, r.unitB, unitB)}` : ""));
  return { text: texts.join("; "), unit: unitA, unitTo: unitB };
}

/** @param {Typed} a @param {Typed} b */
const same = (a, b) => a.text === b.text && a.unit === b.unit && a.unitTo === b.unitTo;

/** @param {string} text @param {() => void} press */
function button(text, press) {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = text;
  b.addEventListener("click", press);
  return b;
}
