// A worker that is the site's own until a question's fields hold "2,599". What
// happens then is filled in; a question that it names deadly is answered, but
// fails at the end of its simulation, or never reaches it.
let deadly = -1;
let silent = false;
const post = self.postMessage.bind(self);

addEventListener("message", (e) => {
  if (!JSON.stringify(e.data.fields ?? "").includes("2,599")) return;
  HOW;
});
self.postMessage = (said) => {
  const m = typeof said === "string" ? JSON.parse(said) : said;
  if (m.seq !== deadly || m.check !== "done") post(said);
  else if (!silent) post({ type: "failed", seq: m.seq, message: "index out of range" });
};
importScripts("worker.js?real");
