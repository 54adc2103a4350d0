import { examples } from '../../shared/design/examples.ts';
import { map, remedies, sensitivity, solveFor } from '../../src/engine/answers.ts';
import { type Figure, timed } from './figures.ts';

/** The example that does not fit. */
const failing = 'data-final-100w';

const remediesTarget = 300;
const mapTarget = 3000;
/** A map of this many columns and rows. */
const mapSize = { columns: 60, rows: 40 } as const;
/** Wanted, so that an answer stands before the hand has left the key. */
const answerTarget = 500;

/** How long the answers take that the page asks for beside the figures. */
export function answerFigures(): Figure[] {
  const design = examples.find((example) => example.key === failing)?.design;
  if (!design) return [];
  const question = { path: 'sink.length', targets: [{ quantity: 'keyDown.safeDuty', value: 0.15 }] };
  return [
    {
      name: `full ranked list of remedies, ${failing}`,
      unit: 'ms',
      runs: timed(() => void remedies(design)),
      target: remediesTarget,
    },
    {
      name: `sink length for a safe duty, ${failing}`,
      unit: 'ms',
      runs: timed(() => void solveFor(design, question)),
      target: answerTarget,
    },
    {
      name: `what matters for key-down, ${failing}`,
      unit: 'ms',
      runs: timed(() => void sensitivity(design, 'keyDown.junctionPeak')),
      target: answerTarget,
    },
    {
      name: `map of power and ambient, ${mapSize.columns} x ${mapSize.rows}, ${failing}`,
      unit: 'ms',
      runs: timed(
        () =>
          void map(design, {
            x: { path: 'surroundings.ambient' },
            y: { path: 'amplifier.pep' },
            ...mapSize,
          }),
        5,
      ),
      target: mapTarget,
    },
  ];
}
