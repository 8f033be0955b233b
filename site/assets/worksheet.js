/**
 * A worksheet at work: what is typed goes to the worker, and what comes back
 * goes into the page.
 */
import { Client } from "./client.js";
import { Field } from "./field.js";
import { watchAnswer, watchForm } from "./form.js";
import { readLink, remember, watchAddress, writeLink } from "./link.js";
import { mark } from "./mark.js";
import { paint, paintNothing, paintRemarks, say } from "./paint.js";
import { watchSlides } from "./slide.js";
import { watchPaper } from "./paper.js";
import { system } from "./units.js";
import { announce, TROUBLE, touched, view } from "./view.js";

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));

export class Worksheet {
  /** @param {HTMLElement} desk */
  constructor(desk) {
    this.id = desk.dataset.worksheet;
    this.root = desk.dataset.root ?? "";
    this.page = location.href.split("#")[0]; // where its links lead
    this.answer = byId("answer");
    this.fields = /** @type {NodeListOf<HTMLElement>} */ (desk.querySelectorAll("[data-field]"));
    this.fields = [...this.fields].map((node) => new Field(node));
    this.client = new Client((m) => this.#hear(m), (t) => this.#trouble(t), this.id);
    this.seq = 0;
    this.newest = /** @type {any} */ (null); // the newest answer without a problem
    this.opened = /** @type {[string, string][]} */ ([]); // the link that the page was opened with
    this.link = /** @type {[string, string][]} */ ([]); // of the newest answer
    this.examples = /** @type {string[]} */ ([]); // fields that are still the example's
    this.untidy = false; // a link's texts stand in the fields, not yet taken apart
    this.blank = false; // a link was opened and none of its answers shown yet
    this.switching = /** @type {{from: string, to: string} | null} */ (null);
    watchForm(this, /** @type {HTMLFormElement} */ (byId("fields")));
    watchAddress(() => this.#load(readLink()));
    watchAnswer(this);
    for (const part of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("details[data-script]"))) {
      const late = () => part.append("This part did not arrive; check the connection and reload.");
      part.addEventListener("toggle", () => import("./" + part.dataset.script).then((m) => m.start(this), late), { once: true });
    }
    watchPaper(this);
    watchSlides((id, text, unit) => this.#enter(id, { text, unit, unitTo: "" }));
  }

  /** @param {string} id */
  field(id) {
    return this.fields.find((f) => f.id === id);
  }

  /** Opens the page: with a link's numbers, or with the example. */
  open() {
    const pairs = readLink();
    if (pairs.length) return this.#load(pairs);
    this.client.start();
  }

  /** @param {[string, string][]} pairs */
  #load(pairs) {
    view(history.state?.typed ? "typed" : "link", "link");
    this.untidy = this.blank = true;
    this.opened = pairs;
    const texts = new Map([...pairs].reverse());
    for (const f of this.fields) f.load(texts.get(f.id));
    this.ask();
  }

  /** Asks for an answer to what is in the fields now, after a pending switch of units. */
  ask() {
    this.answer.setAttribute("aria-busy", "true");
    this.answer.dataset.state = "working";
    const fields = this.fields.map((f) => f.entry()).filter(Boolean);
    const question = { seq: ++this.seq, worksheet: this.id, link: this.opened, fields };
    const { from, to } = this.switching ?? {};
    this.client.ask(from ? { ...question, op: "convert", system: from, to } : { ...question, op: "evaluate", system: system() });
  }

  /** The reader changed a field. @param {Field} field */
  typed(field) {
    field.own = true;
    touched();
    this.ask();
  }

  /** A number comes from elsewhere than the field itself. @param {string} id @param {import("./field.js").Typed} typed */
  #enter(id, typed) {
    const field = this.field(id);
    if (!field) return;
    field.show(typed);
    this.typed(field);
  }

  /** The link to the newest answer. */
  address() {
    return this.page + (this.link.length ? writeLink(this.link) : "");
  }

  /** @param {string} from @param {string} to */
  convert(from, to) {
    this.switching = { from: this.switching?.from ?? from, to };
    this.ask();
  }

  /** @param {any} message */
  #hear(message) {
    if (!message.seq) this.answer.dispatchEvent(new CustomEvent(message.type, { detail: message })); // asked beside the questions
    if (message.seq !== this.seq) return;
    if (message.type === "answer") this.#show(message.answer, message.check);
    if (message.type !== "converted" || !this.switching) return;
    const { from, to } = this.switching;
    this.switching = null;
    for (const state of message.fields) this.field(state.id)?.convert(state, from, to);
    this.ask();
  }

  /** @param {any} answer @param {string} check */
  #show(answer, check) {
    delete document.documentElement.dataset.wait;
    const ok = !answer.problems.length;
    if (ok) paint(answer, (next) => this.root + (next.id === "short" ? "" : next.id + "/") + writeLink(next.link));
    else if (this.blank) paintNothing();
    mark(this, answer);
    paintRemarks(answer, (id) => this.field(id)?.label ?? id);
    if (!ok && this.blank) {
      view("typed");
      say(answer.verdict.head, "A number in this link needs fixing before it can be answered.");
    }
    this.blank &&= !ok;
    this.answer.dataset.check = check;
    this.answer.dataset.state = ok ? "current" : "stale";
    this.answer.setAttribute("aria-busy", "false");
    this.link = answer.link;
    if (ok) this.newest = answer;
    this.answer.dispatchEvent(new Event("answered"));
    if (this.fields.some((f) => f.own)) remember(answer.link);
    announce();
  }

  /** @param {keyof TROUBLE} trouble */
  #trouble(trouble) {
    if (!this.seq) return; // nothing was asked: the worked example stands, and the next question starts it again
    delete document.documentElement.dataset.wait;
    if (this.blank) paintNothing();
    say(TROUBLE[trouble][0], TROUBLE[trouble][1]);
    byId("live").textContent = TROUBLE[trouble][1];
    this.answer.dataset.state = "failed";
    this.answer.setAttribute("aria-busy", String(trouble === "again"));
  }
}
