/**
 * Lets the sheet open without a network once it was visited: it keeps every file of the built page and answers from
 * them. A newer edition is fetched beside the old one and waits until the builder asks for it. The build puts the names
 * of the files in front of this script (`src/build/offline.ts`).
 */

/** Every file of the page, relative to this script. */
declare const offlineFiles: readonly string[];
/** A name for what these files hold: it changes when any of them does. */
declare const offlineEdition: string;

interface Waiting {
  waitUntil(work: Promise<unknown>): void;
}

interface Asked extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** The part of a service worker's surroundings that is used here; the page's types know none of it. */
interface Surroundings {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listen: (event: Waiting) => void): void;
  addEventListener(type: 'fetch', listen: (event: Asked) => void): void;
  addEventListener(type: 'message', listen: (event: { readonly data: unknown }) => void): void;
}

const here = self as unknown as Surroundings;
const { scope } = here.registration;
/** Two copies of the sheet under different paths of one host keep apart. */
const family = `heat-and-rail ${new URL(scope).pathname} `;
const ownCache = family + offlineEdition;
const front = new URL('index.html', scope).href;

/** Names with a hash never change their content, so an older edition's copy will do. */
const hashed = /\/assets\//;

async function keepAll(): Promise<void> {
  const cache = await caches.open(ownCache);
  await Promise.all(
    offlineFiles.map(async (file) => {
      const address = new URL(file, scope).href;
      const old = hashed.test(address) ? await caches.match(address) : undefined;
      await cache.put(address, old ?? (await fetched(address)));
    }),
  );
}

async function fetched(address: string): Promise<Response> {
  const answer = await fetch(address, { cache: hashed.test(address) ? 'default' : 'reload' });
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
  // Some hosts lead from index.html to the folder; a browser shows no page from an answer that was led on.
  return answer.redirected ? new Response(answer.body, { headers: answer.headers }) : answer;
}

/** One older edition stays, for a tab that still shows it. */
async function dropOld(): Promise<void> {
  const names = (await caches.keys()).filter((name) => name.startsWith(family) && name !== ownCache);
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)));
  await here.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const { origin, pathname } = new URL(request.url);
  const isFront = request.mode === 'navigate' && origin + pathname === scope;
  const address = isFront ? front : origin + pathname;
  const own = await (await caches.open(ownCache)).match(address);
  if (own) return own;
  // A tab of the edition before asks for a file of its own.
  return (hashed.test(address) ? await caches.match(address) : undefined) ?? fetch(request);
}

here.addEventListener('install', (event) => event.waitUntil(keepAll()));
here.addEventListener('activate', (event) => event.waitUntil(dropOld()));
here.addEventListener('message', ({ data }) => {
  if (data === 'take over') void here.skipWaiting();
});
here.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(scope)) event.respondWith(answer(event.request));
});
