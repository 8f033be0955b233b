/** A worksheet in a frame of somebody else's page. It keeps nothing on the device but the choice of units, and knows nothing of what the full pages keep. */
import { readLink, writeLink } from "./link.js";
import { start } from "./start.js";
import { Worksheet } from "./worksheet.js";

const worksheet = new Worksheet(/** @type {HTMLElement} */ (document.querySelector("[data-worksheet]")));
const full = /** @type {HTMLAnchorElement} */ (document.getElementById("full"));
worksheet.page = full.href.split("#")[0];
worksheet.link = readLink(); // until it is answered
const follow = () => (full.href = worksheet.address());
worksheet.answer.addEventListener("answered", follow);
addEventListener("hashchange", () => (full.href = worksheet.page + writeLink(readLink())));
follow();
start((from, to) => worksheet.convert(from, to));
worksheet.open();
