/** The answered rows, or an example, as a CSV file. */
import { BOM, toCSV } from "./csv.js";
import { writeLink } from "./link.js";

/** @typedef {import("./many-worker.js").Rows} Rows */

/** Some at a time, so that the page stays free. @param {Rows} rows @param {string} sheet @param {string} page where the worksheet lies @param {(said: string) => void} say */
export async function save(rows, sheet, page, say) {
  const parts = [BOM];
  for (let at = 0; ; at += 500) {
    const m = await rows.ask({ op: "many-out", from: at, count: 500 });
    if (!at) parts.push(toCSV([[...m.heading, "link", "error"]]));
    if (!m.rows.length) break;
    parts.push(toCSV(m.rows.map((/** @type {any} */ r) => [...r.cells, r.link.length ? page + writeLink(r.link) : "", r.error])));
  }
  download(parts, `plainlift-${sheet}-${today()}.csv`);
  say("The file is saved with your downloads.");
}

/** @param {Rows} rows @param {string} sheet @param {string} _page @param {(said: string) => void} say */
export async function example(rows, sheet, _page, say) {
  const m = await rows.ask({ op: "many-example", worksheet: sheet });
  download([BOM, toCSV(m.rows)], `plainlift-${sheet}-example.csv`);
  say("The example file is saved with your downloads. Its numbers are invented.");
}

/** @param {BlobPart[]} parts @param {string} name */
function download(parts, name) {
  const a = document.createElement("a");
  a.href = URL.createObjectURL(new Blob(parts, { type: "text/csv;charset=utf-8" }));
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 60_000);
}

/** 2026-05-01, as the reader's clock has it. */
function today() {
  const d = new Date();
  return [d.getFullYear(), d.getMonth() + 1, d.getDate()].map((n) => String(n).padStart(2, "0")).join("-");
}
