/** A question that must be answered before anything happens. */

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** @param {string} text @param {string} [name] of the element */
export function node(text, name = "p") {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}

/**
 * Asks, and waits. Closing the question without an answer is "".
 * @param {string} head @param {string[]} words paragraphs
 * @param {Record<string, string>} choices what each answer is called on its button
 * @param {string} [all] what a tick for all the rest is called, if there is one
 * @returns {Promise<{choice: string, all: boolean}>}
 */
export function ask(head, words, choices, all = "") {
  const box = /** @type {HTMLDialogElement} */ (byId("ask"));
  const tick = /** @type {HTMLInputElement} */ (byId("ask-all"));
  byId("ask-head").textContent = head;
  byId("ask-words").replaceChildren(...words.map((text) => node(text)));
  byId("ask-all-text").textContent = all;
  /** @type {HTMLElement} */ (tick.parentElement).hidden = !all;
  tick.checked = false;
  byId("ask-choices").replaceChildren(...Object.entries(choices).flatMap(([key, text]) => {
    const button = /** @type {HTMLButtonElement} */ (node(text, "button"));
    button.type = "button";
    button.value = key;
    button.addEventListener("click", () => box.close(key));
    return [button, " "];
  }));
  box.returnValue = "";
  box.showModal();
  return new Promise((answer) => box.addEventListener("close", () => answer({ choice: box.returnValue, all: tick.checked }), { once: true }));
}
