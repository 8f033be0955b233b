/** How the file is understood: what its columns are taken for, and what it leaves out. */
import { list } from "./paint.js";

const byId = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));

/** What is the same for every row. @returns {any[][]} */
export const shared = () => [...byId("missing-list").querySelectorAll(".once input, .once select")].map((i) => [i.name, i.value, "", "", true]);

/** Shows it. @param {any} m @param {string[]} more @returns {string} what must be put right first */
export function understood(m, more = []) {
  byId("understood").hidden = false;
  list("taken", [...more, ...m.taken].map((text) => ({ text })));
  byId("usual").hidden = !m.usual.length;
  byId("usual").textContent = `Not in your file, the usual value is taken: ${m.usual.join("; ")}. A column of that name goes before.`;
  const kept = new Map(shared().map(([id, text]) => [id, text]));
  list("missing-list", m.missing.map((/** @type {any} */ f) => ({ ...f, may: f.needed ? "" : "(may stay empty)" })), (node, f) => {
    const input = /** @type {any} */ (document.createElement(f.options.length ? "select" : "input"));
    if (f.options.length) for (const o of [{ id: "", label: "choose" }, ...f.options]) input.append(new Option(o.label, o.id));
    else input.placeholder = `example: ${f.example}`;
    input.id = "once-" + f.id;
    input.name = f.id;
    input.autocomplete = "off";
    input.value = kept.get(f.id) ?? "";
    node.querySelector("label")?.setAttribute("for", input.id);
    node.querySelector(".slot")?.replaceChildren(input);
  });
  byId("missing").hidden = !m.missing.length;
  byId("run").disabled = m.wrong.length > 0;
  byId("understood").dataset.fit = m.wrong.length ? "" : "yes";
  return m.wrong.join(" ");
}
