import fc from 'fast-check';
import type { FinGeometry } from '../../../src/engine/heat/finArray.ts';

/** A number between two bounds, even on a logarithmic scale. */
export const between = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);

/** Any fin array of the design's range whose fins fit, from all but closed to very wide gaps. */
export const finGeometries: fc.Arbitrary<FinGeometry> = fc
  .record({
    gap: between(1e-4, 0.1),
    length: between(0.01, 1),
    baseThickness: between(0.0005, 0.05),
    finCount: fc.integer({ min: 2, max: 60 }),
    finHeight: between(0.001, 0.2),
    finThickness: between(0.0002, 0.01),
    conductivity: between(90, 401),
    emissivity: between(0.02, 0.98),
    backExposed: fc.boolean(),
  })
  .map(({ gap, ...rest }) => ({
    ...rest,
    width: rest.finCount * rest.finThickness + (rest.finCount - 1) * gap,
  }));
