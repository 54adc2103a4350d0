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
  shareInWindow,
  transmitShareInWindow,
} from '../../../src/engine/hazard/exposureDistance.ts';
import {
  loopAxisDistance,
  loopEfficiency,
  loopRadiationResistance,
} from '../../../src/engine/hazard/exposureFields.ts';
import { exposureLimit, limitSets } from '../../../src/engine/hazard/exposureLimits.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { wireOn20 } from './exposureInput.ts';

const factorOf = (mode: string) => modes.modes.find((row) => row.mode === mode)?.factor ?? 0;
const input = wireOn20;
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
            limitSet: set,
            pep,
            gain,
            exposureModeFactor: modeFactor,
            exposureTransmitShare: transmitShare,
          };
          const start = of(base).distance * (1 - 1e-9);
          const overs = { ...base, exposureBy: 'overs', exposureOver: 100, exposurePause: 200 } as const;
          const paused = of(overs).distance * (1 - 1e-9);
          if (of({ ...overs, exposurePause: 150 }).distance < paused) return false;
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

  it('falls with line loss and with the loss of a short antenna or a loop', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...bandNames),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (band, loss, efficiency) => {
          for (const kind of ['halfWaveWire', 'smallLoaded', 'smallLoop'] as const) {
            const base = { kind, band, gain: -20, feedLineLoss: loss, efficiency } as const;
            const start = of(base).distance * (1 + 1e-9);
            expect(of({ ...base, feedLineLoss: loss + 1 }).distance).toBeLessThanOrEqual(start);
            expect(of({ ...base, efficiency: efficiency * 0.9 }).distance).toBeLessThanOrEqual(start);
            expect(of({ ...base, loopResistance: 0.2 }).distance).toBeLessThanOrEqual(start);
          }
        },
      ),
      { numRuns: 30 },
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

  it('says when people come nearer', () => {
    expect(exposureSentence(of({}), 1.5)).toMatch(/People come as near as 1.5 m: too near\.$/);
    expect(exposureSentence(of({}), 12)).toMatch(/as near as 12 m, as entered\.$/);
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

describe('overs and pauses', () => {
  const overs = (exposureOver: number, exposurePause: number) => ({
    ...input,
    exposureBy: 'overs' as const,
    exposureOver,
    exposurePause,
  });

  // OET Bulletin 65 Supplement B, pages 12 to 14: 7 min on, 7 off is 16 of 30 min and all of 6 min.
  it.each([
    ['fcc', 'general', 16 / 30],
    ['fcc', 'controlled', 1],
    ['icnirp2020', 'general', 16 / 30],
    ['eu1999', 'general', 1],
  ] as const)('7 min on, 7 min off under %s, %s: %f of the averaging time', (limitSet, tier, share) => {
    expectClose(of({ ...overs(420, 420), limitSet, tier }).transmitShare, share, 1e-9);
  });

  it('the busiest window by search is the one of the formula', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom(6, 30),
        (on, off, window) => {
          const state = (minute: number) => Number(minute % (on + off) < on);
          let most = 0;
          for (let start = 0; start < on + off; start++) {
            let sum = 0;
            for (let minute = 0; minute < window; minute++) sum += state(start + minute);
            most = Math.max(most, sum / window);
          }
          expectClose(shareInWindow(overs(on * 60, off * 60), window * 60), most, 1e-9);
        },
      ),
    );
  });

  it('a share entered is taken as it is', () => {
    expect(of({ exposureTransmitShare: 0.3 }).transmitShare).toBe(0.3);
  });
});

describe('small transmitting loop', () => {
  // Radius 0.5 m at 14.2 MHz; 0.1 Ω together are almost all radiation resistance.
  const frequency = 14.2e6;
  const loss = 0.1 - loopRadiationResistance(0.5, frequency);

  it('radiates 320 π⁴ (A/λ²)² of its resistance: 97 % here', () => {
    // Balanis: 20 π² (C/λ)⁴, the same law by the circumference.
    const circumference = (2 * Math.PI * 0.5 * frequency) / 299792458;
    expectClose(loopRadiationResistance(0.5, frequency), 20 * Math.PI ** 2 * circumference ** 4, 1e-9);
    expectClose(loopEfficiency(0.5, loss, frequency), 0.967, 2e-3);
    expect(loopEfficiency(0.5, 0, frequency)).toBe(1);
  });

  it('100 W: the field on the axis asks for 3.4 m, with its radiation for more; the far field alone for 1.9 m', () => {
    const limit = resultOf(exposureLimit('fcc', 'general', 14.35e6));
    const loop = of({ kind: 'smallLoop', loopRadius: 0.5, loopResistance: loss, gain: 1.76 });
    const axis = loopAxisDistance(100, 0.1, 0.5, 1.6, limit);
    expectClose(axis, 3.4, 0.01);
    expect(loop.distance).toBeGreaterThan(axis);
    expect(loop.distance).toBeLessThan(1.25 * axis);
    expectClose(of({ gain: 1.76 }).distance, 1.85, 0.02);
  });

  it('nowhere is less asked for than the exact field on the axis of a loop with even current', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...bandNames),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 1500, noNaN: true }),
        (band, radius, resistance, pep) => {
          const found = of({ kind: 'smallLoop', band, loopRadius: radius, loopResistance: resistance, pep });
          const total = loopRadiationResistance(radius, found.frequency) + resistance;
          const current = Math.sqrt(found.averagePower / total);
          const k = 1 / found.nearZone;
          const slant = Math.hypot(radius, found.distance);
          const exact = (current * radius ** 2 * Math.hypot(1, k * slant)) / (2 * slant ** 3);
          expect(1.6 * exact).toBeLessThanOrEqual(found.limit.magnetic * (1 + 1e-6));
        },
      ),
      { numRuns: 80 },
    );
  });

  it('says so where it is no longer small', () => {
    const large = exposureDistance({ ...input, kind: 'smallLoop', band: '6 m', loopRadius: 0.5 });
    expect(large.ok && large.notes.map((one) => one.key)).toContain('loopNotSmall');
    const small = exposureDistance({ ...input, kind: 'smallLoop', band: '20 m', loopRadius: 0.5 });
    expect(small.ok && small.notes.map((one) => one.key)).toEqual(['exposureSmallAntenna']);
  });
});

describe('ICNIRP 2020', () => {
  // The local levels (6 min) are five times the whole-body levels (30 min) in power: no window can make them stricter.
  it('the whole-body levels over 30 min cover the local ones over 6 min within 1 %', () => {
    for (const band of bandNames) {
      for (const kind of ['halfWaveWire', 'smallLoaded', 'smallLoop'] as const) {
        const whole = of({ kind, band, limitSet: 'icnirp2020', exposureTransmitShare: 0.2 });
        const local = of({
          kind,
          band,
          limitSet: 'icnirp2020Local',
          exposureTransmitShare: 1,
        });
        expect(local.distance).toBeLessThan(1.01 * whole.distance);
      }
    }
  });
});
