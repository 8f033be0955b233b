/** An answer as one picture, made on the device: its words beside its plot. */

const WIDE = 1200;
const HIGH = 630;
const MARGIN = 40;
const COLUMN = 540; // of the words; the plot has the rest

const escape = (/** @type {string} */ t) => t.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);

/** @type {CanvasRenderingContext2D | null} */
let ruler = null;

/** Breaks a text into lines no wider than this. @param {string} text @param {string} font @param {number} width @param {number} most lines */
function wrap(text, font, width, most) {
  ruler ??= document.createElement("canvas").getContext("2d");
  if (!ruler) return [text];
  ruler.font = font;
  const lines = [""];
  for (const word of text.split(" ")) {
    const longer = lines.at(-1) ? `${lines.at(-1)} ${word}` : word;
    if (ruler.measureText(longer).width <= width || !lines.at(-1)) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.length <= most ? lines : [...lines.slice(0, most - 1), `${lines[most - 1]} …`];
}

/**
 * @param {{title: string, head: string, sentence: string, used: string, from: string}} words
 * @param {SVGElement[]} plots
 */
export function drawn(words, plots) {
  const parts = [];
  let y = MARGIN;
  const write = (/** @type {string} */ text, /** @type {number} */ size, /** @type {string} */ look, /** @type {number} */ width, /** @type {number} */ most) => {
    const weight = look.includes("bold") ? "bold " : "";
    for (const line of wrap(text, `${weight}${size}px system-ui, sans-serif`, width, most)) {
      y += size * 1.25;
      parts.push(`<text x="${MARGIN}" y="${y.toFixed(1)}" font-size="${size}" ${look}>${escape(line)}</text>`);
    }
  };
  write(words.title, 26, `fill="#55606a"`, COLUMN, 2);
  y += 8;
  write(words.head, 46, `font-weight="bold" fill="#9c3414"`, COLUMN, 2);
  y += 12;
  write(words.sentence, 26, "", COLUMN, 9);
  y = Math.max(y + 14, HIGH - 120);
  write(words.used, 19, `fill="#55606a"`, WIDE - 2 * MARGIN, 3);
  parts.push(`<text x="${WIDE - MARGIN}" y="${HIGH - 18}" font-size="20" text-anchor="end" fill="#55606a">${escape(words.from)}</text>`);

  const left = MARGIN + COLUMN + 30;
  const [room, top] = [WIDE - MARGIN - left, MARGIN];
  const sizes = plots.map((p) => /** @type {SVGSVGElement} */ (p).viewBox.baseVal);
  const high = sizes.reduce((sum, b) => sum + b.height + 12, -12);
  const scale = Math.min(room / Math.max(...sizes.map((b) => b.width), 1), (HIGH - 130 - top) / Math.max(high, 1));
  let at = top;
  plots.forEach((plot, i) => {
    const copy = /** @type {SVGElement} */ (plot.cloneNode(true));
    copy.setAttribute("x", String(left));
    copy.setAttribute("y", at.toFixed(1));
    copy.setAttribute("width", (sizes[i].width * scale).toFixed(1));
    copy.setAttribute("height", (sizes[i].height * scale).toFixed(1));
    parts.push(new XMLSerializer().serializeToString(copy));
    at += (sizes[i].height + 12) * scale;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDE}" height="${HIGH}" viewBox="0 0 ${WIDE} ${HIGH}" font-family="system-ui, sans-serif" fill="#1f2a33">
<title>${escape(words.title)}</title><desc>${escape(`${words.head}. ${words.sentence}`)}</desc>
<rect width="${WIDE}" height="${HIGH}" fill="#faf6ec"/>${parts.join("\n")}</svg>`;
}

/** The same as PNG. @param {string} svg @returns {Promise<Blob>} */
export async function photographed(svg) {
  const image = new Image(WIDE, HIGH);
  const url = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    image.src = url;
    await image.decode();
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [WIDE, HIGH];
    const pen = canvas.getContext("2d");
    if (!pen) throw new Error("no canvas");
    pen.drawImage(image, 0, 0, WIDE, HIGH);
    const blob = await new Promise((done) => canvas.toBlob(done, "image/png"));
    if (!blob) throw new Error("no picture");
    return /** @type {Blob} */ (blob);
  } finally {
    URL.revokeObjectURL(url);
  }
}
