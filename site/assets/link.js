/**
 * The fragment holds the whole state of a page: keys are field ids, values what
 * stands in the fields. A fragment without "=" is an ordinary anchor.
 */

const MOST = 500; // more than any page has fields

/** @returns {[string, string][]} the keys and values of the page's link, or none; what they mean the worker says */
export function readLink() {
  const text = location.hash.slice(1);
  return text.includes("=") ? [...new URLSearchParams(text)].slice(0, MOST) : [];
}

/** @param {[string, string][]} pairs */
export const writeLink = (pairs) => "#" + new URLSearchParams(pairs).toString();

let due = 0;
let pending = /** @type {[string, string][] | null} */ (null); // not yet in the address

/** The entry of the history also says who typed the numbers: a reader who comes back is no reader of a link. */
function write() {
  if (pending) history.replaceState({ ...history.state, typed: document.documentElement.dataset.view === "typed" }, "", writeLink(pending));
  forget();
}

function forget() {
  clearTimeout(due);
  pending = null;
}

/** Puts the state into the address, not more often than browsers allow. @param {[string, string][]} pairs */
export function remember(pairs) {
  clearTimeout(due);
  pending = pairs;
  due = setTimeout(write, 400);
}

addEventListener("pagehide", write);

/** Another link in the address, or back at one without numbers. @param {() => void} changed */
export function watchAddress(changed) {
  addEventListener("hashchange", () => {
    forget(); // what was still to be written belongs to the address that was left
    if (location.hash.includes("=")) changed();
    else if (!location.hash) location.reload(); // the worked example again
  });
}

/** Opens what a node is folded into. @param {Element} node */
export function unfold(node) {
  for (let d = node.closest("details"); d; d = d.parentElement?.closest("details") ?? null) d.open = true;
}

/** Anchors inside the page move the eye, not the address, which holds the numbers. */
export function keepAnchors() {
  document.addEventListener("click", (e) => {
    const a = /** @type {Element} */ (e.target).closest?.("a[href^='#']");
    const id = a?.getAttribute("href")?.slice(1);
    if (!a || !id || id.includes("=")) return;
    const to = document.getElementById(id);
    if (!to) return;
    e.preventDefault();
    unfold(to);
    (document.querySelector(`label[for="${id}"]`) ?? to).scrollIntoView({ block: "center" });
    if (!to.matches("input, select, button, a")) to.tabIndex = -1;
    to.focus({ preventScroll: true });
  });
}

/** Copies a text. @param {string} text @returns {Promise<boolean>} whether it worked */
export async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
