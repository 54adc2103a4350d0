import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkDesign } from '../../../../shared/design/file.ts';
import { applyEdits, map, remedies, sensitivity, solveFor } from '../../../../src/engine/answers.ts';
import { anyDesign } from '../designArbitrary.ts';

/** Every number anywhere in a result, with its path. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, child]) => numbersIn(child, `${path}.${key}`));
}

function allFinite(result: unknown): void {
  for (const [path, value] of numbersIn(result)) expect(Number.isFinite(value), path).toBe(true);
}

it('answers any design the schema accepts, without NaN, Infinity or a throw', { timeout: 240_000 }, () => {
  fc.assert(
    fc.property(anyDesign, (design) => {
      const list = remedies(design);
      allFinite(list);
      for (const remedy of list.remedies) {
        const checked = checkDesign(applyEdits(design, remedy.edits));
        expect(checked.ok, `${remedy.key}: a remedy leads to a design of the schema`).toBe(true);
      }
      allFinite(sensitivity(design, 'keyDown.junctionPeak'));
      allFinite(
        map(design, {
          x: { path: 'surroundings.ambient' },
          y: { path: 'amplifier.pep' },
          columns: 2,
          rows: 9,
        }),
      );
      for (const quantity of ['keyDown.safeDuty', 'pathDropShare']) {
        const answer = solveFor(design, { path: 'sink.length', targets: [{ quantity, value: 0.3 }] });
        allFinite(answer);
        if (!answer.ok) expect(answer.reason.sentence.length).toBeGreaterThan(20);
      }
    }),
    { numRuns: 12, seed: 11 },
  );
});
