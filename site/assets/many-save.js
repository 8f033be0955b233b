/** The answered rows, or an example, as a CSV file. */
import { BOM, toCSV } from "./csv.js";
import { download } from "./download.js";
import { writeLink } from "./link.js";
import { today } from "./today.js";

/** @typedef {import("./many-worker.js").Rows} Rows */

const csv = (/** @type {BlobPart[]} */ parts) => new Blob(parts, { type: "text/csv;charset=utf-8" });

/** Some at a time, so that the page stays free. @param {Rows} rows @param {string} sheet @param {string} page where the worksheet lies @param {(said: string) => void} say */
export async function save(rows, sheet, page, say) {
  const parts = [BOM];
  for (let at = 0; ; at += 500) {
    const m = await rows.ask({ op: "many-out", from: at, count: 500 });
    if (!at) parts.push(toCSV([[...m.heading, "link", "error"]]));
    if (!m.rows.length) break;
    parts.push(toCSV(m.rows.map((/** @type {any} */ r) => [...r.cells, r.link.length ? page + writeLink(r.link) : "", r.error])));
  }
  download(csv(parts), `plainlift-${sheet}-${today()}.csv`);
  say("The file is saved with your downloads.");
}

/** @param {Rows} rows @param {string} sheet @param {string} _page @param {(said: string) => void} say */
export async function example(rows, sheet, _page, say) {
  const m = await rows.ask({ op: "many-example", worksheet: sheet });
  download(csv([BOM, toCSV(m.rows)]), `plainlift-${sheet}-example.csv`);
  say("The example file is saved with your downloads. Its numbers are invented.");
}
