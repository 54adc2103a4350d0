import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { converterLossAt } from '../../../src/engine/supply/converterLoss.ts';
import { fitLossLaw } from '../../../src/engine/supply/lossLaw.ts';

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const currents = [0.05, 0.3, 1, 2, 4, 6, 8, 10];

describe('loss curve through computed points', () => {
  it('finds a curve of its own form back', () => {
    fc.assert(
      fc.property(double(0, 3), double(0, 0.5), double(0.001, 0.3), (fixed, proportional, square) => {
        const law = { fixed, proportional, square };
        const samples = currents.map((current) => ({ current, loss: converterLossAt(law, current) }));
        return fitLossLaw(samples).error < 1e-7 * (1 + samples.at(-1)!.loss);
      }),
    );
  });

  it('is exact at the last point, tells its miss, and keeps P0 and b from going negative, whatever the points', () => {
    fc.assert(
      fc.property(fc.array(double(0, 50), { minLength: 1, maxLength: 8 }), (losses) => {
        const samples = losses.map((loss, i) => ({ current: currents[i]!, loss }));
        const { loss, error } = fitLossLaw(samples);
        const last = samples.at(-1)!;
        const miss = Math.max(
          ...samples.map((one) => Math.abs(converterLossAt(loss, one.current) - one.loss)),
        );
        return (
          Math.abs(converterLossAt(loss, last.current) - last.loss) <= 1e-9 * (1 + last.loss) &&
          Math.abs(miss - error) <= 1e-9 * (1 + miss) &&
          loss.fixed >= 0 &&
          loss.square >= 0 &&
          Number.isFinite(loss.proportional)
        );
      }),
    );
  });

  it('stands one point and none at all', () => {
    expect(fitLossLaw([{ current: 2, loss: 3 }]).error).toBeLessThan(1e-12);
    expect(fitLossLaw([])).toEqual({ loss: { fixed: 0, proportional: 0, square: 0 }, error: 0 });
  });
});
