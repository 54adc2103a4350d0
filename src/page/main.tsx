import './tokens.css';
import './sheet.css';
import './parts.css';
import './drawings.css';
import './print.css';
import { render } from 'solid-js/web';
import { ratingCurve, solve, sweep, warmUp } from '../engine/index.ts';
import { Sheet } from './Sheet.tsx';
import { startSheet } from './state/start.ts';
import { browserStore } from './state/storage.ts';

const engine = { solve, sweep, warmUp, ratingCurve };
const root = document.getElementById('root');

if (root) {
  render(() => {
    const state = startSheet(engine, browserStore());
    return <Sheet state={state} onReady={() => root.setAttribute('data-ready', 'true')} />;
  }, root);
}
