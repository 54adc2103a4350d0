import { describe, expect, it } from 'vitest';
import { phi1, phi2, phi3, phi4, phiValues } from '../../../src/engine/heat/exponentialPhi.ts';
import { integrate } from '../../../src/engine/numerics/gaussLegendre.ts';
import { expectClose } from '../closeTo.ts';

describe('functions of exponential integrators', () => {
  // φn(z) = ∫ e^((1-x) z) x^(n-1)/(n-1)! dx from 0 to 1.
  it.each([-30, -3, -0.5, -0.09, -0.049, -0.019, -1e-4, -1e-10, 0])('are their integrals at z = %d', (z) => {
    [phi1, phi2, phi3, phi4].forEach((phi, index) => {
      const factorial = [1, 1, 2, 6][index]!;
      const integral = integrate((x) => (Math.exp((1 - x) * z) * x ** index) / factorial, 0, 1, 40);
      expectClose(phi(z), integral, 1e-9);
    });
  });

  it.each([-30, -0.5, -0.1, -0.09, -0.05, -0.049, -0.02, -0.019, -1e-10, 0])(
    'are the same all at once at z = %d',
    (z) => {
      const values = { expm1: 0, second: 0, third: 0, fourth: 0 };
      phiValues(z, values);
      expect(values).toEqual({ expm1: Math.expm1(z), second: phi2(z), third: phi3(z), fourth: phi4(z) });
    },
  );
});
