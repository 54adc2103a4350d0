import { examples } from '../../shared/design/examples.ts';
import { services } from '../../shared/solution.ts';
import { prepare } from '../../src/engine/couple/prepare.ts';
import { serviceLoad } from '../../src/engine/couple/serviceLoad.ts';
import { amplifierCurves, solve, sweep } from '../../src/engine/index.ts';
import { type Figure, timed } from './figures.ts';

/** The page solves at every keystroke; with the sweep and the drawing it has two frames, 33 ms, on a slow machine. */
const solveTarget = 2;

/** A duty curve for each service: 303 steady states, each started from its neighbour. */
const sweepTarget = 30;

/** Envelope averages of the three services at one junction temperature: speech, keying and carrier. */
const averagesTarget = 1;

/** Curves of the final for the page: over amplitude, mismatch and case temperature. */
const finalCurvesTarget = 10;

function averageFigures(): Figure[] {
  return examples.flatMap(({ key, design }) => {
    const { electrics } = prepare(design);
    if (!electrics.ok) return [];
    const { loads } = electrics.value;
    return [
      {
        name: `envelope averages, all services, ${key}`,
        unit: 'ms' as const,
        runs: timed(() => {
          for (const service of services) serviceLoad(loads, service, 350);
        }),
        target: averagesTarget,
      },
      {
        name: `curves of the final, ${key}`,
        unit: 'ms' as const,
        runs: timed(() => void amplifierCurves(design)),
        target: finalCurvesTarget,
      },
    ];
  });
}

/** How long the engine takes for each example, warm, on this machine. */
export function engineFigures(): Figure[] {
  return [...solveFigures(), ...averageFigures()];
}

function solveFigures(): Figure[] {
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
