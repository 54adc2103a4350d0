import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classAEnd, stageCurrent } from '../../../src/engine/amplifier/linearStage.ts';
import { besselK0 } from '../../../src/engine/numerics/bessel.ts';
import { integrate } from '../../../src/engine/numerics/gaussLegendre.ts';
import { meanOver } from '../../../src/engine/signal/envelopeTable.ts';
import {
  limitingShare,
  meanSquareOfShape,
  speechEnvelope,
  speechShape,
} from '../../../src/engine/signal/speechEnvelope.ts';
import { referenceStage } from '../amplifier/referenceStage.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

// averageToPeak, shape c, mean amplitude, rail power and heat of the reference amplifier. Own computation: quadrature in
// two forms, checked by Monte Carlo with 6 million samples.
const table = [
  [0.03, 11.5454, 0.13605, 25.938, 22.638],
  [0.05, 8.93221, 0.1758, 31.857, 26.357],
  [0.08, 7.0238, 0.22317, 39.167, 30.367],
  [0.1, 6.24483, 0.25044, 43.446, 32.446],
  [0.15, 4.98807, 0.31048, 52.973, 36.473],
  [0.2, 4.19252, 0.3637, 61.493, 39.493],
  [0.25, 3.61651, 0.41288, 69.403, 41.903],
  [0.3, 3.16642, 0.45932, 76.895, 43.895],
  [0.4, 2.48288, 0.54667, 91.027, 47.027],
  [0.5, 1.96492, 0.629, 104.378, 49.378],
] as const;

const rail = 13.8;
const pep = 110;

function railPower(rho: number, activity = 1, breaks: readonly number[] = [classAEnd(referenceStage, pep)]) {
  const envelope = resultOf(speechEnvelope(rho, activity, breaks));
  return meanOver(envelope, (r) => rail * stageCurrent(referenceStage, r * r * pep));
}

describe('speech envelope', () => {
  it.each(table)(
    'has the tabulated shape and means at an average-to-peak ratio of %f',
    (rho, c, mean, dc, heat) => {
      const envelope = resultOf(speechEnvelope(rho));
      expectClose(envelope.shape ?? 0, c, 3e-6);
      expectClose(envelope.meanAmplitude, mean, 3e-5);
      expectClose(railPower(rho), dc, 2e-5);
      expectClose(railPower(rho) - rho * pep, heat, 2e-5);
    },
  );

  it.each(cases.groups.ssb)('agrees with an independent computation: $id', ({ inputs, expected }) => {
    const envelope = resultOf(speechEnvelope(inputs.rho, inputs.p));
    expectClose(envelope.shape ?? 0, expected.c, 1e-10);
    expectClose(inputs.p * limitingShare(expected.c), expected.clip_prob, 1e-5);
    expectClose(envelope.meanAmplitude, expected.mean_r, 1e-6);
    expectClose(railPower(inputs.rho, inputs.p), expected.Pdc, 1e-6);
    // The samples of the Monte Carlo check scatter by their standard error.
    expect(Math.abs(railPower(inputs.rho, inputs.p) - expected.MC_Pdc)).toBeLessThan(4 * expected.MC_se_Pdc);
  });

  it('is accurate to 1e-5 without a panel end at the kink as well', () => {
    for (const rho of [0.01, 0.03, 0.1, 0.2, 0.5, 0.9])
      expectClose(railPower(rho, 1, []), railPower(rho), 1e-5);
  });

  it('has mean amplitude (pi/4) sqrt(rho) without limiting and the closed form with it', () => {
    expectClose(resultOf(speechEnvelope(0.01)).meanAmplitude, (Math.PI / 4) * 0.1, 1e-5);
    const c = resultOf(speechShape(0.3));
    const integral = integrate((x) => 2 * x * besselK0(x * x), 0, Math.sqrt(c), 100);
    expectClose(resultOf(speechEnvelope(0.3)).meanAmplitude, (integral - c * besselK0(c)) / c, 1e-6);
  });

  it('keeps its laws over the whole range', () => {
    const ratio = fc.double({ min: 0.001, max: 0.98, noNaN: true });
    const activity = fc.double({ min: 0.5, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        ratio,
        activity,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 2 }),
        (share, p, breaks) => {
          const rho = share * p;
          const envelope = resultOf(speechEnvelope(rho, p, breaks));
          const total = envelope.weight.reduce((sum, w) => sum + w, 0);
          expect(Math.abs(total - 1)).toBeLessThan(1e-14);
          expect(Math.abs(envelope.averageToPeak - rho)).toBeLessThan(1e-6 * rho);
          expect(envelope.weight.every((w) => w > 0)).toBe(true);
          expect(envelope.amplitude.every((r) => r >= 0 && r <= 1)).toBe(true);
          expect(envelope.amplitude.length).toBeLessThanOrEqual(5 * 12 + 2);
          // Cauchy-Schwarz, and r >= r^2 in [0, 1].
          expect(envelope.meanAmplitude).toBeLessThanOrEqual(Math.sqrt(rho));
          expect(envelope.meanAmplitude).toBeGreaterThanOrEqual(rho);
        },
      ),
    );
  });

  it('makes a louder voice a smaller shape', () => {
    const shapes = table.map(([rho]) => resultOf(speechShape(rho)));
    for (let i = 1; i < shapes.length; i++) expect(shapes[i]!).toBeLessThan(shapes[i - 1]!);
  });

  // W. Wathen-Dunn and D. W. Lipke, JASA 30 (1958): clipping speech by 24 dB raises its power by about 12 dB. The peak
  // factor of the speech, 13 dB, is our choice; with 12 and 14 dB the gain is 11.0 and 12.7 dB.
  it.each([
    [12, 11],
    [13, 11.87],
    [14, 12.7],
  ])('gives the published power gain of clipping the sound, peak factor %i dB', (peakFactor, gain) => {
    // Sound is envelope times cosine; its power is half the mean square of the envelope, 2/c^2. Clipped at t it has the
    // power t^2 times the mean over the angle of the clipped law's mean square with the shape c t/cos.
    const rms = Math.SQRT2;
    const clip = (rms * 10 ** (peakFactor / 20)) / 10 ** (24 / 20);
    const clipped =
      (2 / Math.PI) * integrate((x) => meanSquareOfShape(clip / Math.cos(x)), 0, Math.PI / 2, 60);
    const unclipped = 10 ** (-peakFactor / 10);
    const found = 10 * Math.log10(clipped / unclipped);
    expectClose(found, gain, 5e-3);
    expectClose(found, 12, 0.09);
  });

  it('returns the same table for the same arguments', () => {
    expect(resultOf(speechEnvelope(0.21))).toBe(resultOf(speechEnvelope(0.21)));
  });

  it.each([
    [0.9, 0.8, 'average-to-peak too high'],
    [1, 1, 'average-to-peak too high'],
    [0, 1, 'average-to-peak too low'],
    [Number.NaN, 1, 'average-to-peak too low'],
    [0.2, 0, 'activity out of range'],
    [0.2, 1.2, 'activity out of range'],
  ])('gives a reason for a ratio of %f with an activity of %f', (rho, activity, key) => {
    const outcome = speechEnvelope(rho, activity);
    expect(outcome.ok ? '' : outcome.reason.key).toBe(key);
  });
});
