import { describe, expect, it } from 'vitest';
import { type BoostLossParts, boostLosses, efficiencySweep } from '../../../src/engine/supply/boostLosses.ts';
import { constantPowerPoint, greatestPower } from '../../../src/engine/supply/constantPower.ts';
import { coreMaterial } from '../../../src/engine/supply/coreLoss.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

/** Parts that give the named terms of the reference budget; what is left of it, 0.34 W, stands as fixed power. */
const parts: BoostLossParts = {
  inductance: 10e-6,
  inductorResistance: 0.006,
  inductorAcResistance: 0.06,
  switchResistance: 0.005,
  rectifierDrop: 0.45,
  rectifierResistance: 0.015,
  synchronous: false,
  capacitance: 330e-6,
  capacitorResistance: 0.015,
  frequency: 150e3,
  turnOnTime: 20e-9,
  turnOffTime: 20e-9,
  switchCapacitance: 0,
  gateCharge: 0,
  gateVoltage: 0,
  recoveryCharge: 0,
  deadTimeOn: 0,
  deadTimeOff: 0,
  bodyDrop: 0,
  inputCapacitorResistance: 0.003,
  fixedPower: 0.34,
  core: null,
};

describe('loss budget, 12.5 to 32 V at 5.5 A and 150 kHz', () => {
  const found = resultOf(boostLosses(parts, 12.5, 32, 5.5));

  it.each([
    ['rectifier', 3.69],
    ['switchOverlap', 1.42],
    ['inductorCopper', 1.41],
    ['capacitors', 0.77],
    ['switchConduction', 0.67],
  ] as const)('%s: %f W (independent implementation)', (term, watts) => {
    expect(Math.abs(found.terms[term] - watts)).toBeLessThan(0.006);
  });

  it('sums to 8.30 W and an efficiency of 0.955', () => {
    expect(Math.abs(found.total - 8.3)).toBeLessThan(0.01);
    expectClose(found.efficiency, 0.955, 1e-3);
  });

  it('closes energy', () => {
    expectClose(12.5 * found.inputCurrent, 32 * 5.5 + found.total, 1e-12);
  });
});

describe('sweep of the efficiency', () => {
  const rows = efficiencySweep(parts, 32, [10.5, 11.5, 12.5, 13.8], [0.5, 2, 5.5]);

  it.each(cases.eta_sweep.map((row) => [row.Vg, row.Io, row.eta, row.Iin] as const))(
    '%f V, %f A: %f within half a point (independent implementation; its small terms are lumped here)',
    (voltage, current, efficiency, input) => {
      const row = rows.find((one) => one.inputVoltage === voltage && one.outputCurrent === current);
      const tolerance = current === 0.5 ? 0.02 : 0.003;
      expect(Math.abs((row?.efficiency ?? 0) - efficiency)).toBeLessThan(tolerance);
      expectClose(row?.inputCurrent ?? 0, input, tolerance * 1.1);
    },
  );

  it('is better at a higher input, and best between light and full load', () => {
    const at = (voltage: number, current: number) =>
      rows.find((one) => one.inputVoltage === voltage && one.outputCurrent === current)?.efficiency ?? 0;
    for (const current of [2, 5.5]) expect(at(13.8, current)).toBeGreaterThan(at(10.5, current));
    for (const voltage of [10.5, 13.8]) {
      expect(at(voltage, 2)).toBeGreaterThan(at(voltage, 5.5));
      expect(at(voltage, 2)).toBeGreaterThan(at(voltage, 0.5));
    }
  });

  it('names nothing where the ratio is not reachable', () => {
    expect(efficiencySweep(parts, 100, [10], [60])[0]).toMatchObject({
      efficiency: null,
      inputCurrent: null,
    });
  });
});

describe('single terms', () => {
  const of = (change: Partial<BoostLossParts>) =>
    resultOf(boostLosses({ ...parts, ...change }, 12.5, 32, 5.5));

  it.each([
    ['switchCapacitance', { switchCapacitance: 500e-12 }, 0.5 * 500e-12 * 32 ** 2 * 150e3],
    ['gate', { gateCharge: 60e-9, gateVoltage: 10 }, 60e-9 * 10 * 150e3],
    ['recovery', { recoveryCharge: 100e-9 }, 100e-9 * 32 * 150e3],
    ['deadTime', { bodyDrop: 0.8, deadTimeOn: 30e-9, deadTimeOff: 30e-9 }, 0.8 * 2 * 14.5895 * 30e-9 * 150e3],
  ] as const)('%s with %j: %f W', (term, change, watts) => {
    expectClose(of(change).terms[term], watts, 1e-4);
  });

  it('the core term is the density times the volume', () => {
    const core = { coefficients: coreMaterial('N87'), turns: 8, area: 100e-6, volume: 8e-6 };
    const found = of({ core });
    expect(found.terms.core).toBeGreaterThan(0.05);
    expectClose(of({ core: { ...core, volume: 16e-6 } }).terms.core, 2 * found.terms.core, 1e-12);
  });
});

describe('from the battery to the rail', () => {
  // 12.8 V behind 42.95 mΩ in all, 32 V at 5.5 A through these parts (independent implementation).
  it('settles at 12.15 V and 15.2 A with 17.6 A at the peak of the inductor', () => {
    let voltage = 12.8;
    for (let round = 0; round < 8; round++) {
      const taken = 32 * 5.5 + resultOf(boostLosses(parts, voltage, 32, 5.5)).total;
      voltage = resultOf(
        constantPowerPoint({ openVoltage: 12.8, seriesDrop: 0, resistance: 0.04295 }, [taken]),
      ).voltage;
    }
    const found = resultOf(boostLosses(parts, voltage, 32, 5.5));
    expectClose(voltage, 12.148, 2e-4);
    expectClose(found.inputCurrent, 15.19, 1e-3);
    expectClose(found.efficiency, 0.9537, 5e-4);
    expectClose(found.point.switchDuty, 0.6341, 5e-4);
    expectClose(found.point.inductorPeak, 17.56, 1e-3);
    expectClose(greatestPower(12.8, 0.04295) ?? 0, 954, 1e-3);
  });
});
