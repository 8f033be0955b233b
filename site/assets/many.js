/** The page that answers a table: many machines at once. */
import { textOf } from "./many-file.js";
import { shared, understood } from "./many-plan.js";
import { Table } from "./many-table.js";
import { Rows } from "./many-worker.js";
import { keepOffline } from "./offline.js";
import { start } from "./start.js";
import { system } from "./units.js";

const byId = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));
const sheet = /** @type {HTMLSelectElement} */ (byId("worksheet"));
const page = () => new URL(sheet.selectedOptions[0].dataset.href ?? "", location.href).href;
const say = (/** @type {string} */ said) => (byId("said").textContent = said);
const number = (/** @type {number} */ n) => n.toLocaleString("en-US");

let taken = false; // a file
let run = 0; // the newest
let told = 0; // when progress was last said in words, ms

const rows = new Rows((m) => {
  byId("progress").value = m.done / m.total;
  if (performance.now() < told + 3000) return;
  told = performance.now();
  say(`${number(m.done)} of ${number(m.total)} rows are done.`);
});

/** What cannot be gone on with, in words. @param {string} text */
function wrong(text) {
  byId("wrong").textContent = text;
  byId("wrong").hidden = !text;
}

/** Does something that may fail, and says why. @param {() => Promise<unknown>} act */
async function attempt(act) {
  wrong("");
  try {
    await act();
  } catch (error) {
    say("");
    wrong(error instanceof Error ? error.message : String(error));
    working(false);
  }
}

const table = new Table(rows, page, say, attempt);

/** @param {boolean} on */
function working(on) {
  byId("stop").hidden = byId("progress").hidden = !on;
  byId("run").disabled = on || !byId("understood").dataset.fit;
  byId("many").setAttribute("aria-busy", String(on));
}

/** @param {() => Promise<{text: string, says?: string}>} get */
const take = (get) => attempt(async () => {
  byId("understood").hidden = byId("results").hidden = true;
  run++;
  rows.tell({ op: "many-stop" });
  say("Reading…");
  const { text, says } = await get();
  const m = await rows.ask({ op: "many-file", text, worksheet: sheet.value, system: system() });
  if (m.error) throw new Error(m.error);
  taken = true;
  sheet.value = m.worksheet;
  wrong(understood(m, says ? [says] : []));
  await (byId("understood").dataset.fit ? answer() : say(""));
});

/** Answers all rows. */
async function answer() {
  const mine = ++run;
  table.reset();
  byId("results").hidden = true;
  working(true);
  told = performance.now();
  say("Answering…");
  rows.tell({ op: "many-stop" });
  const m = await rows.ask({ op: "many-run", system: system(), link: [], fields: shared() });
  if (mine !== run) return; // a newer run
  working(false);
  if (m.error) throw new Error(m.error);
  byId("results").hidden = false;
  const bad = m.wrong ? ` ${number(m.wrong)} ${m.wrong === 1 ? "has" : "have"} an error.` : "";
  say(`${m.stopped ? "Stopped: " : ""}${number(m.done)} of ${number(m.total)} rows are done.${bad}`);
  byId("counts").textContent = m.counts.filter((/** @type {any} */ c) => c.count).map((/** @type {any} */ c) => `${c.verdict.replaceAll("-", " ")}: ${number(c.count)}`)
    .concat(m.wrong ? [`with an error: ${number(m.wrong)}`] : []).join(" · ");
  table.picture(m.picture, m.says);
  await table.draw();
}

const file = byId("file");
const drop = byId("drop");
const takeFile = (/** @type {File | undefined} */ f) => f && take(() => textOf(f));
file.addEventListener("change", () => takeFile(file.files[0]));
for (const kind of ["dragover", "dragleave", "drop"]) {
  addEventListener(kind, (e) => {
    e.preventDefault();
    drop.classList.toggle("over", kind === "dragover");
    if (kind !== "drop") return;
    const dropped = /** @type {DragEvent} */ (e).dataTransfer;
    if (dropped?.files.length) return takeFile(dropped.files[0]);
    const text = dropped?.getData("text") ?? "";
    if (text) take(async () => ({ text: (byId("text").value = text) }));
  });
}
byId("read").addEventListener("click", () => (byId("text").value || !taken ? take(async () => ({ text: byId("text").value })) : again()));
byId("text").addEventListener("paste", (/** @type {ClipboardEvent} */ e) => {
  const text = e.clipboardData?.getData("text") ?? "";
  if (text.length < 50_000) return; // more would take the box long to show
  e.preventDefault();
  take(async () => ({ text, says: "What you pasted is taken as it is; the box does not show so much." }));
});
byId("run").addEventListener("click", () => attempt(answer));
byId("stop").addEventListener("click", () => rows.tell({ op: "many-stop" }));
byId("missing").addEventListener("change", () => byId("understood").dataset.fit && attempt(answer));
for (const act of ["save", "example"]) {
  byId(act).addEventListener("click", () => attempt(async () => (await import("./many-save.js"))[act](rows, sheet.value, page(), say)));
}

/** Another worksheet or other units: the same file again. */
const again = () => taken && attempt(async () => {
  run++;
  rows.tell({ op: "many-stop" });
  byId("results").hidden = true;
  const m = await rows.ask({ op: "many-plan", worksheet: sheet.value, system: system() });
  if (m.error) throw new Error(m.error);
  wrong(understood(m));
  await (byId("understood").dataset.fit ? answer() : say(""));
});
sheet.addEventListener("change", again);
start(again);
rows.start().catch(() => {}); // said when it is needed
keepOffline();
