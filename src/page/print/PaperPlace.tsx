import { type Component, createSignal, onCleanup, onMount, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { neededForPrint, printJob, usualJob } from './job.ts';

const loadPaper = () => import('./Paper.tsx');
/** Long after the sheet stands, should the browser not say when it rests, ms. */
const restAtMost = 4000;

/**
 * Where the paper is made: only while the page is being printed, and at once, because a browser does not wait. What it
 * needs is fetched when the page rests. While it is there the root element carries the job, and paper takes nothing else.
 */
export function PaperPlace() {
  const [Paper, setPaper] = createSignal<Component>();
  const [printing, setPrinting] = createSignal(false);
  const root = document.documentElement;
  const load = () => loadPaper().then((loaded) => setPaper(() => loaded.Paper));

  function before(): void {
    if (!Paper()) return;
    root.setAttribute('data-print', printJob());
    setPrinting(true);
  }

  function after(): void {
    root.removeAttribute('data-print');
    setPrinting(false);
    usualJob();
  }

  onMount(() => {
    const soon = () => void load().catch(() => {});
    if (typeof requestIdleCallback === 'undefined') setTimeout(soon, restAtMost);
    else requestIdleCallback(soon, { timeout: restAtMost });
    globalThis.addEventListener('beforeprint', before);
    globalThis.addEventListener('afterprint', after);
  });
  onCleanup(neededForPrint(load));
  onCleanup(() => {
    globalThis.removeEventListener('beforeprint', before);
    globalThis.removeEventListener('afterprint', after);
    after();
  });

  return (
    <Show when={printing()}>
      <Dynamic component={Paper()} />
    </Show>
  );
}
