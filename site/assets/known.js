/** What is known of the machine, by quantity, from earlier pages: kept for this visit only, in this tab. */

/** @typedef {{text: string, shown: string, id: string, title: string}} Known a value, and the worksheet it comes from */

const KEY = "plainlift.known"; // the head of the page reads it too, to keep the room

/** @returns {Record<string, Known>} by quantity */
export function recall() {
  try {
    const all = Object.entries(JSON.parse(sessionStorage.getItem(KEY) ?? "{}"));
    return Object.fromEntries(all.filter(([, k]) => [k?.text, k?.shown, k?.id, k?.title].every((s) => typeof s === "string")));
  } catch {
    return {}; // storage is refused, or holds something strange: nothing is offered
  }
}

/** @param {Record<string, Known>} known */
export function keep(known) {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(known));
  } catch {
    // As above.
  }
}
