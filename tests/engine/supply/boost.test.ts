import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BoostParts,
  type BoostPoint,
  boostPoint,
  boundaryCurrent,
  continuousDuty,
  continuousOutput,
  criticalInductance,
  discontinuousRatio,
  greatestRatio,
  inductanceForRipple,
  saturationMargin,
} from '../../../src/engine/supply/boost.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { simulate } from './switchedCircuit.ts';

const ideal: BoostParts = {
  inductance: 150e-6,
  inductorResistance: 0,
  switchResistance: 0,
  rectifierDrop: 0,
  rectifierResistance: 0,
  synchronous: false,
  capacitance: 220e-6,
  capacitorResistance: 0,
  frequency: 25e3,
};
const lossy: BoostParts = {
  inductance: 10e-6,
  inductorResistance: 0.006,
  switchResistance: 0.005,
  rectifierDrop: 0.45,
  rectifierResistance: 0.015,
  synchronous: false,
  capacitance: 330e-6,
  capacitorResistance: 0.015,
  frequency: 150e3,
};

interface SimulatedCase {
  readonly name: string;
  readonly inputs: Readonly<Record<string, number | boolean | undefined>>;
  readonly D: number;
  readonly Vo_sim: number;
  readonly mode_sim: string;
  readonly quantities: Readonly<Record<string, { readonly formula: number; readonly sim: number }>>;
}
const simulated = cases.boost_sim as unknown as readonly SimulatedCase[];
const numberOf = (entry: SimulatedCase, key: string) => Number(entry.inputs[key] ?? 0);

function partsOf(entry: SimulatedCase): BoostParts {
  return {
    inductance: numberOf(entry, 'L'),
    inductorResistance: numberOf(entry, 'rL'),
    switchResistance: numberOf(entry, 'Ron'),
    rectifierDrop: numberOf(entry, 'VD'),
    rectifierResistance: numberOf(entry, 'rD'),
    synchronous: entry.inputs.sync === true,
    capacitance: numberOf(entry, 'C'),
    capacitorResistance: numberOf(entry, 'esr'),
    frequency: numberOf(entry, 'fs'),
  };
}

function pointOf(entry: SimulatedCase): BoostPoint {
  const target = numberOf(entry, 'Vo_target') || numberOf(entry, 'Vg') / (1 - numberOf(entry, 'D'));
  const current = numberOf(entry, 'Io') || target / numberOf(entry, 'R');
  return resultOf(boostPoint(partsOf(entry), numberOf(entry, 'Vg'), target, current));
}

const readings: Readonly<Record<string, (point: BoostPoint) => number>> = {
  IL: (point) => point.inductorMean,
  dIL: (point) => point.inductorRipple,
  Ipk: (point) => point.inductorPeak,
  IL_rms: (point) => point.inductorRms,
  Isw_rms: (point) => point.switchRms,
  Id_rms: (point) => point.rectifierRms,
  ICin_rms: (point) => point.inputCapacitorRms,
  ICo_rms: (point) => point.outputCapacitorRms,
  dVo: (point) => point.outputRipple,
};

describe('against an exact simulation of the switched circuit (independent implementation)', () => {
  it.each(simulated.map((entry) => [entry.name, entry] as const))('%s', (_, entry) => {
    const point = pointOf(entry);
    expect(point.mode).toBe(entry.mode_sim === 'CCM' ? 'continuous' : 'discontinuous');
    expectClose(point.switchDuty, entry.D, 1e-9);
    for (const [key, read] of Object.entries(readings)) {
      const known = entry.quantities[key];
      if (!known) throw new Error(`no ${key} in ${entry.name}`);
      expectClose(read(point), known.formula, 1e-9, key);
      expectClose(read(point), known.sim, 3.1e-3, key);
    }
  });
});

describe('against a time-stepping simulation of the switched circuit', () => {
  const circuit = (parts: BoostParts, Vg: number, D: number, R: number) => ({
    Vg,
    D,
    R,
    L: parts.inductance,
    rL: parts.inductorResistance,
    Ron: parts.switchResistance,
    VD: parts.rectifierDrop,
    rD: parts.rectifierResistance,
    C: parts.capacitance,
    esr: parts.capacitorResistance,
    fs: parts.frequency,
  });

  it('continuous conduction with losses: 12.5 to 32 V, 5.5 A', () => {
    const point = resultOf(boostPoint(lossy, 12.5, 32, 5.5));
    const found = simulate(
      circuit(lossy, 12.5, point.switchDuty, 32 / 5.5),
      point.inductorValley,
      32,
      2000,
      100,
    );
    expect(point.mode).toBe('continuous');
    expectClose(found.Vo, 32, 2e-4);
    expectClose(found.IL, point.inductorMean, 1e-3);
    expectClose(found.Ipk, point.inductorPeak, 1e-3);
    expectClose(found.Ival, point.inductorValley, 1e-3);
    expectClose(found.ILrms, point.inductorRms, 1e-3);
    expectClose(found.IswRms, point.switchRms, 1e-3);
    expectClose(found.IdRms, point.rectifierRms, 1e-3);
    // The simulated load is a resistor and takes its part of the ripple, the formulas have a constant current.
    expectClose(found.ICoRms, point.outputCapacitorRms, 4e-3);
    expectClose(found.dVo, point.outputRipple, 4e-3);
  });

  it('discontinuous conduction with a diode: 12 to 24 V, 0.5 A', () => {
    const parts = {
      ...ideal,
      inductance: 3.3e-6,
      capacitance: 22e-6,
      rectifierDrop: 0.45,
      capacitorResistance: 0.02,
      frequency: 200e3,
    };
    const point = resultOf(boostPoint(parts, 12, 24, 0.5));
    const found = simulate(circuit(parts, 12, point.switchDuty, 48), 0, 24, 2500, 200);
    expect(point.mode).toBe('discontinuous');
    expectClose(found.Vo, 24, 2e-3);
    expectClose(found.D2, point.rectifierDuty, 2e-3);
    expectClose(found.IL, point.inductorMean, 2e-3);
    expectClose(found.Ipk, point.inductorPeak, 1e-9);
    expectClose(found.ILrms, point.inductorRms, 2e-3);
    expectClose(found.IswRms, point.switchRms, 2e-3);
    expectClose(found.IdRms, point.rectifierRms, 2e-3);
    expectClose(found.ICoRms, point.outputCapacitorRms, 3e-3);
    expectClose(found.dVo, point.outputRipple, 5e-3);
  });
});

describe('textbooks', () => {
  // Rashid, Power Electronics, 4th ed., example 5.6, through a published worked-solution file.
  it('5 to 15 V, 0.5 A, 25 kHz, 150 µH, 220 µF: 66.67 %, 0.89 A, 1.944 A, 60.61 mV', () => {
    const point = resultOf(boostPoint(ideal, 5, 15, 0.5));
    expectClose(point.switchDuty, 0.6667, 1e-4);
    expectClose(point.inductorRipple, 0.89, 2e-3);
    expectClose(point.inductorPeak, 1.944, 3e-4);
    expectClose(point.outputRipple, 60.61e-3, 1e-4);
  });

  // Hart, Power Electronics, boost examples, from memory.
  it('20 V, D 0.6, 100 µH, 50 Ω, 15 kHz, discontinuous: 60 V and 8 A', () => {
    expectClose(20 * discontinuousRatio(0.6, 100e-6, 15e3, 50), 60, 1e-9);
    const point = resultOf(boostPoint({ ...ideal, inductance: 100e-6, frequency: 15e3 }, 20, 60, 1.2));
    expectClose(point.switchDuty, 0.6, 1e-9);
    expectClose(point.inductorPeak, 8, 1e-9);
  });

  it('12 to 30 V, 50 Ω, 25 kHz: critical inductance 96 µH, with 120 µH 2.7 A and 0.3 A', () => {
    expectClose(criticalInductance(0.6, 50, 25e3), 96e-6, 1e-9);
    const point = resultOf(boostPoint({ ...ideal, inductance: 120e-6, capacitance: 48e-6 }, 12, 30, 0.6));
    expectClose(point.inductorPeak, 2.7, 1e-9);
    expectClose(point.inductorValley, 0.3, 1e-9);
  });

  // Data sheet SLVSBD4E (2021), "Determining the Duty Cycle": VD 0.5 V; the 24 V output is inferred, it fits both.
  it.each([
    [5, 0.8],
    [12, 0.51],
  ])('%f V to 24 V over a 0.5 V diode: duty %f', (input, duty) => {
    const found = resultOf(continuousDuty({ ...ideal, rectifierDrop: 0.5 }, input, 24, 1e-9));
    expect(Math.abs(found - duty)).toBeLessThan(0.005);
  });
});

describe('edge of discontinuous conduction', () => {
  it('44.4 µH is the edge, as the simulated 44.0 and 44.9 µH show', () => {
    const { inputs, formula, sim } = cases.critical_L_check;
    expectClose(criticalInductance(inputs.D, inputs.R, inputs.fs), formula, 1e-9);
    for (const [inductance, mode] of sim as [number, string][]) {
      const point = resultOf(boostPoint({ ...ideal, inductance }, 5, 15, 0.5));
      expect(point.mode).toBe(mode === 'CCM' ? 'continuous' : 'discontinuous');
    }
  });

  it('the two sides meet at the boundary current', () => {
    const edge = boundaryCurrent(ideal, 5, 15);
    const above = resultOf(boostPoint(ideal, 5, 15, edge * 1.0001));
    const below = resultOf(boostPoint(ideal, 5, 15, edge * 0.9999));
    expect([above.mode, below.mode]).toEqual(['continuous', 'discontinuous']);
    for (const read of Object.values(readings)) expectClose(read(below), read(above), 2e-3);
  });

  it('a synchronous rectifier lets the current reverse instead', () => {
    const point = resultOf(boostPoint({ ...ideal, synchronous: true }, 5, 15, 0.01));
    expect(point.mode).toBe('continuous');
    expect(point.inductorValley).toBeLessThan(0);
  });
});

describe('laws', () => {
  const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it('the duty found gives the output asked for', () => {
    fc.assert(
      fc.property(double(9, 15), double(18, 60), double(0.5, 8), (input, output, current) => {
        const duty = continuousDuty(lossy, input, output, current);
        if (!duty.ok) return duty.reason.key === 'ratioNotReachable';
        const back = continuousOutput(
          { ...lossy, capacitorResistance: 0 },
          input,
          duty.value,
          output / current,
        );
        const without = continuousDuty({ ...lossy, capacitorResistance: 0 }, input, output, current);
        if (!without.ok) return true;
        const exact = continuousOutput(
          { ...lossy, capacitorResistance: 0 },
          input,
          without.value,
          output / current,
        );
        return Math.abs(exact / output - 1) < 1e-9 && back <= output * 1.2;
      }),
    );
  });

  it('power in is power out plus conduction loss', () => {
    fc.assert(
      fc.property(double(10, 15), double(20, 50), double(1, 6), (input, output, current) => {
        const found = boostPoint(lossy, input, output, current);
        if (!found.ok || found.value.mode !== 'continuous') return true;
        const p = found.value;
        // The duty counts the losses of the mean current; those of the ripple are left to the budget.
        const mean = p.inductorMean ** 2;
        const loss =
          lossy.inductorResistance * mean +
          lossy.switchResistance * p.switchDuty * mean +
          lossy.rectifierResistance * p.rectifierDuty * mean +
          lossy.rectifierDrop * current +
          lossy.capacitorResistance * (p.rectifierDuty * mean - current * current);
        return Math.abs(input * p.inductorMean - output * current - loss) < 1e-9 * input * p.inductorMean;
      }),
    );
  });

  it('is finite or a named reason over wide ranges', () => {
    fc.assert(
      fc.property(
        double(3, 60),
        double(5, 150),
        double(0, 100),
        double(1e-7, 1e-3),
        double(1e4, 2e6),
        (input, output, current, inductance, frequency) => {
          const found = boostPoint({ ...lossy, inductance, frequency }, input, output, current);
          if (!found.ok) return ['railBelowInput', 'ratioNotReachable'].includes(found.reason.key);
          return Object.values(found.value).every((one) => typeof one === 'string' || Number.isFinite(one));
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('limits of the circuit', () => {
  it.each(cases.max_ratio.map((row) => [row.RL_over_R, row.M_formula, row.M_sim, row.D] as const))(
    'inductor %f of the load: ratio %f at most (simulated %f)',
    (share, formula, simulation, duty) => {
      const found = greatestRatio(share);
      expectClose(found.ratio, formula, 1e-12);
      expectClose(found.ratio, simulation, 1e-7);
      expectClose(found.switchDuty, duty, 1e-12);
      const parts = { ...ideal, inductorResistance: share * 10 };
      expectClose(continuousOutput(parts, 1, found.switchDuty, 10), found.ratio, 1e-12);
    },
  );

  it.each([
    [12, 11.5, 1, 'railBelowInput'],
    [10, 100, 60, 'ratioNotReachable'],
  ])('%f to %f V at %f A: %s', (input, output, current, key) => {
    const found = boostPoint(lossy, input, output, current);
    expect(found.ok ? '' : found.reason.key).toBe(key);
  });

  it('an inductance for a ripple ratio gives that ratio back', () => {
    const inductance = inductanceForRipple(12, 0.6, 10, 0.3, 150e3);
    expectClose((12 * 0.6) / (inductance * 150e3) / 10, 0.3, 1e-12);
    expectClose(saturationMargin(24, 20), 0.2, 1e-12);
  });
});
