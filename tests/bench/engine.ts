import { examples } from '../../shared/design/examples.ts';
import { services } from '../../shared/solution.ts';
import { solve, sweep } from '../../src/engine/index.ts';
import { type Figure, timed } from './figures.ts';

/** The page solves at every keystroke; with the sweep and the drawing it has two frames, 33 ms, on a slow machine. */
const solveTarget = 2;

/** A duty curve for each service: 303 steady states, each started from its neighbour. */
const sweepTarget = 30;

/** How long the engine takes for each example, warm, on this machine. */
export function engineFigures(): Figure[] {
  return examples.flatMap(({ key, design }) => [
    {
      name: `coupled solve, ${key}`,
      unit: 'ms' as const,
      runs: timed(() => void solve(design)),
      target: solveTarget,
    },
    {
      name: `duty sweep, 3 x 101 points, ${key}`,
      unit: 'ms' as const,
      runs: timed(() => {
        for (const service of services) sweep(design, service, 101);
      }),
      target: sweepTarget,
    },
  ]);
}
