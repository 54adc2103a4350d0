import './tokens.css';
import './sheet.css';
import './parts.css';
import './drawings.css';
import './print.css';
import { lazy } from 'solid-js';
import { render } from 'solid-js/web';
import { engineBeside } from '../worker/engineClient.ts';
import { Sheet } from './Sheet.tsx';
import { startSheet } from './state/start.ts';
import { browserStore, tabStore } from './state/storage.ts';

const engine = engineBeside();
// The verdicts need no station to stand; the browser fetches these while it computes them.
const arriving = import('./Stations.tsx');
const Stations = lazy(() => arriving);

const root = document.getElementById('root');

if (root) {
  render(() => {
    const state = startSheet(engine, browserStore(), { tab: tabStore() });
    return (
      <Sheet state={state} stations={Stations} onReady={() => root.setAttribute('data-ready', 'true')} />
    );
  }, root);
}
