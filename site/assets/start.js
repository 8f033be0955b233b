/** What every page starts: the switch of units and the anchors. */
import { keepAnchors } from "./link.js";
import { watchSystem } from "./units.js";

/** @param {(from: string, to: string) => void} convert told when the units are switched */
export function start(convert) {
  keepAnchors();
  watchSystem(convert);
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
