import { examples } from '../../shared/design/examples.ts';
import type { Design } from '../../shared/design/schema.ts';
import { services } from '../../shared/solution.ts';
import { prepare } from '../../src/engine/couple/prepare.ts';
import { serviceLoad } from '../../src/engine/couple/serviceLoad.ts';
import { amplifierCurves, band, benchReportOf, solve, sweep } from '../../src/engine/index.ts';
import { warmUpRun } from '../engine/couple/benchRuns.ts';
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
  return [...solveFigures(), ...averageFigures(), ...doubtFigures()];
}

/**
 * The design after the edits a builder makes, one after the other: the engine keeps what an edit does not touch, so a
 * design solved again and again unchanged would tell too little.
 */
function edited(design: Design): readonly Design[] {
  const { amplifier, sink, surroundings, source, service } = design;
  return [
    design,
    { ...design, amplifier: { ...amplifier, pep: 0.98 * amplifier.pep } },
    { ...design, sink: { ...sink, length: 1.01 * sink.length } },
    { ...design, service: { ...service, transmitShare: 0.9 * service.transmitShare } },
    { ...design, surroundings: { ...surroundings, ambient: surroundings.ambient + 1 } },
    { ...design, source: { ...source, internalResistance: 1.1 * source.internalResistance } },
  ];
}

/** Solves the next of the edits at each call. */
function solveNext(design: Design): () => void {
  const designs = edited(design);
  let next = 0;
  return () => {
    solve(designs[next % designs.length]!);
    next += 1;
  };
}

function solveFigures(): Figure[] {
  return examples.flatMap(({ key, design }) => [
    {
      name: `coupled solve after an edit, ${key}`,
      unit: 'ms' as const,
      runs: timed(solveNext(design)),
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

/** The page draws about an eighth of that when typing rests. */
const bandSamples = 4000;
const bandTarget = 1500;
const bandRuns = 5;
/** The fit is made once for each sink and log and then kept. */
const benchTarget = 60;

function doubtFigures(): Figure[] {
  const [first] = examples;
  if (!first) return [];
  const run = warmUpRun(first.design, { film: 0.9, capacity: 1 });
  return [
    ...examples.map(({ key, design }) => ({
      name: `band of ${bandSamples} samples, ${key}`,
      unit: 'ms' as const,
      runs: timed(() => void band(design, { samples: bandSamples }), bandRuns),
      target: bandTarget,
    })),
    {
      name: `bench run of ${run.readings.length} readings fitted, ${first.key}`,
      unit: 'ms' as const,
      runs: timed(() => void benchReportOf({ ...first.design, bench: [run] })),
      target: benchTarget,
    },
  ];
}
