import { describe, expect, it } from 'vitest';
import { type ClosedCase, caseAirHeat, steadyCaseAir } from '../../../src/engine/heat/caseAir.ts';
import { ventHeat } from '../../../src/engine/heat/caseVents.ts';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import { expectClose } from '../closeTo.ts';

const box: ClosedCase = { width: 0.25, depth: 0.2, height: 0.1, emissivity: 0.85, bottomFree: false };
const vents = { area: 1e-3, height: 0.05 };

describe('vents of a case (a guess)', () => {
  it('carry off ρ cp q ΔT with the stack flow, by hand for 20 K and 10 cm²', () => {
    // ρ = 101325/(287.055 · 318.15) = 1.1095, cp about 1007; q = 0.6 · 1e-3 · √(9.80665 · 0.05 · 20/318.15) = 1.053e-4 m³/s.
    const flow = 0.6e-3 * Math.sqrt((9.80665 * 0.05 * 20) / 318.15);
    expectClose(ventHeat(vents, 318.15, 298.15, standardPressure), 1.1095 * 1007 * flow * 20, 2e-3);
  });

  it('grow as the rise to the power 1.5 at most, and do nothing in a case cooler than the room', () => {
    const heat = (rise: number) => ventHeat(vents, 298.15 + rise, 298.15, standardPressure);
    const exponent = Math.log2(heat(20) / heat(10));
    expect(exponent).toBeGreaterThan(1.4);
    expect(exponent).toBeLessThanOrEqual(1.5);
    expect(heat(-5)).toBe(0);
  });

  it('cool the inside air, more the larger they are, and none of no area change nothing', () => {
    const air = (area: number) =>
      steadyCaseAir({ ...box, vents: { ...vents, area } }, 25, 298.15, standardPressure).air;
    const closed = steadyCaseAir(box, 25, 298.15, standardPressure);
    expectClose(air(0), closed.air, 1e-9);
    expect(air(1e-3)).toBeLessThan(closed.air);
    expect(air(4e-3)).toBeLessThan(air(1e-3));
  });

  it('close the balance: walls and vents together shed what is released', () => {
    const vented = { ...box, vents };
    const { air } = steadyCaseAir(vented, 25, 298.15, standardPressure);
    expectClose(caseAirHeat(vented, air, 298.15, standardPressure), 25, 1e-6);
  });
});
