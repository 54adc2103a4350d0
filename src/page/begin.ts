import './tokens.css';
import './sheet.css';
import './parts.css';
import './drawings.css';
import './print.css';
import { engineBeside } from '../worker/engineClient.ts';

// The engine starts before the page's own script is even read: a browser lets a worker begin only while the page's
// thread is free, and reading and building the sheet keeps it busy for longer than the engine takes to arrive.
const engine = engineBeside();
void import('./main.tsx').then(({ begin }) => begin(engine));
