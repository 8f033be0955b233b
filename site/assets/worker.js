// The calculator's thread. It loads the Go program, which then takes the page's
// messages itself; until it has posted {type: "ready"} nobody listens.
"use strict";

const MODULE = "plainlift.wasm";

let told = false; // the page knows that the bytes have arrived, or that it failed

/**
 * Tells the page once that the module's bytes have arrived, so that it can time
 * download and start apart.
 */
function loaded() {
  if (!told) postMessage({ type: "loaded" });
  told = true;
}

/** Calls loaded as soon as the browser notes the end of the download. */
function watchDownload() {
  try {
    new PerformanceObserver((list) => {
      if (list.getEntries().some((entry) => entry.name.endsWith(MODULE))) loaded();
    }).observe({ type: "resource", buffered: true });
  } catch {
    // Not every browser has it in a worker; start() tells the page a little later.
  }
}

/**
 * Compiles while the bytes arrive where the server names the right type, and
 * after they have arrived where it does not.
 * @param {WebAssembly.Imports} imports
 * @returns {Promise<WebAssembly.Instance>}
 */
async function instantiate(imports) {
  const response = await fetch(MODULE);
  if (!response.ok) throw new Error(`${MODULE}: ${response.status} ${response.statusText}`);
  const type = (response.headers.get("Content-Type") || "").split(";")[0].trim();
  if (WebAssembly.instantiateStreaming && type === "application/wasm") {
    return (await WebAssembly.instantiateStreaming(response, imports)).instance;
  }
  const bytes = await response.arrayBuffer();
  loaded();
  return (await WebAssembly.instantiate(bytes, imports)).instance;
}

/** Runs the Go program. It ends only when something is badly wrong. */
async function start() {
  watchDownload();
  importScripts("wasm_exec.js");
  const go = new Go();
  const instance = await instantiate(go.importObject);
  loaded();
  await go.run(instance);
  throw new Error("the calculator ended");
}

start().catch((error) => {
  told = true;
  postMessage({ type: "error", message: String(error && error.message ? error.message : error) });
});
