/** An answer in words, for a forum, a message or a mail. */

/** What each way of writing does with a text, a bold line and a link. */
const WAYS = {
  plain: { text: (/** @type {string} */ t) => t, bold: (/** @type {string} */ t) => t, link: (/** @type {string} */ t, /** @type {string} */ url) => `${t}: ${url}` },
  markdown: {
    text: (/** @type {string} */ t) => t.replace(/[\\`*_[\]<>~|]/g, "\\$&"),
    bold: (/** @type {string} */ t) => `**${t}**`,
    link: (/** @type {string} */ t, /** @type {string} */ url) => `[${t}](${url.replaceAll("(", "%28").replaceAll(")", "%29")})`,
  },
  bbcode: { text: (/** @type {string} */ t) => t, bold: (/** @type {string} */ t) => `[b]${t}[/b]`, link: (/** @type {string} */ t, /** @type {string} */ url) => `[url=${url.replaceAll("[", "%5B").replaceAll("]", "%5D")}]${t}[/url]` },
};

/** @param {string} way @param {string} head @param {string[]} paragraphs @param {string} url */
export function reply(way, head, paragraphs, url) {
  const { text, bold, link } = WAYS[/** @type {keyof WAYS} */ (way)];
  return [bold(text(head)), ...paragraphs.map(text), link("The numbers and the working", url)].join("\n\n");
}
