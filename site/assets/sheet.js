/** A page that calculates. */
import { watchOffers } from "./offers.js";
import { keepOffline } from "./offline.js";
import { start } from "./start.js";
import { Worksheet } from "./worksheet.js";

const worksheet = new Worksheet(/** @type {HTMLElement} */ (document.querySelector("[data-worksheet]")));
start((from, to) => worksheet.convert(from, to));
watchOffers(worksheet);
worksheet.open();
keepOffline();
