/** What only the printed page has: the date, and the link as text and as a code to scan. */

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));
const REST = 1200; // ms without typing before a code is asked for
const MOST = 300; // characters of a link that anybody would type off

/** @param {import("./worksheet.js").Worksheet} worksheet */
export function watchPaper(worksheet) {
  let due = 0;
  worksheet.answer.addEventListener("answered", () => {
    clearTimeout(due);
    paintCode(""); // of the answer before
    const text = worksheet.address();
    byId("paper-link").textContent = text.length > MOST ? `${worksheet.page} (the numbers are in the code)` : text;
    due = setTimeout(() => worksheet.client.beside({ op: "code", text }), REST);
  });
  worksheet.answer.addEventListener("code", (e) => paintCode(/** @type {CustomEvent} */ (e).detail.svg));
  addEventListener("beforeprint", () => (byId("paper-date").textContent = new Date().toLocaleDateString()));
}

/** @param {string} svg "" for none */
function paintCode(svg) {
  const parsed = svg ? new DOMParser().parseFromString(svg, "image/svg+xml").documentElement : null;
  byId("paper-code").replaceChildren(...(parsed?.nodeName === "svg" ? [document.importNode(parsed, true)] : []));
}
