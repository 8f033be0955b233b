// Keeps the whole site on the device, so that it answers where there is no
// signal. The build writes VERSION and FILES above these lines.
//
// A page comes from the network where there is one, so that a correction arrives
// at once; what it loads lies in a folder named after its contents, so a kept
// copy is the right one or none. A page that must come from the copy finds in
// the same copy all that it loads.

const OURS = "plainlift " + registration.scope;
const NAME = OURS + " " + VERSION;
const PATIENCE = 2500; // ms for the network, where there is hardly any

addEventListener("install", (e) => e.waitUntil(save()));
addEventListener("activate", (e) => e.waitUntil(forget().then(() => clients.claim())));
addEventListener("fetch", (e) => {
  const { request } = e;
  const url = new URL(request.url);
  if (request.method !== "GET" || !url.href.startsWith(registration.scope)) return;
  if (request.mode === "navigate") e.respondWith(page(request));
  else e.respondWith(part(request));
});

async function save() {
  const copy = await caches.open(NAME);
  await copy.addAll(FILES.map((file) => new Request(file, { cache: file.startsWith("assets/") ? "default" : "no-cache" })));
}

/** Deletes the copies of older builds. It runs when no page of theirs is open any more. */
async function forget() {
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS + " ") && name !== NAME) await caches.delete(name);
  }
}

async function kept(request) {
  const copy = await caches.open(NAME);
  return copy.match(request, { ignoreSearch: true });
}

async function part(request) {
  return (await kept(request)) ?? fetch(request);
}

async function page(request) {
  const late = new Promise((_, no) => setTimeout(no, PATIENCE));
  const coming = fetch(request);
  try {
    return await Promise.race([coming, late]);
  } catch {
    return (await kept(request)) ?? coming;
  }
}
