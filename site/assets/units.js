/** The one switch of units for the whole site, remembered on this device. */

const KEY = "plainlift.system";
const select = /** @type {HTMLSelectElement} */ (document.getElementById("system"));

/** @returns {string} "us" or "metric" */
export const system = () => select.value;

/** Numbers quoted in prose carry both texts. */
function quoted() {
  for (const node of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-metric]"))) {
    node.dataset.us ??= node.textContent ?? "";
    node.textContent = (system() === "metric" ? node.dataset.metric : node.dataset.us) ?? "";
  }
}

/** @param {(from: string, to: string) => void} changed */
export function watchSystem(changed) {
  let from = "us";
  try {
    if (localStorage.getItem(KEY) === "metric") select.value = "metric";
  } catch {
    // Storage is refused: the choice holds for this page.
  }
  const act = () => {
    const to = system();
    if (to === from) return;
    quoted();
    const was = from;
    from = to;
    changed(was, to);
  };
  select.addEventListener("change", () => {
    try {
      localStorage.setItem(KEY, system());
    } catch {
      // As above.
    }
    act();
  });
  act();
}
