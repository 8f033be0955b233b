// Runs in every page before its own scripts: notes what the page does that a
// look at it afterwards would not show.
window.watched = { shifts: [], workers: [], asked: [], heard: [], opened: 0 };

new PerformanceObserver((list) => {
  for (const e of list.getEntries()) {
    if (e.hadRecentInput) continue;
    const nodes = e.sources.map((s) => (s.node && (s.node.id || s.node.className || s.node.nodeName)) + "");
    watched.shifts.push({ value: e.value, nodes });
  }
}).observe({ type: "layout-shift", buffered: true });

// Nothing is kept for later unless a test is about that.
if (navigator.serviceWorker) {
  const { register } = navigator.serviceWorker;
  navigator.serviceWorker.register = (...args) => (window.wantsCopy ? register.apply(navigator.serviceWorker, args) : new Promise(() => {}));
}

// Every worker is the browser's own, and what passes to and fro is noted.
window.Worker = class extends Worker {
  constructor(...args) {
    super(...args);
    watched.opened++;
    watched.workers.push(this);
    this.addEventListener("message", (e) => {
      const m = typeof e.data === "string" ? JSON.parse(e.data) : e.data;
      watched.heard.push({ type: m.type, seq: m.seq, check: m.check, at: performance.now() });
    });
  }

  postMessage(message) {
    watched.asked.push({ seq: message.seq, at: performance.now() });
    super.postMessage(message);
  }

  terminate() {
    watched.workers.splice(watched.workers.indexOf(this), 1);
    super.terminate();
  }
};
