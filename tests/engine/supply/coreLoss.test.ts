import { describe, expect, it } from 'vitest';
import { gaussLegendre } from '../../../src/engine/numerics/gaussLegendre.ts';
import {
  coreMaterial,
  fluxSwing,
  generalisedCoefficient,
  powderCoreLoss,
  sineCoreLoss,
  triangleCoreLoss,
} from '../../../src/engine/supply/coreLoss.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';

const n87 = coreMaterial('N87');

/** The defining integral, p = (1/T) ∫ ki |dB/dt|^α ΔB^(β−α) dt, for a sine of peak flux B. */
function integratedSine(frequency: number, peak: number): number {
  const rule = gaussLegendre(200);
  const half = Math.PI / 4;
  let sum = 0;
  for (let index = 0; index < rule.node.length; index++) {
    const angle = half * (1 + (rule.node[index] ?? 0));
    const rate = 2 * Math.PI * frequency * peak * Math.cos(angle);
    sum += (rule.weight[index] ?? 0) * rate ** n87.alpha;
  }
  return (n87.ki * (2 * peak) ** (n87.beta - n87.alpha) * sum) / 2;
}

describe('core loss by the generalised Steinmetz form', () => {
  it('of N87 at 100 kHz and 100 mT peak is 182 kW/m³, as its defining integral gives', () => {
    const found = sineCoreLoss(n87, 100e3, 0.1);
    expectClose(found, cases.core.N87_sine_100kHz_100mTpk_Wm3, 1e-9);
    expectClose(found, integratedSine(100e3, 0.1), 1e-6);
  });

  it.each(Object.entries(cases.core.tri_by_duty))(
    'of a triangle with duty %s (independent implementation)',
    (duty, loss) => {
      expectClose(triangleCoreLoss(n87, 100e3, 0.2, Number(duty), 1 - Number(duty)), loss, 1e-9);
    },
  );

  it('ki comes back from the Steinmetz coefficient of the sine', () => {
    expectClose(generalisedCoefficient(cases.core.k_SI, n87.alpha, n87.beta), n87.ki, 1e-9);
  });

  it('a triangle is least lossy at half duty and symmetric', () => {
    const at = (duty: number) => triangleCoreLoss(n87, 100e3, 0.2, duty, 1 - duty);
    expect(at(0.5)).toBeLessThan(at(0.4));
    expectClose(at(0.3), at(0.7), 1e-12);
    expect(triangleCoreLoss(n87, 100e3, 0, 0.5, 0.5)).toBe(0);
  });

  it('flux swing and powder form', () => {
    expectClose(fluxSwing(10e-6, 5, 5, 100e-6), 0.1, 1e-12);
    expectClose(powderCoreLoss({ a: 100, b: 2, c: 1.5 }, 100e3, 0.2), 1000 * 100 * 0.01 * 1000, 1e-12);
  });
});
