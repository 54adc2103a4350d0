import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ladderImpedance, ladderResistance } from '../../../src/engine/heat/deviceLadder.ts';
import { cauerOf, fosterOf } from '../../../src/engine/heat/fosterCauer.ts';
import cases from '../cases/transient.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { between } from './geometries.ts';

const cauer = cases.cauer.R.map((resistance, i) => ({ resistance, capacity: cases.cauer.C[i]! }));
const foster = cases.foster.r.map((resistance, i) => ({ resistance, timeConstant: cases.foster.tau[i]! }));

describe('physical ladder and curve-fit form', () => {
  it('agree for the reference ladder, both ways', () => {
    fosterOf(cauer).forEach((stage, i) => {
      expectClose(stage.resistance, foster[i]!.resistance, 1e-12);
      expectClose(stage.timeConstant, foster[i]!.timeConstant, 1e-12);
    });
    resultOf(cauerOf(foster)).forEach((stage, i) => {
      expectClose(stage.resistance, cauer[i]!.resistance, 1e-10);
      expectClose(stage.capacity, cauer[i]!.capacity, 1e-10);
    });
  });

  // One body: r = R, τ = R C. Two equal bodies R = C = 1: 1/τ = (3 ∓ √5)/2, the square of the golden ratio and its inverse.
  it('agree with hand calculation', () => {
    expect(fosterOf([{ resistance: 2, capacity: 3 }])).toEqual([{ resistance: 2, timeConstant: 6 }]);
    const two = fosterOf([
      { resistance: 1, capacity: 1 },
      { resistance: 1, capacity: 1 },
    ]);
    const golden = (1 + Math.sqrt(5)) / 2;
    expectClose(two[1]!.timeConstant, golden * golden, 1e-14);
    expectClose(two[0]!.timeConstant, 1 / (golden * golden), 1e-14);
    expectClose(ladderResistance(two), 2, 1e-14);
  });

  it('come back from a round trip over eight decades', () => {
    const stage = fc.record({ resistance: between(0.05, 5), capacity: between(0.3, 3) });
    fc.assert(
      fc.property(fc.array(stage, { minLength: 1, maxLength: 5 }), (bodies) => {
        const ladder = bodies.map((body, i) => ({ ...body, capacity: 1e-4 * body.capacity * 50 ** i }));
        const back = resultOf(cauerOf(fosterOf(ladder)));
        ladder.forEach((body, i) => {
          expectClose(back[i]!.resistance, body.resistance, 1e-6);
          expectClose(back[i]!.capacity, body.capacity, 1e-6);
        });
      }),
    );
  });

  it('keep the total resistance and the first capacity', () => {
    const stage = fc.record({ resistance: between(0.01, 10), timeConstant: between(1e-5, 1e4) });
    fc.assert(
      fc.property(fc.array(stage, { minLength: 1, maxLength: 6 }), (stages) => {
        const ladder = resultOf(cauerOf(stages));
        const total = ladder.reduce((sum, { resistance }) => sum + resistance, 0);
        expectClose(total, ladderResistance(stages), 1e-9);
        // At first all heat goes into the first body: Zth(t) → t/C1.
        const slope = stages.reduce(
          (sum, { resistance, timeConstant }) => sum + resistance / timeConstant,
          0,
        );
        expectClose(1 / ladder[0]!.capacity, slope, 1e-9);
        expect(ladderImpedance(stages, 1e9)).toBeGreaterThan(0);
      }),
    );
  });

  it('refuse what is no ladder', () => {
    for (const stages of [[], [{ resistance: 1, timeConstant: 0 }], [{ resistance: -1, timeConstant: 1 }]]) {
      expect(cauerOf(stages).ok).toBe(false);
    }
    const same = { resistance: 1, timeConstant: 2 };
    expect(resultOf(cauerOf([same, same]))).toEqual([{ resistance: 2, capacity: 1 }]);
  });
});
