/** Editing the texts of a machine or a record. What is typed stands until it is saved or called off. */
import { save } from "./commit.js";
import { day } from "./entry.js";
import { list } from "./paint.js";
import { fill, lacks, read } from "./slip.js";

const byId = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));

let current = /** @type {{kind: import("./entry.js").Kind, entry: any} | null} */ (null);

/** @param {import("./entry.js").Kind} kind @param {any} entry @param {import("./store.js").Kept} kept */
export function edit(kind, entry, kept) {
  current = { kind, entry };
  const machine = kind === "machines";
  byId("edit-machine").hidden = !machine;
  byId("edit-record").hidden = machine;
  byId("edit-trouble").hidden = true;
  byId("edit-head").textContent = machine ? `Edit “${entry.name}”` : `Edit the record of ${day(entry.date)}`;
  if (machine) {
    byId("machine-name").value = entry.name;
    byId("machine-notes").value = entry.notes;
    list("machine-ticks", entry.values.map((/** @type {any} */ v) => ({ text: `${v.label}: ${v.shown}` })), (li) => (/** @type {HTMLInputElement} */ (li.querySelector("input")).checked = true));
    byId("machine-values").hidden = !entry.values.length;
  } else {
    const machines = [...kept.machines.values()].sort((a, b) => a.name.localeCompare(b.name));
    byId("record-machine").replaceChildren(...machines.map((m) => new Option(m.name, m.id)));
    byId("record-machine").value = entry.machine;
    fill("record", entry);
  }
  byId("edit").showModal();
}

/** The entry as it was edited, or the input that lacks something and what. */
function edited() {
  const { kind, entry } = /** @type {NonNullable<typeof current>} */ (current);
  if (kind === "machines") {
    const name = byId("machine-name").value.trim();
    const ticks = [...byId("machine-ticks").querySelectorAll("input")];
    return { lack: name ? null : [byId("machine-name"), "A machine needs a name."], entry: { ...entry, name, notes: byId("machine-notes").value.trim(), values: entry.values.filter((/** @type {any} */ _, /** @type {number} */ i) => ticks[i].checked) } };
  }
  return { lack: lacks("record"), entry: { ...entry, ...read("record"), machine: byId("record-machine").value || entry.machine } };
}

/** @param {(said: string) => unknown} done told what happened, in words */
export function watchEdit(done) {
  const box = /** @type {HTMLDialogElement} */ (byId("edit"));
  const wrong = (/** @type {string} */ text) => {
    byId("edit-trouble").textContent = text;
    byId("edit-trouble").hidden = false;
  };
  byId("edit-cancel").addEventListener("click", () => box.close());
  byId("edit-form").addEventListener("submit", async (/** @type {Event} */ e) => {
    e.preventDefault();
    if (!current) return;
    const { lack, entry } = edited();
    if (lack) {
      lack[0].focus();
      return wrong(lack[1]);
    }
    try {
      const said = await save([{ kind: current.kind, entry, base: current.entry.rev }]);
      if (!said) return wrong("Not saved; what you typed still stands here.");
      box.close();
      done(said === "left" ? "Left as the other tab has it." : `Saved: ${current.kind === "machines" ? `“${entry.name}”` : `the record of ${day(entry.date)}`}.`);
    } catch (error) {
      wrong(/** @type {Error} */ (error).message);
    }
  });
}
