/** Copies of all that is kept: as files to take away, and from files taken in. */
import { fromJSON, MOST, toJSON } from "./archive.js";
import { Client } from "./client.js";
import { BOM, toCSV } from "./csv.js";
import { download } from "./download.js";
import { fromRows, toRows } from "./ledger.js";
import { takeIn } from "./merge.js";
import { linkOf } from "./shelf.js";
import { today } from "./today.js";

/** @typedef {import("./store.js").Kept} Kept */

/** @param {Kept} kept */
const entries = (kept) => ({ machines: [...kept.machines.values()], records: [...kept.records.values()] });

/** @param {Kept} kept @param {"json" | "csv"} form @returns {string} what was done, in words */
export function giveAway(kept, form) {
  const text = form === "json" ? toJSON(entries(kept)) : BOM + toCSV(toRows(entries(kept), linkOf));
  const type = { json: "application/json", csv: "text/csv" }[form];
  download(new Blob([text], { type }), `plainlift-${today()}.${form}`);
  const { machines, records, broken } = kept;
  const left = broken.length ? ` What can't be read is not in it; download that by itself.` : "";
  return `The copy is with your downloads: ${many(machines.size, "machine")}, ${many(records.size, "record")}.${left}`;
}

/** @param {number} n @param {string} what */
export const many = (n, what) => (n === 1 ? `1 ${what}` : `${n} ${what}s`);

/** @param {File} file @returns {Promise<string>} what was done, in words */
export async function takeFile(file) {
  if (file.size > MOST) throw new Error(`This file has ${Math.round(file.size / 1e6)} MB; a copy of records has at most 20. It was not opened, and nothing here has changed.`);
  let text;
  try {
    text = await file.text();
  } catch {
    throw new Error("The browser could not read the file. Choose it again; nothing here has changed.");
  }
  return takeIn(/^\uFEFF?\s*[{[]/.test(text) ? fromJSON(text.replace(/^\uFEFF/, "")) : fromRows(await table(text)));
}

/** Reads a table in the calculator. @param {string} text @returns {Promise<string[][]>} */
function table(text) {
  return new Promise((yes, no) => {
    let lost = false;
    const client = new Client(({ type, error, rows, lines, wrong }) => {
      if (type !== "table") return;
      const i = wrong.findIndex((/** @type {string} */ w) => w);
      if (error || i >= 0) no(new Error(`${error || `Line ${lines[i]}: ${wrong[i]}`} Nothing was taken from the file.`));
      else yes(rows);
    }, () => {
      lost = true;
      no(new Error("The calculator, which reads tables, could not be loaded. Check the connection and try again; nothing here has changed."));
    });
    client.start();
    const ask = () => lost || client.beside({ op: "table", text }) || setTimeout(ask, 50);
    ask();
  });
}
