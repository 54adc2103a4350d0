import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  currentRatios,
  driveForFundamental,
  driveForMean,
  fullSwingEfficiency,
  fundamentalCurrent,
  halfConductionAngle,
  meanCurrent,
} from '../../../src/engine/amplifier/conductionAngle.ts';
import { integrate } from '../../../src/engine/numerics/gaussLegendre.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

const degree = Math.PI / 180;
const current = fc.double({ min: 1e-3, max: 100, noNaN: true });

describe('conduction angle', () => {
  // R. Ludwig and P. Bretchko, RF Circuit Design (1999), figure 8-31: 50 % in class A, 78.5 % in class B.
  it.each([
    [360, 0.5],
    [180, 0.785],
  ])('has the published efficiency at %i degrees', (angle, efficiency) => {
    expectClose(fullSwingEfficiency(angle * degree), efficiency, 6e-4);
  });

  it.each(cases.groups.conduction_angle)('agrees with Fourier integrals: $id', ({ inputs, expected }) => {
    const ratio = currentRatios(inputs.theta_deg * degree);
    expectClose(ratio.mean, expected.I0_over_Ipk, 1e-9);
    expectClose(ratio.fundamental, expected.I1_over_Ipk, 1e-9);
    expectClose(fullSwingEfficiency(inputs.theta_deg * degree), expected.eta, 1e-9);
  });

  it('is the mean and the fundamental of the truncated cosine', () => {
    const quiescent = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(quiescent, fc.double({ min: 0.1, max: 30, noNaN: true }), (standing, drive) => {
        const end = halfConductionAngle(standing, drive);
        const wave = (x: number) => standing + drive * Math.cos(x);
        expect(Math.abs(meanCurrent(standing, drive) - integrate(wave, 0, end, 40) / Math.PI)).toBeLessThan(
          1e-12,
        );
        const fundamental = (2 / Math.PI) * integrate((x) => wave(x) * Math.cos(x), 0, end, 40);
        expect(Math.abs(fundamentalCurrent(standing, drive) - fundamental)).toBeLessThan(1e-12);
      }),
    );
  });

  it('finds the drive for any fundamental in classes A to C', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), current, (standing, fundamental) => {
        const drive = driveForFundamental(standing, fundamental);
        expectClose(fundamentalCurrent(standing, drive), fundamental, 1e-9);
      }),
    );
  });

  it('finds the drive for any mean current above the standing current', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), current, (standing, extra) => {
        const mean = Math.max(0, standing) + extra;
        expectClose(meanCurrent(standing, driveForMean(standing, mean)), mean, 1e-9);
      }),
    );
  });

  it('needs no drive for no output, and stops at the end of class A', () => {
    expect(driveForFundamental(1, 0)).toBe(0);
    expect(driveForFundamental(-2, 0)).toBe(2);
    expect(driveForMean(-2, 0)).toBe(2);
    expect(driveForMean(3, 2)).toBe(3);
  });

  it('grows more efficient as the angle shrinks', () => {
    const angle = fc.double({ min: 0.2, max: 2 * Math.PI - 0.01, noNaN: true });
    fc.assert(
      fc.property(angle, (theta) => {
        expect(fullSwingEfficiency(theta)).toBeGreaterThan(fullSwingEfficiency(theta + 0.01));
        expect(fullSwingEfficiency(theta)).toBeLessThan(1);
      }),
    );
  });
});
