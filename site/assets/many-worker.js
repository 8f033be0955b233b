/** The worker that answers a table: one request after the other, each with its reply. */
import { calculator, thread } from "./module.js";

const START = 90_000; // ms until it is there, on a slow link
const HANG = 15_000; //  ms without a word while it is asked something

export class Rows {
  #worker = /** @type {Worker | null} */ (null);
  #ready = /** @type {Promise<unknown> | null} */ (null);
  #asked = /** @type {Map<number, {reply: (m: any) => void, fail: (e: Error) => void}>} */ (new Map());
  #seq = 0;
  #up = false; // the program listens
  #timer = 0;

  /** @param {(message: any) => void} onProgress */
  constructor(onProgress) {
    this.onProgress = onProgress;
  }

  /** Starts the worker, if none runs. */
  start() {
    return (this.#ready ??= new Promise((ready, fail) => {
      const worker = (this.#worker = thread(""));
      const late = setTimeout(() => this.#end("The calculator did not arrive; check the connection and try again."), START);
      this.#asked.set(0, { reply: ready, fail });
      calculator(new URL("plainlift.wasm", import.meta.url).href).then(
        (module) => worker.postMessage({ module }),
        () => this.#end("The calculator did not arrive; check the connection and try again."),
      );
      worker.onmessage = (e) => {
        clearTimeout(late);
        this.#hear(typeof e.data === "string" ? JSON.parse(e.data) : e.data);
      };
      worker.onerror = (e) => {
        e.preventDefault();
        this.#end();
      };
    }));
  }

  /** Asks and waits for the reply. @param {any} message @returns {Promise<any>} */
  async ask(message) {
    await this.start();
    const seq = ++this.#seq;
    return new Promise((reply, fail) => {
      this.#asked.set(seq, { reply, fail });
      this.#worker?.postMessage({ ...message, seq });
      this.#watch();
    });
  }

  /** Tells without a reply. @param {any} message */
  tell(message) {
    if (this.#up) this.#worker?.postMessage({ ...message, seq: ++this.#seq });
  }

  /** @param {any} message */
  #hear(message) {
    if (message.type === "error" || message.type === "failed") return this.#end();
    this.#watch();
    if (message.type === "many-progress") return this.onProgress(message);
    this.#up = true;
    const seq = message.type === "ready" ? 0 : message.seq;
    const one = this.#asked.get(seq);
    this.#asked.delete(seq);
    if (!this.#asked.size) clearTimeout(this.#timer);
    one?.reply(message);
  }

  /** What was asked is answered in time, or the worker hangs. */
  #watch() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#end(), HANG);
  }

  /** The worker is gone or useless; the next request starts another. */
  #end(why = "The calculator stopped. Your file is safe: take it again, or a smaller part of it.") {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = this.#ready = null;
    this.#up = false;
    const asked = [...this.#asked.values()];
    this.#asked.clear();
    for (const one of asked) one.fail(new Error(why));
  }
}
