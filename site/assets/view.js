/** What the page says of itself: how it stands, and what went wrong. */

/** Head and sentence of each trouble with the calculator. */
export const TROUBLE = {
  again: ["Not calculated", "The calculator stopped; what you typed is safe, and it is starting again."],
  stopped: ["Not calculated", "It stopped twice on these numbers; what you typed is safe. Change one, or reload."],
  load: ["Not calculated", "The calculator could not be loaded; what you typed is safe. Check the connection, then change a number or reload."],
};

/** The reader enters a number of their own; a slider moves a link's too. */
export function touched() {
  const { view: name } = document.documentElement.dataset;
  if (name === "example") view("typed");
  if (name === "link") /** @type {HTMLElement} */ (document.getElementById("kind")).textContent = "From a link, and changed here";
}

/** How the page stands: with the example, typed in, or opened from a link. @param {string} name @param {string} [wait] */
export function view(name, wait) {
  const root = document.documentElement;
  root.dataset.view = name;
  if (wait) root.dataset.wait = wait;
  /** @type {HTMLElement} */ (document.getElementById("kind")).textContent = name === "link" ? "From a link" : "Your numbers";
}

let pause = 0;

/** Says the answer aloud, once the reader rests. */
export function announce() {
  const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));
  clearTimeout(pause);
  pause = setTimeout(() => (byId("live").textContent = `${byId("head").textContent}. ${byId("sentence").textContent}`), 1000);
}
