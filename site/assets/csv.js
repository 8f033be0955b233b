/** A table as comma-separated values (RFC 4180) that a spreadsheet opens as they are. */

/** Goes before the first row of a file: without it some spreadsheets take UTF-8 for something else. */
export const BOM = "\uFEFF";

/**
 * A cell that begins as a formula does gets an apostrophe, so that a spreadsheet
 * shows it and runs nothing. A number, with or without a unit, is none.
 * @param {string} cell
 */
function safe(cell) {
  const formula = /^[=+\-@\t\r]/.test(cell) && !/^[+-]?(\d+[.,]?\d*|\.\d+)(e[+-]?\d+)?( ?[\p{L}°%/²³]+)?$/iu.test(cell);
  const text = formula ? "'" + cell : cell;
  return /[",\r\n;\t]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** @param {string[][]} rows @returns {string} each row with its end of line */
export const toCSV = (rows) => rows.map((cells) => cells.map(safe).join(",") + "\r\n").join("");
