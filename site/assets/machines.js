/** The page of what is kept on this device. */
import { ask } from "./ask.js";
import { download } from "./download.js";
import { edit, watchEdit } from "./edit.js";
import { called } from "./entry.js";
import { leave, workOn } from "./lasting.js";
import { keepOffline } from "./offline.js";
import { paintShelf } from "./shelf.js";
import { start } from "./start.js";
import { change, readAll, watch } from "./store.js";
import { giveAway, many, takeFile } from "./transfer.js";

/** @typedef {import("./store.js").Kept} Kept */
/** @typedef {[import("./entry.js").Kind, any][]} Some  entries with their kind */

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));
const say = (/** @type {string} */ text) => (byId("said").textContent = text);
let kept = /** @type {Kept} */ ({ machines: new Map(), records: new Map(), broken: [] });

async function repaint() {
  try {
    kept = await readAll();
    byId("trouble").hidden = true;
    paintShelf(kept);
  } catch (error) {
    troubled(error);
  }
  const some = kept.machines.size + kept.records.size > 0;
  for (const act of ["json", "csv"]) button(act).disabled = !some;
  button("everything").disabled = !some && !kept.broken.length;
  const promised = await navigator.storage?.persisted?.().catch(() => false);
  byId("promise").textContent = !some ? "" : promised ? "The browser has promised to keep all this until you delete it." : "The browser has not promised to keep this when the device is short of room. A copy is safe.";
  delete document.documentElement.dataset.wait;
}

const button = (/** @type {string} */ act) => /** @type {HTMLButtonElement} */ (document.querySelector(`.copies [data-act="${act}"]`));

/** @param {any} error */
function troubled(error) {
  byId("trouble").textContent = error.message;
  byId("trouble").hidden = false;
}

/**
 * Asks, and deletes in one transaction what was asked about. If another tab has
 * changed any of it meanwhile, it asks again.
 * @param {(kept: Kept) => Some} pick @param {(some: Some) => [string, string]} question head and words
 * @returns {Promise<boolean>}
 */
async function remove(pick, question) {
  const seen = (/** @type {Some} */ some) => JSON.stringify(some.map(([kind, { id, rev }]) => [kind, id, rev]));
  for (;;) {
    const some = pick(await readAll());
    const [head, words] = question(some);
    const { choice } = await ask(head, [words, "It can't be brought back, unless you have a copy."], { yes: "Delete", "": "Keep it" });
    if (!choice) {
      say("Nothing was deleted.");
      return false;
    }
    const done = await change((now) => {
      const these = pick(now);
      return seen(these) === seen(some) ? { gone: these.map(([kind, { id }]) => [kind, id]), result: true } : { result: false };
    });
    if (done) return true;
  }
}

/** @param {Kept} all @param {string} id @returns {Some} a machine and its records */
const withRecords = (all, id) => [
  ...[...all.machines.values()].filter((m) => m.id === id).map((m) => /** @type {Some[0]} */ (["machines", m])),
  ...[...all.records.values()].filter((r) => r.machine === id).map((r) => /** @type {Some[0]} */ (["records", r])),
];

/** @param {Kept} all @returns {Some} */
const everything = (all) => [
  ...[...all.machines.values()].map((m) => /** @type {Some[0]} */ (["machines", m])),
  ...[...all.records.values()].map((r) => /** @type {Some[0]} */ (["records", r])),
  ...all.broken.map((b) => /** @type {Some[0]} */ ([b.kind, { id: b.key }])),
];

const acts = /** @type {Record<string, (id: string) => unknown>} */ ({
  "work": (id) => {
    const machine = kept.machines.get(id);
    if (!machine) return;
    workOn(machine);
    say(`Every page in this tab now offers the numbers of “${machine.name}” above its fields, and fills none in by itself.`);
  },
  "edit-machine": (id) => edit("machines", kept.machines.get(id), kept),
  "edit-record": (id) => edit("records", kept.records.get(id), kept),
  "delete-machine": async (id) => {
    const name = kept.machines.get(id)?.name;
    const n = (/** @type {Some} */ some) => some.length - 1;
    if (!await remove((all) => withRecords(all, id), (some) => [`Delete “${name}”?`, n(some) ? `The machine goes with ${n(some) === 1 ? "its one record" : `all of its ${n(some)} records`}.` : "It has no records."])) return;
    leave(id);
    say(`Deleted: “${name}” and all that belonged to it.`);
  },
  "delete-record": async (id) => {
    const what = called("records", kept.records.get(id));
    if (await remove((all) => [...all.records.values()].filter((r) => r.id === id).map((r) => ["records", r]), () => ["Delete this record?", `It is ${what}. The machine and its other records stay.`])) say(`Deleted: ${what}.`);
  },
  "everything": async () => {
    if (!await remove(everything, (some) => ["Delete everything?", `That is ${many(some.filter(([k]) => k === "machines").length, "machine")} and ${many(some.filter(([k]) => k === "records").length, "record")}, all that this page keeps on this device.`])) return;
    leave("");
    say("Deleted: everything that was kept here.");
  },
  "json": () => say(giveAway(kept, "json")),
  "csv": () => say(giveAway(kept, "csv")),
  "download-broken": (i) => {
    const { kind, key, value } = kept.broken[Number(i)];
    download(new Blob([JSON.stringify({ kind, key, value }, (_, x) => (typeof x === "bigint" ? String(x) : x), 1)], { type: "application/json" }), "plainlift-damaged-entry.json");
    say("The damaged entry is with your downloads, as it is.");
  },
  "delete-broken": async (i) => {
    const { kind, key, why } = kept.broken[Number(i)];
    if (await remove((all) => all.broken.filter((b) => b.kind === kind && b.key === key).map((b) => [b.kind, { id: b.key }]), () => ["Delete the damaged entry?", `It ${why}.`])) say("Deleted: the damaged entry.");
  },
});

/** @param {() => unknown} act that may change what is kept */
async function attempt(act) {
  byId("machines").setAttribute("aria-busy", "true");
  say("");
  try {
    await act();
  } catch (error) {
    say(/** @type {Error} */ (error).message);
  }
  await repaint();
  byId("machines").setAttribute("aria-busy", "false");
}

document.addEventListener("click", (e) => {
  const { act = "", id = "" } = /** @type {HTMLElement} */ (e.target).dataset ?? {};
  if (acts[act]) attempt(() => acts[act](id));
});
const file = /** @type {HTMLInputElement} */ (byId("file"));
file.addEventListener("change", () => attempt(async () => {
  const chosen = file.files?.[0];
  file.value = ""; // the same file can be chosen again
  if (chosen) say(await takeFile(chosen));
}));
watchEdit((said) => attempt(() => say(said)));
watch(repaint);
start(() => {});
repaint().then(() => location.hash.startsWith("#m-") && document.getElementById(location.hash.slice(1))?.querySelector("h2")?.focus());
keepOffline();
