import { lazy } from 'solid-js';
import { render } from 'solid-js/web';
import type { Design } from '../../shared/design/schema.ts';
import type { EngineBeside } from '../worker/engineClient.ts';
import { createSolveHere, usualParts } from '../worker/solveHere.ts';
import { Sheet } from './Sheet.tsx';
import { keepOffline } from './state/offline.ts';
import { createPace, PaceProvider } from './state/pace.ts';
import { afterFrame } from './state/results.ts';
import type { SheetState } from './state/sheet.ts';
import { startSheet } from './state/start.ts';
import { browserStore, tabStore } from './state/storage.ts';

/** How long keeping the sheet for later may wait for a quiet moment, ms. */
const longestWait = 5000;

// The verdicts need no station to stand; the browser fetches these while it computes them.
const arriving = import('./Stations.tsx');
const Stations = lazy(() => arriving);

const pace = createPace();
const here = createSolveHere(usualParts);
// First of those who listen: what is printed must be there before anything is made of it.
addEventListener('beforeprint', pace.flush);

/** Puts the sheet on the page. */
export function begin(engine: EngineBeside): void {
  const root = document.getElementById('root');
  if (root === null) return;
  render(() => {
    const both = { ...engine, solve: (design: Design) => here.solve(design) ?? engine.solve(design) };
    const state = startSheet(both, browserStore(), { tab: tabStore(), painted: afterFrame });
    return (
      <PaceProvider value={pace}>
        <Sheet state={state} stations={Stations} onReady={() => ready(root, state)} />
      </PaceProvider>
    );
  }, root);
}

/** Keeping the sheet for times without a network waits until nothing else is to do. */
function ready(root: HTMLElement, state: SheetState): void {
  root.setAttribute('data-ready', 'true');
  here.warmUp(state.store.design);
  if (!import.meta.env.PROD) return;
  const keep = () => void keepOffline(state);
  if (typeof requestIdleCallback === 'function') requestIdleCallback(keep, { timeout: longestWait });
  else setTimeout(keep, longestWait);
}
