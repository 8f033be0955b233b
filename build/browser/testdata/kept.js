// What the tests of what is kept ask of the database themselves, past the page's
// own scripts.
window.kept = {
  open: () => new Promise((yes, no) => {
    const request = indexedDB.open("plainlift");
    request.onupgradeneeded = () => request.transaction.abort(); // it is the page that makes it
    request.onsuccess = () => yes(request.result);
    request.onerror = () => no(request.error);
  }),
  async all() {
    let db;
    try {
      db = await kept.open();
    } catch {
      return { machines: [], records: [] };
    }
    const read = (kind) => new Promise((yes) => (db.transaction(kind).objectStore(kind).getAll().onsuccess = (e) => yes(e.target.result)));
    const found = { machines: await read("machines"), records: await read("records") };
    db.close();
    return found;
  },
  async put(kind, entry) {
    const db = await kept.open();
    await new Promise((yes) => {
      const tx = db.transaction(kind, "readwrite");
      tx.objectStore(kind).put(entry);
      tx.oncomplete = yes;
    });
    db.close();
    return true;
  },
  choose(text, name) {
    const files = new DataTransfer();
    files.items.add(new File([text], name));
    const input = document.getElementById("file");
    input.files = files.files;
    input.dispatchEvent(new Event("change", { bubbles: true }));
    return true;
  },
};
