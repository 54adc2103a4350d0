import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanCosines, pointCosines, waveResistance } from '../../../src/engine/heat/plateSeries.ts';
import { integrate } from '../../../src/engine/numerics/gaussLegendre.ts';
import { expectClose } from '../closeTo.ts';
import { between } from './geometries.ts';

const plate = { width: 0.1, length: 0.1, thickness: 0.006, conductivity: 200, film: 60 };

describe('one wave on a plate', () => {
  it('is the plain wall when long and the half-space when short', () => {
    expectClose(waveResistance(plate, 1e-4), 0.006 / 200 + 1 / 60, 1e-6);
    expectClose(waveResistance(plate, 1e5), 1 / (200 * 1e5), 1e-9);
  });

  it('falls the shorter the wave', () => {
    fc.assert(
      fc.property(between(0.1, 1e5), (beta) => {
        expect(waveResistance(plate, 1.1 * beta)).toBeLessThan(waveResistance(plate, beta));
      }),
    );
  });
});

describe('cosines', () => {
  it('of a source are the mean over it', () => {
    const means = meanCosines(8, 0.1, 0.03, 0.02);
    for (let m = 0; m <= 8; m++) {
      const mean = integrate((x) => Math.cos((m * Math.PI * x) / 0.1), 0.02, 0.04) / 0.02;
      expect(Math.abs(means[m]! - mean)).toBeLessThan(1e-12);
    }
  });

  it('of a point start with 1', () => {
    expect([...pointCosines(2, 0.1, 0.1)]).toEqual([1, -1, 1]);
  });
});
