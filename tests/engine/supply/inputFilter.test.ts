import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dampingBranch,
  filterDamping,
  impedanceFits,
  isFilterStable,
  leastInputCapacitance,
  negativeResistance,
  pairInductance,
} from '../../../src/engine/supply/inputFilter.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';

describe('converter behind L, r and C', () => {
  it.each(cases.input_filter.map((row) => [row.C, row.stable, row] as const))(
    'with %f F stable: %s (independent implementation)',
    (_, stable, row) => {
      const parts = {
        inductance: row.L,
        resistance: row.r,
        capacitance: row.C,
        capacitorResistance: row.esr,
      };
      expectClose(-negativeResistance(row.V, row.P), row.Rneg, 1e-12);
      expectClose(leastInputCapacitance(row.L, row.r, row.V, row.P) ?? 0, row.Cmin_no_esr, 1e-9);
      expectClose(filterDamping(parts, row.V, row.P), row.ev_re, 0.02);
      expect(isFilterStable(parts, row.V, row.P)).toBe(stable);
    },
  );

  it('2.2 µH, 20 mΩ, 11.5 V, 170 W: 100 µF unstable, 300 µF stable, 100 µF with 100 mΩ stable', () => {
    const parts = { inductance: 2.2e-6, resistance: 0.02, capacitance: 100e-6, capacitorResistance: 0 };
    expect(isFilterStable(parts, 11.5, 170)).toBe(false);
    expect(isFilterStable({ ...parts, capacitance: 300e-6 }, 11.5, 170)).toBe(true);
    expect(isFilterStable({ ...parts, capacitorResistance: 0.1 }, 11.5, 170)).toBe(true);
  });

  it('the least capacitance is where the eigenvalues cross', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-7, max: 2e-5, noNaN: true }),
        fc.double({ min: 0.005, max: 0.2, noNaN: true }),
        fc.double({ min: 9, max: 15, noNaN: true }),
        fc.double({ min: 10, max: 300, noNaN: true }),
        (inductance, resistance, voltage, power) => {
          const least = leastInputCapacitance(inductance, resistance, voltage, power);
          if (least === null) return resistance >= (voltage * voltage) / power;
          const at = (capacitance: number) =>
            filterDamping({ inductance, resistance, capacitance, capacitorResistance: 0 }, voltage, power);
          return at(least * 1.001) < 0 && at(least * 0.999) > 0;
        },
      ),
    );
  });

  it('no capacitor helps a source of more resistance than the converter has', () => {
    expect(leastInputCapacitance(1e-6, 1, 10, 200)).toBeNull();
  });
});

describe('damping branch', () => {
  it.each(cases.filter_damping.map((row) => [row.n, row.Rd_over_R0, row.Zpk_numeric] as const))(
    'of %f times C: resistor %f R0, peak %f R0 (independent implementation, numeric)',
    (ratio, resistor, peak) => {
      const found = dampingBranch(1e-6, 1e-6, ratio);
      expectClose(found.resistance, resistor, 1e-9);
      expectClose(found.peakImpedance, peak, 1e-7);
      expectClose(found.capacitance, ratio * 1e-6, 1e-12);
    },
  );

  it('has the peak that a sweep of the network finds, and no other resistor has a lower one', () => {
    const peakWith = (resistance: number, ratio: number) => {
      let peak = 0;
      for (let step = 0; step <= 4000; step++) {
        const w = 10 ** (-1.5 + (3 * step) / 4000);
        // Admittance of L, C and the branch, with R0 = 1 and ω0 = 1.
        const branch = { re: resistance, im: -1 / (ratio * w) };
        const size = branch.re ** 2 + branch.im ** 2;
        peak = Math.max(peak, 1 / Math.hypot(branch.re / size, w - 1 / w - branch.im / size));
      }
      return peak;
    };
    for (const ratio of [1, 4]) {
      const found = dampingBranch(1, 1, ratio);
      expectClose(peakWith(found.resistance, ratio), found.peakImpedance, 1e-5);
      expect(peakWith(found.resistance * 1.1, ratio)).toBeGreaterThan(found.peakImpedance);
      expect(peakWith(found.resistance / 1.1, ratio)).toBeGreaterThan(found.peakImpedance);
    }
  });

  it('fits while it stays under 0.3 of the input resistance', () => {
    expect(impedanceFits(0.2, 11.5, 170)).toBe(true);
    expect(impedanceFits(0.25, 11.5, 170)).toBe(false);
  });
});

describe('inductance of the supply pair', () => {
  it('touching 2.5 mm² wires 0.56 µH/m, 10 mm apart 1.0 µH/m', () => {
    const {
      s_mm: spacing,
      d_mm: diameter,
      uH_per_m: value,
    } = cases.pair_inductance[0] ?? { s_mm: 0, d_mm: 1, uH_per_m: 0 };
    expectClose(pairInductance(spacing, diameter) * 1e6, value, 1e-9);
    expectClose(pairInductance(10, 2.06) * 1e6, 1.0, 0.02);
    expect(Number.isFinite(pairInductance(1, 2))).toBe(true);
  });
});
