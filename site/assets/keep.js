/** Keeping an answer on this device: as a dated record of a machine. */
import { toJSON } from "./archive.js";
import { ask } from "./ask.js";
import { persist, save } from "./commit.js";
import { download } from "./download.js";
import { begin, called, day, same } from "./entry.js";
import { paintNews, withTicked, workedOn, workOn } from "./lasting.js";
import { paintOffers } from "./offers.js";
import { fill, lacks, recordOf } from "./slip.js";
import { today } from "./today.js";
import { readAll, watch } from "./store.js";

/** @typedef {import("./entry.js").Job} Job */

const byId = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));
const EXAMPLE = "These are the example's numbers: enter your own, then keep them.";

/** Starts when it is opened for the first time. @param {import("./worksheet.js").Worksheet} worksheet */
export async function start(worksheet) {
  let kept = /** @type {import("./store.js").Kept} */ ({ machines: new Map(), records: new Map(), broken: [] });
  let opened = /** @type {Job | undefined} */ (undefined); // the record that stands on the page: opened, or saved last
  let busy = false; // with the last thing that was asked for
  const select = byId("keep-machine");
  const say = (/** @type {string} */ text) => (byId("keep-said").textContent = text);
  const machine = () => kept.machines.get(select.value);

  const paint = () => {
    const { view } = document.documentElement.dataset;
    const fresh = worksheet.newest && worksheet.answer.dataset.state === "current" && view !== "example";
    for (const id of ["keep-save", "keep-file", "keep-replace"]) byId(id).disabled = !fresh;
    byId("keep-new").hidden = !!machine();
    byId("keep-use").hidden = !machine()?.values.length;
    byId("keep-replace").hidden = !opened;
    byId("keep-replace").textContent = `Replace the record of ${day(opened?.date ?? "")}`;
    byId("keep-save").textContent = opened ? "Save as a new record" : "Save";
    paintNews(fresh ? worksheet.newest.known : [], machine(), view === "link");
    if (view === "example") say(EXAMPLE);
    else if (byId("keep-said").textContent === EXAMPLE) say("");
  };

  const troubled = (/** @type {Error} */ error) => {
    byId("keep-trouble").textContent = error.message;
    byId("keep-trouble").hidden = byId("keep-file").hidden = false;
  };

  /** Reads what is kept now. @param {string} chosen the machine's id */
  const read = async (chosen) => {
    try {
      kept = await readAll();
    } catch (error) {
      troubled(/** @type {Error} */ (error));
    }
    const machines = [...kept.machines.values()].sort((a, b) => a.name.localeCompare(b.name));
    select.replaceChildren(new Option("a new one", ""), ...machines.map((m) => new Option(m.name, m.id)));
    select.value = kept.machines.has(chosen) ? chosen : "";
    opened = opened && kept.records.get(opened.id);
    paint();
  };

  /** What would be saved, or nothing if something is missing. @param {Job} [old] the record that it replaces */
  const gather = (old) => {
    const was = machine();
    const name = byId("keep-name").value.trim();
    const lack = was || name ? lacks("keep") : [byId("keep-name"), "Give the machine a name first."];
    if (lack) {
      lack[0].focus();
      return void say(lack[1]);
    }
    const owner = { ...(was ?? { ...begin(), name, notes: "" }), values: withTicked(was?.values ?? []) };
    return { owner, was, record: recordOf(worksheet, owner.id, "keep", old) };
  };

  /** @param {Job} [old] */
  const keep = async (old) => {
    const it = gather(old);
    if (!it) return;
    const { owner, was, record } = it;
    const twin = !was && [...kept.machines.values()].find((m) => m.name.toLowerCase() === owner.name.toLowerCase());
    const { choice } = !twin ? { choice: "new" } : await ask("There is one of that name", [`A machine called “${twin.name}” is kept already.`], { use: "Add to it", new: "Make another", "": "Cancel" });
    if (twin && choice === "use") {
      select.value = twin.id;
      paint();
      return say("Look at what would change with the machine, then save.");
    }
    if (!choice) return say("Not saved.");
    if (old && !(await ask("Replace the record?", [`What stands on this page now would replace ${called("records", old)}. What it said before is then gone.`], { yes: "Replace it", "": "Leave it as it is" })).choice) return say("Not replaced.");
    const first = !kept.machines.size && !kept.records.size;
    const changes = [{ kind: /** @type {import("./entry.js").Kind} */ ("records"), entry: record, base: old?.rev ?? 0 }];
    if (!was || !same("machines", was, owner)) changes.push({ kind: "machines", entry: owner, base: was?.rev ?? 0 });
    const done = await save(changes);
    if (!done) return say("Not saved.");
    byId("keep-trouble").hidden = byId("keep-file").hidden = true;
    const entry = changes.find((c) => c.kind === "records")?.entry ?? record; // a copy has another id
    history.replaceState({ ...history.state, record: entry.id }, ""); // so that a reload still knows it
    opened = entry;
    await read(entry.machine);
    byId("keep-link").hidden = false;
    byId("keep-link").hash = "m-" + entry.machine;
    say((done === "left" ? "Left as the other tab has it." : `Saved: the record of ${day(entry.date)} of “${machine()?.name}”.`) + (first ? await persist() : ""));
  };

  const acts = /** @type {Record<string, () => unknown>} */ ({
    "keep-save": () => keep(),
    "keep-replace": () => keep(opened),
    "keep-file": () => {
      const it = gather(opened);
      if (!it) return;
      download(new Blob([toJSON({ machines: [it.owner], records: [it.record] })], { type: "application/json" }), `plainlift-record-${it.record.date}.json`);
      say("The file is with your downloads. The page “Machines” takes it in again.");
    },
    "keep-offer": () => {
      const chosen = machine();
      if (!chosen) return;
      workOn(chosen);
      paintOffers(worksheet);
      say(`The numbers of “${chosen.name}” are offered above the fields, where one of them fits.`);
    },
  });
  const act = async (/** @type {Event} */ e, /** @type {string} */ id) => {
    e.preventDefault();
    if (busy || !acts[id]) return;
    busy = true;
    say("");
    try {
      await acts[id]();
    } catch (error) {
      troubled(/** @type {Error} */ (error));
      say("Not saved.");
    }
    busy = false;
  };
  byId("keep-form").addEventListener("submit", (/** @type {Event} */ e) => act(e, "keep-save"));
  byId("keep-form").addEventListener("click", (/** @type {any} */ e) => e.target.type === "button" && act(e, e.target.id));
  select.addEventListener("change", paint);
  worksheet.answer.addEventListener("answered", paint);
  watch(() => read(select.value));

  /** The record that the page was opened from, by its link or, after a reload, by the entry of the history. */
  const recognise = () => {
    const link = JSON.stringify(worksheet.opened);
    opened = [...kept.records.values()].find((r) => r.worksheet === worksheet.id && (r.id === history.state?.record || JSON.stringify(r.link) === link));
    if (opened) fill("keep", opened);
    if (opened) select.value = opened.machine;
    paint();
  };
  await read(workedOn());
  fill("keep", { date: today() });
  recognise();
  addEventListener("hashchange", recognise);
}
