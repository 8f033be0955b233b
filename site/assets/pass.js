/** Passing an answer on: a link, words, a picture. Everything is made here; nothing is sent anywhere but where the reader sends it. */
import { download } from "./download.js";
import { copy, writeLink } from "./link.js";
import { drawn, photographed } from "./picture.js";
import { reply } from "./reply.js";

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));
const words = /** @type {HTMLTextAreaElement} */ (byId("words"));
const frame = /** @type {HTMLTextAreaElement} */ (byId("frame"));
const way = /** @type {HTMLSelectElement} */ (byId("way"));

/** Says how it went. @param {string} text */
const say = (text) => (byId("passed").textContent = text);

/** A frame for somebody's own page, with these numbers in it. @param {import("./worksheet.js").Worksheet} worksheet */
function framed(worksheet) {
  const src = new URL(frame.dataset.embed + (worksheet.link.length ? writeLink(worksheet.link) : ""), worksheet.page).href;
  const attribute = (/** @type {string} */ text) => text.replaceAll("&", "&amp;").replaceAll('"', "&quot;");
  return `<iframe src="${attribute(src)}" title="${attribute(document.querySelector("h1")?.textContent ?? "")}" width="100%" height="900" loading="lazy" allow="clipboard-write"></iframe>`;
}

/** Starts when it is opened for the first time. @param {import("./worksheet.js").Worksheet} worksheet */
export function start(worksheet) {
  const box = /** @type {HTMLDetailsElement} */ (byId("pass"));
  const svg = () => drawn({
    title: document.querySelector("h1")?.textContent ?? "",
    head: byId("head").textContent ?? "",
    sentence: byId("sentence").textContent ?? "",
    used: worksheet.newest.used.map((/** @type {any} */ u) => `${u.label} ${u.text}${u.example ? " (example)" : ""}`).join(" · "),
    from: `Plainlift · ${location.host}`,
  }, [.../** @type {NodeListOf<SVGElement>} */ (document.querySelectorAll("#picture svg"))].slice(-1));
  const name = `plainlift-${worksheet.id}`;
  const image = async () => new File([await photographed(svg())], name + ".png", { type: "image/png" });

  const show = () => {
    const answer = worksheet.newest;
    const fresh = answer && worksheet.answer.dataset.state === "current";
    for (const button of box.querySelectorAll("button")) button.disabled = !fresh;
    words.value = fresh ? reply(way.value, answer.verdict.head, answer.reply, worksheet.address()) : "";
    frame.value = fresh ? framed(worksheet) : "";
  };
  const opened = () => box.open && (worksheet.newest ? show() : worksheet.ask()); // the example has been asked of nobody
  box.addEventListener("toggle", opened);
  way.addEventListener("change", show);
  worksheet.answer.addEventListener("answered", () => box.open && show());

  const taken = async (/** @type {HTMLTextAreaElement} */ box, /** @type {string} */ what) => {
    if (await copy(box.value)) return say(`${what} copied.`);
    box.select();
    say(`The browser refused; ${what.replace("The", "the")} selected, copy from there.`);
  };
  const acts = /** @type {Record<string, () => unknown>} */ ({
    "copy-words": () => taken(words, "The words are"),
    "copy-frame": () => taken(frame, "The lines for your page are"),
    "save-png": async () => {
      download(await image(), name + ".png");
      say("The picture is saved with your downloads.");
    },
    "save-svg": () => {
      download(new Blob([svg()], { type: "image/svg+xml" }), name + ".svg");
      say("The drawing is saved with your downloads.");
    },
    "share": async () => {
      const data = { title: document.title, text: words.value };
      const files = [await image()];
      await navigator.share(navigator.canShare?.({ files }) ? { ...data, files } : data);
      say("Passed on.");
    },
  });
  byId("share").hidden = !navigator.share;
  box.addEventListener("click", async (e) => {
    const act = acts[/** @type {HTMLElement} */ (e.target).id];
    if (!act) return;
    say("");
    try {
      await act();
    } catch (error) {
      say(error instanceof Error && error.name === "AbortError" ? "Not passed on." : "That did not work in this browser; the words can still be copied.");
    }
  });
  opened();
}
