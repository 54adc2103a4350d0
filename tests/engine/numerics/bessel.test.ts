import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besselK0, besselK1, besselK2 } from '../../../src/engine/numerics/bessel.ts';
import { integrate } from '../../../src/engine/numerics/gaussLegendre.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

describe('modified Bessel functions K', () => {
  // Abramowitz and Stegun (1964), table 9.8 (from memory): K0(1) and K1(1).
  it('has the tabulated values at 1', () => {
    expectClose(besselK0(1), 0.42102443824, 1e-10);
    expectClose(besselK1(1), 0.60190723019, 1e-10);
  });

  it.each(cases.groups.math)(
    'agrees with an independent computation: $id',
    ({ inputs, expected, relativeTolerance }) => {
      expectClose(besselK0(inputs.z), expected.K0, relativeTolerance);
      expectClose(besselK1(inputs.z), expected.K1, relativeTolerance);
      expectClose(besselK2(inputs.z), expected.K2, relativeTolerance);
    },
  );

  it('follows the integral exp(-z cosh t) over its whole range', () => {
    const check = fc.double({ min: Math.log(1e-2), max: Math.log(300), noNaN: true });
    fc.assert(
      fc.property(check, (logarithm) => {
        const z = Math.exp(logarithm);
        const end = Math.acosh(1 + 45 / z);
        const scaled = (order: number) =>
          integrate((t) => Math.exp(-z * (Math.cosh(t) - 1)) * Math.cosh(order * t), 0, end, 60);
        expectClose(besselK0(z) * Math.exp(z), scaled(0), 1e-11);
        expectClose(besselK1(z) * Math.exp(z), scaled(1), 1e-11);
      }),
    );
  });

  it('is continuous where the method changes', () => {
    expectClose(besselK0(2 + 1e-12), besselK0(2), 1e-11);
    expectClose(besselK1(2 + 1e-12), besselK1(2), 1e-11);
  });

  it('never leaves the finite numbers for large arguments', () => {
    expect(besselK1(2000)).toBe(0);
  });
});
