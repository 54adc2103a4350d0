import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import modes from '../../../reference-data/exposureModes.json';
import { bandNames } from '../../../src/engine/hazard/amateurBands.ts';
import {
  type ExposureInput,
  exposureDistance,
  exposurePower,
  exposureSentence,
  roundUpDistance,
  transmitShareInWindow,
} from '../../../src/engine/hazard/exposureDistance.ts';
import { limitSets } from '../../../src/engine/hazard/exposureLimits.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const factorOf = (mode: string) => modes.modes.find((row) => row.mode === mode)?.factor ?? 0;
const input: ExposureInput = {
  kind: 'halfWaveWire',
  band: '20 m',
  gain: 2.15,
  feedLineLoss: 0,
  exposureModeFactor: 1,
  exposureTransmitShare: 1,
  tier: 'general',
  groundFactor: 'usual',
  pep: 100,
};
const of = (change: Partial<ExposureInput>) => resultOf(exposureDistance({ ...input, ...change }));

describe('average power (OET Bulletin 65 Supplement B, pages 12 to 14)', () => {
  it.each([
    ['1500 W SSB, 2 min on, 2 off, controlled', 1500, 'SSB voice, no processing', 2, 2, 6, 200, 1e-9],
    ['1500 W SSB, 2 min on, 2 off, general', 1500, 'SSB voice, no processing', 2, 2, 30, 160, 1e-9],
    ['1500 W SSB, 7 min on, 7 off, controlled', 1500, 'SSB voice, no processing', 7, 7, 6, 300, 1e-9],
    // The bulletin prints 159 W: it rounds 16/30 to 0.53.
    ['1500 W SSB, 7 min on, 7 off, general', 1500, 'SSB voice, no processing', 7, 7, 30, 159, 7e-3],
    ['500 W CW, 15 s in every 2 min, controlled', 500, 'CW', 0.25, 1.75, 6, 25, 1e-9],
    ['250 W FM, 5 min on, 5 off, controlled', 250, 'FM voice', 5, 5, 6, 208.3, 2e-4],
    ['250 W FM, 5 min on, 5 off, general', 250, 'FM voice', 5, 5, 30, 125, 1e-9],
  ] as const)('%s: %i W', (_, pep, mode, on, off, window, watts, tolerance) => {
    const share = transmitShareInWindow(on, off, window);
    expectClose(exposurePower(pep, factorOf(mode), share, 0), watts, tolerance);
  });

  it('the general case of 20 min in 30 gives the printed 200 W', () => {
    expectClose(exposurePower(1500, 0.2, 20 / 30, 0), 200, 1e-9);
  });

  it('the share lies between the long-run share and 1, and unbroken transmission is 1', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.constantFrom(6, 30),
        (on, off, window) => {
          const share = transmitShareInWindow(on, off, window);
          return share <= 1 && share >= on / (on + off) - 1e-9;
        },
      ),
    );
    expect(transmitShareInWindow(60, 60, 30)).toBe(1);
    expect(transmitShareInWindow(0, 5, 30)).toBe(0);
  });

  it('3 dB of line loss halve it', () => {
    expectClose(exposurePower(100, 1, 1, 3.0103), 50, 1e-6);
  });
});

describe('distance', () => {
  it('never falls with power, gain, mode factor or share, nor with a stricter ground', () => {
    const share = fc.double({ min: 0.05, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom('halfWaveWire', 'smallLoaded', 'smallLoop') as fc.Arbitrary<ExposureInput['kind']>,
        fc.constantFrom(...bandNames),
        fc.constantFrom(...limitSets),
        fc.double({ min: 0.1, max: 1500, noNaN: true }),
        fc.double({ min: -10, max: 15, noNaN: true }),
        share,
        share,
        (kind, band, set, pep, gain, modeFactor, transmitShare) => {
          const base = {
            kind,
            band,
            set,
            pep,
            gain,
            exposureModeFactor: modeFactor,
            exposureTransmitShare: transmitShare,
          };
          const start = of(base).distance * (1 - 1e-9);
          return [
            of({ ...base, pep: pep * 1.5 }),
            of({ ...base, gain: gain + 1 }),
            of({ ...base, exposureModeFactor: modeFactor * 1.1 }),
            of({ ...base, exposureTransmitShare: transmitShare * 1.1 }),
            of({ ...base, groundFactor: 'worst' }),
          ].every((other) => other.distance >= start);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('a short loaded antenna is given more room than a full-size wire', () => {
    expect(of({ kind: 'smallLoaded', band: '40 m' }).distance).toBeGreaterThan(
      4 * of({ band: '40 m' }).distance,
    );
  });

  it('is shown rounded up and never below 0.2 m', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 5000, noNaN: true }), (distance) => {
        const shown = roundUpDistance(distance);
        return shown >= distance * (1 - 1e-8) && shown >= 0.2 && shown <= Math.max(0.2, distance * 1.1 + 0.1);
      }),
    );
    expect([0.05, 1.93, 2, 3.01, 12.3, 101].map(roundUpDistance)).toEqual([0.2, 2, 2, 3.1, 13, 110]);
  });

  it('stands with its set, tier and averaging time in one line', () => {
    expect(exposureSentence(of({}))).toBe(
      'Estimate: at least 2 m from the antenna (FCC, 47 CFR 1.1310, general population, averaged over 30 min).',
    );
  });

  it('inside the near zone of a wire says from where to measure', () => {
    const near = exposureDistance({ ...input, band: '80 m' });
    expect(near.ok && near.notes.map((one) => one.key)).toEqual(['exposureFromWire']);
    const far = exposureDistance({ ...input, band: '6 m' });
    expect(far.ok && far.notes).toEqual([]);
  });

  it('is refused with the reason for any other antenna', () => {
    const found = exposureDistance({ ...input, kind: 'other' });
    expect(found.ok ? '' : found.reason.key).toBe('exposureNeedsSurvey');
  });

  it('is finite over the ranges of the design', () => {
    for (const band of bandNames) {
      for (const kind of ['halfWaveWire', 'smallLoaded', 'smallLoop'] as const) {
        for (const pep of [0.01, 3000]) {
          for (const gain of [-20, 20]) {
            const found = of({
              band,
              kind,
              pep,
              gain,
              feedLineLoss: 20,
              exposureTransmitShare: 0.01,
              exposureModeFactor: 0.05,
            });
            expect(Number.isFinite(found.distance) && found.distance > 0).toBe(true);
          }
        }
      }
    }
  });
});
