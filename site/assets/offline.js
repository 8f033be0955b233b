/** Keeps the site on the device for use without a signal, and says so in the foot of the page. */
import { arrived } from "./module.js";

const SAID = {
  saved: "Saved on this device: every page works without a signal.",
  saving: "Saving for use without a signal…",
  refused: "This browser does not save the site, so it needs a signal.",
};

/** Starts once the calculator has arrived: the first answer goes before. */
export async function keepOffline() {
  const line = /** @type {HTMLElement} */ (document.getElementById("offline"));
  const say = (/** @type {keyof SAID} */ what) => (line.textContent = SAID[what]);
  if (!navigator.serviceWorker) {
    say("refused");
    return;
  }
  const before = !!navigator.serviceWorker.controller; // the copy that stands behind this page
  if (before) say("saved");
  await arrived();
  if (!before) say("saving");
  try {
    const site = new URL("../../", import.meta.url);
    const { installing, active } = await navigator.serviceWorker.register(new URL("sw.js", site), { scope: site.href, updateViaCache: "none" });
    if (active) say("saved");
    else installing?.addEventListener("statechange", () => {
      if (installing.state === "activated") say("saved");
      else if (installing.state === "redundant") say("refused"); // a full disk, or a file that did not arrive
    });
  } catch {
    if (!before) say("refused");
  }
}
