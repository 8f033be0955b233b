/**
 * Writes an answer into the elements that the page's template drew. Only text,
 * except the picture, which is parsed as SVG and never as HTML.
 */
import { paintNoSlide } from "./slide.js";

const byId = (/** @type {string} */ id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** Sets the text of every part of a node that names a key. @param {Element} node @param {any} item */
export function write(node, item) {
  const parts = node.matches("[data-t]") ? [node, ...node.querySelectorAll("[data-t]")] : node.querySelectorAll("[data-t]");
  for (const part of parts) {
    const text = item[/** @type {HTMLElement} */ (part).dataset.t ?? ""] ?? "";
    if (part.textContent !== text) part.textContent = text;
  }
}

/**
 * Makes a list show these items, using the nodes it has and copies of its
 * template for the rest.
 * @param {string} id @param {any[]} items @param {(node: HTMLElement, item: any) => void} [also]
 */
export function list(id, items, also) {
  const box = byId(id);
  const blank = /** @type {HTMLTemplateElement} */ (box.querySelector("template"));
  const nodes = /** @type {HTMLElement[]} */ ([...box.children].filter((n) => n !== blank));
  while (nodes.length > items.length) nodes.pop()?.remove();
  items.forEach((item, i) => {
    let node = nodes[i];
    if (!node) {
      node = /** @type {HTMLElement} */ (/** @type {Element} */ (blank.content.firstElementChild).cloneNode(true));
      blank.before(node);
    }
    write(node, item);
    also?.(node, item);
  });
}

const lines = (/** @type {string[]} */ texts) => texts.map((text) => ({ text }));

/** @param {any} figure */
function figure(figure) {
  const output = byId("fig-" + figure.id);
  if (!output) return;
  const data = /** @type {HTMLDataElement} */ (output.querySelector("data"));
  data.value = figure.value;
  if (data.textContent !== figure.text) data.textContent = figure.text;
  output.closest(".figure")?.classList.toggle("none", figure.value === "");
}

/** @param {string} svgs one picture after the other */
function pictures(svgs) {
  const parsed = new DOMParser().parseFromString(`<g xmlns="http://www.w3.org/2000/svg">${svgs}</g>`, "image/svg+xml");
  if (parsed.querySelector("parsererror")) return;
  byId("picture").replaceChildren(...[...parsed.documentElement.children].map((svg) => document.importNode(svg, true)));
}

/**
 * @param {any} answer without a problem
 * @param {(next: any) => string} href
 */
export function paint(answer, href) {
  byId("head").textContent = answer.verdict.head;
  byId("sentence").textContent = answer.verdict.sentence;
  answer.figures.forEach(figure);
  pictures(answer.picture);
  list("lines", lines(answer.lines));
  list("rests", lines(answer.rests));
  list("cautions", lines(answer.cautions));
  list("budget", answer.budget, (node, row) => node.style.setProperty("--share", row.share));
  list("working", answer.working);
  list("used", answer.used, (node, u) => node.classList.toggle("example", u.example));
  list("next", answer.next, (node, next) => node.querySelector("a")?.setAttribute("href", href(next)));
  byId("check").textContent = answer.check;
}

/** What an answer says although it may have problems. @param {any} answer @param {(id: string) => string} label */
export function paintRemarks(answer, label) {
  list("notices", lines(answer.notices));
  list("problems", answer.problems.map((/** @type {any} */ p) => ({ ...p, label: label(p.field) })), (node, p) => {
    const a = /** @type {HTMLAnchorElement} */ (node.querySelector("a"));
    a.href = "#" + p.field;
    a.dataset.to = p.field;
  });
  if (answer.problems.length) {
    if (answer.picture) pictures(answer.picture); // of what was entered
    byId("head").textContent = answer.verdict.head;
    byId("sentence").textContent = answer.verdict.sentence;
  }
}

/** A link's numbers could not be used: no figure may stand for them. */
export function paintNothing() {
  for (const output of document.querySelectorAll(".figure output data")) {
    /** @type {HTMLDataElement} */ (output).value = "";
    output.textContent = "–";
  }
  const verdict = /** @type {HTMLDataElement} */ (byId("fig-verdict").querySelector("data"));
  verdict.value = "";
  verdict.textContent = "";
  byId("picture").replaceChildren();
  paintNoSlide();
  byId("check").textContent = "";
  for (const id of ["lines", "rests", "budget", "working", "used", "cautions", "next"]) list(id, []);
}

/** @param {string} head @param {string} sentence */
export function say(head, sentence) {
  byId("head").textContent = head;
  byId("sentence").textContent = sentence;
}
