/** Sliders under the picture: another way to enter the number of a field. */

/** @typedef {{min: number, max: number, step: number, value: number, unit: string, text: string}} State */

/** @param {(id: string, number: string, unit: string) => void} moved told at every movement */
export function watchSlides(moved) {
  byId("answer").addEventListener("input", (e) => {
    const slide = /** @type {HTMLInputElement} */ (e.target);
    if (slide.dataset.slide) moved(slide.dataset.slide, slide.value, slide.dataset.unit ?? "");
  });
}

/**
 * Shows how a field's slider stands. Where its ends are not known it stays as it
 * is: moving it may be the way out.
 * @param {string} id of the field @param {State | null} state
 */
export function paintSlide(id, state) {
  const slide = /** @type {HTMLInputElement | null} */ (document.getElementById("slide-" + id));
  if (!slide || !state) return;
  for (const key of /** @type {const} */ (["min", "max", "step"])) slide[key] = String(state[key]);
  slide.value = String(state.value);
  slide.dataset.unit = state.unit;
  slide.setAttribute("aria-valuetext", state.text);
  /** @type {HTMLElement} */ (slide.parentElement?.querySelector("output")).textContent = state.text;
}

/** A link's numbers could not be used: the example's are not theirs. */
export function paintNoSlide() {
  for (const output of document.querySelectorAll(".slide output")) output.textContent = "–";
  for (const slide of document.querySelectorAll("[data-slide]")) slide.setAttribute("aria-valuetext", "not known");
}

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));
