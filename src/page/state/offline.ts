import { createSignal } from 'solid-js';
import type { Designs } from './designs.ts';
import type { Notices } from './notices.ts';

const [standing, setStanding] = createSignal(false);

/** Whether every file of the sheet is kept in this browser, so that it opens without a network. */
export const keptOffline = standing;

type Parts = { readonly designs: Pick<Designs, 'keepNow'>; readonly notices: Notices };

/**
 * Has the browser keep the sheet for times without a network, and says when a newer edition is ready. Nothing happens
 * where the browser cannot (a page not from https or this machine): the sheet works all the same.
 */
export async function keepOffline(parts: Parts, container = offeredContainer()): Promise<void> {
  if (container === undefined) return;
  let hadOne = container.controller !== null;
  let asked = false;
  const renew = (waiting: ServiceWorker | null) => {
    parts.designs.keepNow();
    asked = true;
    if (waiting) waiting.postMessage('take over');
    else location.reload();
  };
  container.addEventListener('controllerchange', () => {
    if (asked) location.reload();
    else if (hadOne) offer(parts.notices, () => renew(null));
    hadOne = true;
  });
  try {
    const registration = await container.register(new URL('offline.js', document.baseURI));
    const look = () => {
      if (registration.active) setStanding(true);
      if (registration.waiting && hadOne) offer(parts.notices, () => renew(registration.waiting));
    };
    const watch = () => registration.installing?.addEventListener('statechange', look);
    look();
    watch();
    registration.addEventListener('updatefound', watch);
  } catch {
    // The host gives no such script, or the browser refuses it: the sheet needs the network to open, as any page.
  }
}

function offeredContainer(): ServiceWorkerContainer | undefined {
  return 'serviceWorker' in navigator ? navigator.serviceWorker : undefined;
}

function offer(notices: Notices, run: () => void): void {
  notices.show({
    key: 'newer',
    title: 'A newer version of this sheet is ready.',
    lines: ['It comes with the next reload; what you entered stays.'],
    news: true,
    actions: [{ label: 'Reload now', run, stays: true }],
  });
}
