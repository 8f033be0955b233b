/**
 * The compiled calculator. The page fetches it, once for all its workers, and
 * starts to as soon as its head is read: the worker's own script arrives
 * meanwhile, and a worker that takes over from one that stopped starts at once.
 */

let compiled = /** @type {Promise<WebAssembly.Module> | null} */ (null);

/** @param {string} url @returns {Promise<WebAssembly.Module>} */
export function calculator(url) {
  if (!compiled) {
    compiled = compile(/** @type {any} */ (window).coming ?? fetch(url));
    /** @type {any} */ (window).coming = null;
    compiled.catch(() => (compiled = null)); // the next worker tries again
  }
  return compiled;
}

/**
 * A thread for it. In a frame that is denied its own origin no file may start one,
 * but a text of the page's own may, and load the files.
 * @param {string} name the worksheet that it will be asked about, "" for any
 */
export function thread(name) {
  const [exec, worker] = ["wasm_exec.js", "worker.js"].map((name) => new URL(name, import.meta.url).href);
  if (origin !== "null") return new Worker(worker, { name });
  return new Worker(URL.createObjectURL(new Blob([`importScripts(${JSON.stringify(exec)}, ${JSON.stringify(worker)})`])), { name });
}

/** When the calculator has arrived, or never will. @returns {Promise<unknown>} */
export const arrived = () => Promise.resolve(compiled ?? /** @type {any} */ (window).coming).catch(() => {});

/**
 * Compiles while the bytes arrive where the server names the right type, and
 * after they have arrived where it does not.
 * @param {Promise<Response>} coming
 */
async function compile(coming) {
  const response = await coming;
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
  const type = (response.headers.get("Content-Type") || "").split(";")[0].trim();
  if (WebAssembly.compileStreaming && type === "application/wasm") return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}
