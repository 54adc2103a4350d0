import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandEdges, bandNames } from '../../../src/engine/hazard/amateurBands.ts';
import {
  bestClock,
  clearance,
  type FrequencyRange,
  harmonicsInRanges,
  placedHarmonics,
  sectionAttenuation,
  trapezoidHarmonic,
} from '../../../src/engine/supply/switchingNoise.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';

const kilohertz = (name: string, from: number, to: number): FrequencyRange => ({
  name,
  from: from * 1e3,
  to: to * 1e3,
});

/** Region 1 with 160 m up to 2 MHz, as some national rules have it; without 6 m. */
const region1 = bandNames.flatMap((name) => {
  const edges = bandEdges(name, 'region1');
  if (!edges) return [];
  return [{ name, from: edges[0], to: name === '160 m' ? 2e6 : edges[1] }];
});
/** Middles of nine narrow segments that a builder may listen to, kHz. */
const listened = [1841.5, 3574.5, 7075.5, 10137.5, 14075.5, 18101.5, 21075.5, 24916.5, 28075.5];
const segments = listened.map((middle) => kilohertz(`${middle} kHz`, middle, middle));

describe('harmonics in the bands', () => {
  it('150 kHz: the listed ones (independent implementation)', () => {
    const found = harmonicsInRanges(150e3, 0, region1);
    expect(found).toHaveLength(cases.harmonics.count_150);
    const known = cases.harmonics.f150_R1.map(([harmonic]) => harmonic);
    expect(found.slice(0, known.length).map((one) => one.harmonic)).toEqual(known);
    expect(found[0]).toEqual({ harmonic: 13, frequency: 1.95e6, range: '160 m' });
  });

  it('500 kHz puts 9 there', () => {
    expect(harmonicsInRanges(500e3, 0, region1)).toHaveLength(cases.harmonics.count_500);
  });

  it('a range wider than the clock always holds a harmonic: none below 1.7 MHz clears 10 m', () => {
    const ten = region1.filter((range) => range.name === '10 m');
    fc.assert(
      fc.property(
        fc.double({ min: 3e4, max: 1.699e6, noNaN: true }),
        (frequency) => harmonicsInRanges(frequency, 0, ten).length > 0,
      ),
    );
  });

  it('a tolerance never removes one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5e4, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (frequency, tolerance) => {
          const exact = harmonicsInRanges(frequency, 0, region1).length;
          return harmonicsInRanges(frequency, tolerance, region1).length >= exact;
        },
      ),
    );
  });

  it.each([
    [0.05, 10],
    [0.01, 50],
    [50e-6, 10_000],
    [0, null],
  ])('a tolerance of %f places harmonics up to %s', (tolerance, highest) => {
    expect(placedHarmonics(tolerance)).toBe(highest);
  });
});

describe('choice of the clock', () => {
  it.each(
    cases.best_clock.map((row) => [row.f_lo, row.f_hi, row.tol, row.best_kHz, row.min_distance_kHz] as const),
  )(
    '%i to %i kHz, tolerance %f: %f kHz keeps %f kHz (independent implementation)',
    (from, to, tolerance, best, distance) => {
      const found = bestClock(from * 1e3, to * 1e3, tolerance, segments);
      expect(found.clearance).toBeGreaterThanOrEqual(distance * 1e3);
      expect(Math.abs(found.frequency - best * 1e3)).toBeLessThan(2);
      expectClose(clearance(found.frequency, tolerance, segments), found.clearance, 1e-12);
    },
  );

  it('no frequency tried by chance is better', () => {
    const found = bestClock(240e3, 320e3, 50e-6, segments);
    fc.assert(
      fc.property(fc.double({ min: 240e3, max: 320e3, noNaN: true }), (frequency) => {
        return clearance(frequency, 50e-6, segments) <= found.clearance + 10;
      }),
      { numRuns: 2000 },
    );
  });

  it('with 1 % of tolerance there is no choice', () => {
    expect(bestClock(140e3, 320e3, 0.01, segments).clearance).toBeLessThan(0);
  });
});

describe('level of a harmonic', () => {
  it.each(cases.trapezoid.map((row) => [row.n, row.fft] as const))(
    '32 V, duty 0.55, 20 ns, 150 kHz, harmonic %i: %f V (independent implementation, Fourier transform)',
    (harmonic, volts) => {
      expectClose(trapezoidHarmonic(32, 0.55, 20e-9, 150e3, harmonic), volts, 1e-7);
    },
  );

  it('is the Fourier coefficient of the sampled trapezoid', () => {
    const samples = 8192;
    const edge = 0.02;
    const duty = 0.3;
    for (const harmonic of [1, 2, 7]) {
      let re = 0;
      let im = 0;
      for (let sample = 0; sample < samples; sample++) {
        const t = (sample + 0.5) / samples - 0.5;
        const outer = duty / 2 + edge / 2;
        const level = Math.min(1, Math.max(0, (outer - Math.abs(t)) / edge));
        re += (2 / samples) * level * Math.cos(2 * Math.PI * harmonic * t);
        im += (2 / samples) * level * Math.sin(2 * Math.PI * harmonic * t);
      }
      expectClose(trapezoidHarmonic(1, duty, edge, 1, harmonic), Math.hypot(re, im), 1e-4);
    }
  });
});

describe('one LC section', () => {
  it.each(cases.lc_filter.map((row) => [row.f, row.att_dB, row] as const))(
    'at %f Hz: %f dB (independent implementation)',
    (frequency, decibels, row) => {
      expectClose(sectionAttenuation(frequency, row.L, row.C, row.esr), decibels, 1e-9);
    },
  );

  it('of ideal parts falls at 40 dB a decade, with series resistance at 20', () => {
    const ideal = sectionAttenuation(10e6, 1e-6, 22e-6, 0) - sectionAttenuation(1e6, 1e-6, 22e-6, 0);
    const real = sectionAttenuation(100e6, 1e-6, 22e-6, 0.03) - sectionAttenuation(10e6, 1e-6, 22e-6, 0.03);
    expect(Math.abs(ideal - 40)).toBeLessThan(0.1);
    expect(Math.abs(real - 20)).toBeLessThan(0.1);
  });
});
