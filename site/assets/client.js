/**
 * Talks to the worker that calculates: starts it, gives it one question at a
 * time (always the newest), and replaces it when it stops or hangs.
 */
import { calculator, thread } from "./module.js";

const DOWNLOAD = 90_000; // ms for the module's bytes, on a slow link
const START = 30_000; //    ms from the bytes to ready
const HANG = 5_000; //      ms for one answer
const CHECK = 60_000; //    ms from the answer to the end of its simulation

/**
 * @typedef {{seq: number, op: string, worksheet: string, system: string, to?: string, link: [string, string][], fields: any[]}} Question
 * @typedef {"load" | "again" | "stopped"} Trouble  could not load; starting again; gave up on these numbers
 */
export class Client {
  #worker = /** @type {Worker | null} */ (null);
  #ready = false;
  #asked = /** @type {Question | null} */ (null); // sent, not yet answered
  #checking = /** @type {Question | null} */ (null); // answered, its simulation still runs
  #waiting = /** @type {Question | null} */ (null); // the newest, not yet sent
  #timer = 0;
  #deaths = 0;
  #deadly = ""; // the question it died on

  /**
   * @param {(message: any) => void} onMessage every answer
   * @param {(trouble: Trouble) => void} onTrouble
   * @param {string} [name] the worksheet that it will be asked about
   */
  constructor(onMessage, onTrouble, name = "") {
    Object.assign(this, { onMessage, onTrouble, name });
  }

  /** Starts the worker, so that it is ready when the first question comes. */
  start() {
    if (this.#worker) return;
    let worker;
    try {
      worker = this.#worker = thread(this.name);
    } catch {
      this.#fail("load");
      return;
    }
    this.#ready = false;
    this.#clock(DOWNLOAD, "load");
    calculator(new URL("plainlift.wasm", import.meta.url).href).then(
      (module) => {
        if (this.#worker !== worker) return;
        this.#clock(START, "load");
        worker.postMessage({ module });
      },
      () => this.#worker === worker && this.#fail("load"),
    );
    this.#worker.onmessage = (e) => this.#hear(typeof e.data === "string" ? JSON.parse(e.data) : e.data);
    this.#worker.onerror = (e) => {
      e.preventDefault();
      this.#fail(this.#ready ? "again" : "load");
    };
    this.#worker.onmessageerror = this.#worker.onerror;
  }

  /** @param {Question} question replaces any that has not been sent */
  ask(question) {
    this.#waiting = question;
    this.start();
    this.#send();
  }

  /** A request beside the questions; false if the worker is not there. @param {any} message */
  beside(message) {
    if (this.#ready) this.#worker?.postMessage(message);
    return this.#ready;
  }

  #send() {
    if (!this.#worker || !this.#ready || this.#asked || !this.#waiting) return;
    this.#asked = this.#waiting;
    this.#waiting = this.#checking = null;
    this.#worker.postMessage(this.#asked);
    this.#clock(HANG, "again");
  }

  /** @param {any} message */
  #hear(message) {
    switch (message.type) {
      case "ready":
        this.#ready = true;
        clearTimeout(this.#timer);
        break;
      case "code":
      case "post":
      case "table":
        this.onMessage(message);
        return;
      case "error":
        this.#fail(this.#ready ? "again" : "load");
        return;
      case "failed":
        this.#fail("again");
        return;
      default:
        this.#answered(message);
        this.onMessage(message);
    }
    this.#send();
  }

  /** @param {any} message */
  #answered(message) {
    const question = this.#asked ?? this.#checking;
    if (message.seq !== question?.seq) return;
    clearTimeout(this.#timer);
    this.#asked = null;
    this.#checking = message.check === "running" ? question : null;
    if (this.#checking) this.#clock(CHECK, "again");
    else this.#deaths = 0;
  }

  /** @param {number} ms @param {Trouble} trouble */
  #clock(ms, trouble) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#fail(trouble), ms);
  }

  /** The worker is gone or useless. @param {Trouble} trouble */
  #fail(trouble) {
    clearTimeout(this.#timer);
    if (this.#worker) this.#worker.terminate();
    this.#worker = null;
    this.#ready = false;
    const lost = this.#asked ?? this.#checking;
    this.#asked = this.#checking = null;
    if (trouble === "load") {
      this.onTrouble("load");
      return;
    }
    if (!lost && !this.#waiting) return; // nothing is lost; the next question starts another
    const same = JSON.stringify(lost && [lost.link, lost.fields]);
    this.#deaths = same === this.#deadly ? this.#deaths + 1 : 1;
    this.#deadly = same;
    this.#waiting ??= this.#deaths < 2 ? lost : null;
    if (!this.#waiting) {
      this.onTrouble("stopped");
      return;
    }
    this.onTrouble("again");
    this.start();
  }
}
