/** A dropped or chosen file as text. */

const MOST = 20_000_000; // bytes, as the calculator has it

/**
 * What spreadsheets save is UTF-8, UTF-16 with its mark, or the Western code page.
 * @param {Blob} file @returns {Promise<{text: string, says: string}>}
 */
export async function textOf(file) {
  if (file.size > MOST) throw new Error(`This file has ${(file.size / 1e6).toFixed(0)} MB; up to 20 MB can be taken. Split it and take the parts one after the other.`);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "";
  if (wide) return { text: new TextDecoder(wide).decode(bytes), says: "" };
  if (bytes.includes(0)) throw new Error("This is no table of text. In the spreadsheet save it as CSV (UTF-8) and take that file.");
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), says: "" };
  } catch {
    return { text: new TextDecoder("windows-1252").decode(bytes), says: "The file is not UTF-8; it is read as Western European. If letters look odd, save it as CSV (UTF-8)." };
  }
}
