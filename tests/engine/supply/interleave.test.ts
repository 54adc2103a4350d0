import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interleavedCapacitorRms, interleavedRippleShare } from '../../../src/engine/supply/interleave.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';

/** Ripple of N shifted triangles, by summing them at their corners. */
function summedRipple(phases: number, duty: number): number {
  const triangle = (time: number) => {
    const t = time - Math.floor(time);
    return t < duty ? t / duty : (1 - t) / (1 - duty);
  };
  const corners: number[] = [];
  for (let phase = 0; phase < phases; phase++) corners.push(phase / phases, phase / phases + duty);
  const sums = corners.map((time) => {
    let sum = 0;
    for (let phase = 0; phase < phases; phase++) sum += triangle(time - phase / phases + 1);
    return sum;
  });
  return Math.max(...sums) - Math.min(...sums);
}

/** r.m.s. of the capacitor current of N flat-topped pulses, by counting how many conduct. */
function countedRms(phases: number, duty: number, current: number): number {
  const each = current / (phases * (1 - duty));
  const steps = 200_000;
  let square = 0;
  for (let step = 0; step < steps; step++) {
    let conducting = 0;
    for (let phase = 0; phase < phases; phase++) {
      const t = ((step + 0.5) / steps + phase / phases) % 1;
      if (t >= duty) conducting += 1;
    }
    square += (conducting * each - current) ** 2;
  }
  return Math.sqrt(square / steps);
}

describe('interleaved phases', () => {
  it.each(cases.interleave.map((row) => [row.N, row.D, row.formula] as const))(
    '%i phases at duty %f: %f (independent implementation)',
    (phases, duty, share) => {
      expect(Math.abs(interleavedRippleShare(phases, duty) - share)).toBeLessThan(1e-9);
    },
  );

  it('is what superposition of the triangles gives', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (phases, duty) => {
          return Math.abs(interleavedRippleShare(phases, duty) - summedRipple(phases, duty)) < 1e-9;
        },
      ),
    );
  });

  it.each([
    [1, 0.6],
    [2, 0.6],
    [3, 0.45],
    [4, 0.7],
  ])('capacitor current of %i phases at duty %f, by counting', (phases, duty) => {
    expectClose(interleavedCapacitorRms(phases, duty, 5), countedRms(phases, duty, 5), 2e-3);
  });

  it('one phase has its whole ripple and whole multiples have none', () => {
    expectClose(interleavedRippleShare(1, 0.37), 1, 1e-12);
    expect(interleavedRippleShare(4, 0.25)).toBe(0);
    expect(interleavedCapacitorRms(2, 0.5, 5)).toBe(0);
    expect(interleavedRippleShare(2, 0)).toBe(0);
  });
});
