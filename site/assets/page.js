/** Starts a page: the switch of units, the anchors, and the worksheet if it has one. */
import { keepAnchors } from "./link.js";
import { keepOffline } from "./offline.js";
import { watchSystem } from "./units.js";
import { Worksheet } from "./worksheet.js";

keepAnchors();
const desk = /** @type {HTMLElement | null} */ (document.querySelector("[data-worksheet]"));
const worksheet = desk && new Worksheet(desk);
watchSystem((from, to) => worksheet?.convert(from, to));
worksheet?.open();
keepOffline();

// Closed details print empty.
addEventListener("beforeprint", () => {
  for (const d of document.querySelectorAll("main details:not(.hint)")) {
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
