/**
 * Keeps the page on this computer, so that it opens without a network: all files that a version needs are fetched together and
 * kept. The page itself is asked for anew whenever it is opened, so that nobody works on with an old one who need not; every
 * script has a name that says what it holds, so that pages of two versions can be open side by side. Pages that Excel shows
 * are let through.
 *
 * Source: W3C, “Service Workers”.
 */

/** Written before this script by the build: names of files from the page’s own folder. */
declare const measureBookVersion: { readonly version: string; readonly files: readonly string[] };

interface Lasting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Asked extends Lasting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(): Promise<readonly { postMessage(message: unknown): void }[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(kind: "install" | "activate", listener: (event: Lasting) => void): void;
  addEventListener(kind: "fetch", listener: (event: Asked) => void): void;
}

const worker = self as unknown as Scope;
const cachesOfOurs = "measure-book ";
const cacheName = cachesOfOurs + measureBookVersion.version;
/** Longer than a page that is there takes to answer. */
const longestMs = 1500;
/** Such a file never changes: its name is made from what it holds. */
const lasting = /(^|[/.])[0-9a-f]{20}\.(js|wasm)$/;

worker.addEventListener("install", (event) => {
  event.waitUntil(keepAll().then(() => worker.skipWaiting()));
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(
    forgetOlder()
      .then(() => worker.clients.claim())
      .then(tellPages),
  );
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET") return;
  const name = nameOf(request);
  if (name === undefined) return;
  if (request.mode === "navigate") {
    if (name === "" || name === "index.html") event.respondWith(newestPage());
    return;
  }
  if (lasting.test(name) || measureBookVersion.files.includes(name)) event.respondWith(keptOr(request));
});

/** The file that is asked for, from the page’s folder; `undefined` for what is elsewhere. */
function nameOf({ url }: Request): string | undefined {
  const { scope } = worker.registration;
  return url.startsWith(scope) ? url.slice(scope.length).replace(/[?#].*$/, "") : undefined;
}

async function keepAll(): Promise<void> {
  const cache = await caches.open(cacheName);
  await Promise.all(
    measureBookVersion.files.map(async (name) => {
      const known = lasting.test(name) ? await caches.match(name) : undefined;
      const file = known ?? (await fetch(name, { cache: lasting.test(name) ? "default" : "no-cache" }));
      if (!file.ok) throw new Error(`${name} could not be fetched.`);
      await cache.put(name, file);
    }),
  );
}

/** The version before stays for pages that are still open with it. */
async function forgetOlder(): Promise<void> {
  const ours = (await caches.keys()).filter((name) => name.startsWith(cachesOfOurs) && name !== cacheName);
  await Promise.all(ours.slice(0, -1).map((name) => caches.delete(name)));
}

async function tellPages(): Promise<void> {
  for (const page of await worker.clients.matchAll()) page.postMessage({ files: measureBookVersion.files });
}

async function newestPage(): Promise<Response> {
  const page = "./";
  const kept = await (await caches.open(cacheName)).match(page);
  const asked = fetch(page, { cache: "no-cache" });
  if (!kept) return asked;
  const late = new Promise<undefined>((resolve) => setTimeout(resolve, longestMs));
  const fresh = await Promise.race([asked.catch(() => undefined), late]);
  return fresh?.ok ? fresh : kept;
}

async function keptOr(request: Request): Promise<Response> {
  return (await caches.match(request, { ignoreVary: true })) ?? fetch(request);
}
