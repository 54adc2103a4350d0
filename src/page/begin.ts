import './tokens.css';
import './sheet.css';
import './parts/fields.css';
import './parts/figures.css';
import './parts/verdicts.css';
import './parts/picker.css';
import './parts/tables.css';
import './parts/cautions.css';
import './parts/narrow.css';
import './drawings.css';
import './parts/plot/plot.css';
import './print.css';
import { engineBeside } from '../worker/engineClient.ts';

// The engine starts before the page's own script is even read: a browser lets a worker begin only while the page's
// thread is free, and reading and building the sheet keeps it busy for longer than the engine takes to arrive.
const engine = engineBeside();
void import('./main.tsx').then(({ begin }) => begin(engine));
