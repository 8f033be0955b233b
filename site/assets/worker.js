// The calculator's thread. The page sends it the compiled Go program, which then
// takes the page's messages itself; until it has posted {type: "ready"} nobody
// listens.
"use strict";

/** @param {unknown} error */
function failed(error) {
  postMessage({ type: "error", message: String((error instanceof Error && error.message) || error) });
}

/** Runs the Go program. It ends only when something is badly wrong. @param {WebAssembly.Module} module */
async function run(module) {
  const go = new Go();
  await go.run(await WebAssembly.instantiate(module, go.importObject));
  throw new Error("the calculator ended");
}

onmessage = (e) => run(e.data.module).catch(failed);
try {
  if (typeof Go === "undefined") importScripts("wasm_exec.js");
} catch (error) {
  failed(error);
}
