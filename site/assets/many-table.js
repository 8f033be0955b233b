/** The answered rows: 100 at a time, in the order of any column. */
import { writeLink } from "./link.js";
import { list } from "./paint.js";

const STEP = 100;
const SOME = 20; // rows at a time
const FILE = -1; // the order of the file
const VERDICT = -2;
const byId = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));

export class Table {
  by = FILE;
  down = false;
  shown = STEP;
  drawing = 0; // the newest

  /** @param {import("./many-worker.js").Rows} rows @param {() => string} page where the worksheet lies @param {(said: string) => void} say @param {(act: () => Promise<unknown>) => void} attempt */
  constructor(rows, page, say, attempt) {
    this.rows = rows;
    this.page = page;
    byId("heading").addEventListener("click", (e) => {
      const th = /** @type {HTMLElement} */ (e.target).closest("th");
      if (!th) return;
      const by = Number(th.dataset.by);
      this.down = by === this.by && !this.down;
      this.by = by;
      attempt(async () => {
        await this.draw();
        say(`Sorted by ${th.textContent}, ${this.down ? "down" : "up"}wards.`);
      });
    });
    byId("further").addEventListener("click", () => {
      const from = this.shown;
      this.shown += STEP;
      attempt(() => this.draw(from));
    });
  }

  /** A new file or worksheet. */
  reset() {
    this.drawing++;
    [this.by, this.down, this.shown] = [FILE, false, STEP];
    byId("rows").replaceChildren();
  }

  /** @param {string} svg @param {string} says */
  picture(svg, says) {
    const parsed = new DOMParser().parseFromString(svg || "<svg/>", "image/svg+xml").documentElement;
    byId("many-picture").replaceChildren(...(svg && parsed.localName === "svg" ? [document.importNode(parsed, true)] : []));
    byId("picture-says").textContent = says;
  }

  /** Draws the rows from so many on; those before stand. */
  async draw(from = 0) {
    const mine = ++this.drawing;
    byId("further").disabled = true; // rows follow one another
    const m = await this.rows.ask({ op: "many-rows", by: this.by, down: this.down, from, count: this.shown - from });
    if (!m.heading || mine !== this.drawing) return;
    list("heading", m.heading, (node, column) => {
      node.dataset.by = column.by;
      if (column.by === this.by) node.setAttribute("aria-sort", this.down ? "descending" : "ascending");
      else node.removeAttribute("aria-sort");
    });
    const body = byId("rows");
    if (!from) body.replaceChildren();
    const verdict = m.heading.findIndex((/** @type {any} */ h) => h.by === VERDICT);
    for (let i = 0; i < m.rows.length; i += SOME) { // the page answers in between
      body.append(...m.rows.slice(i, i + SOME).map((/** @type {any} */ row) => this.#row(row, verdict)));
      await new Promise((next) => setTimeout(next));
      if (mine !== this.drawing) return;
    }
    const all = Math.min(this.shown, m.done);
    byId("seen").textContent = `${all.toLocaleString("en-US")} of ${m.done.toLocaleString("en-US")} rows`;
    byId("further").hidden = all >= m.done;
    byId("further").disabled = false;
  }

  /** What is wrong with a row stands where its answer would. @param {{cells: (string | number)[], error: string, link: [string, string][]}} row @param {number} verdict which cell */
  #row(row, verdict) {
    const tr = document.createElement("tr");
    if (row.error) row.cells.splice(verdict, 1);
    row.cells.forEach((cell, i) => {
      const td = document.createElement("td");
      if (i || !row.link.length) td.textContent = String(cell);
      else {
        const a = document.createElement("a");
        a.href = this.page() + writeLink(row.link);
        a.textContent = String(cell);
        a.setAttribute("aria-label", `Line ${cell}: open its own page`);
        td.append(a);
      }
      td.classList.toggle("head", i === verdict);
      if (row.error && i === verdict) td.colSpan = 2;
      tr.append(td);
    });
    tr.classList.toggle("bad", !!row.error);
    return tr;
  }
}
