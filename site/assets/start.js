/** What every page starts: the switch of units, the anchors and the list of pages. */
import { keepAnchors } from "./link.js";
import { watchSystem } from "./units.js";

/** @param {(from: string, to: string) => void} convert told when the units are switched */
export function start(convert) {
  keepAnchors();
  watchSystem(convert);
  const menu = /** @type {HTMLDetailsElement | null} */ (document.querySelector(".menu"));
  if (menu) closeBeside(menu);
}

/** Closes the list of pages by Escape, and by a tap beside it. @param {HTMLDetailsElement} menu */
function closeBeside(menu) {
  document.addEventListener("click", (e) => menu.contains(/** @type {Node} */ (e.target)) || (menu.open = false));
  menu.addEventListener("keydown", (e) => {
    if (e.key !== "Escape" || !menu.open) return;
    menu.open = false;
    menu.querySelector("summary")?.focus();
  });
}

// Closed details print empty.
addEventListener("beforeprint", () => {
  for (const d of document.querySelectorAll("main details:not(.hint, .keep)")) {
    if (d.hasAttribute("open")) continue;
    d.setAttribute("open", "");
    d.setAttribute("data-for-print", "");
  }
});
addEventListener("afterprint", () => {
  for (const d of document.querySelectorAll("[data-for-print]")) {
    d.removeAttribute("open");
    d.removeAttribute("data-for-print");
  }
});
