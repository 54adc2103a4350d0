import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoostParts, boostPoint } from '../../../src/engine/supply/boost.ts';
import { boostLosses } from '../../../src/engine/supply/boostLosses.ts';
import {
  onePhase,
  type PhasedParts,
  phasedPoint,
  phasedWaveforms,
  rippleOf,
  superpose,
} from '../../../src/engine/supply/boostPhases.ts';
import { interleavedCapacitorRms, interleavedRippleShare } from '../../../src/engine/supply/interleave.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const parts: PhasedParts = {
  phases: 1,
  inductance: 10e-6,
  inductorResistance: 0.006,
  inductorAcResistance: 0.04,
  switchResistance: 0.005,
  rectifierDrop: 0.45,
  rectifierResistance: 0.015,
  synchronous: false,
  capacitance: 330e-6,
  capacitorResistance: 0.015,
  frequency: 150e3,
  turnOnTime: 20e-9,
  turnOffTime: 20e-9,
  switchCapacitance: 300e-12,
  gateCharge: 40e-9,
  gateVoltage: 10,
  recoveryCharge: 0,
  deadTimeOn: 0,
  deadTimeOff: 0,
  bodyDrop: 0.8,
  inputCapacitorResistance: 0.02,
  fixedPower: 0.3,
  core: null,
};

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('one phase', () => {
  it('is the plain step-up stage: ripple and r.m.s. by superposition and by formula agree', () => {
    fc.assert(
      fc.property(
        double(9, 15),
        double(20, 60),
        double(0.02, 6),
        double(1e-6, 50e-6),
        fc.boolean(),
        (input, output, current, inductance, synchronous) => {
          const one = { ...parts, inductance, synchronous };
          const found = boostPoint(one, input, output, current);
          if (!found.ok) return true;
          const sum = rippleOf(superpose(found.value, 1, one.frequency), one, current);
          const same = (a: number, b: number) => Math.abs(a - b) <= 1e-6 * Math.max(Math.abs(b), 1e-3);
          return (
            same(sum.inputRipple, found.value.inductorRipple) &&
            same(sum.inputPeak, found.value.inductorPeak) &&
            same(sum.inputCapacitorRms, found.value.inputCapacitorRms) &&
            same(sum.outputCapacitorRms, found.value.outputCapacitorRms) &&
            same(sum.outputRipple, found.value.outputRipple)
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it('loses what the loss budget of one stage says', () => {
    const alone = resultOf(boostLosses(parts, 12.5, 32, 5.5));
    const found = resultOf(phasedPoint(parts, 12.5, 32, 5.5));
    expectClose(found.total, alone.total, 1e-12);
    expectClose(found.inputCurrent, alone.inputCurrent, 1e-12);
  });
});

describe('several phases', () => {
  it.each([2, 3, 4])(
    '%i phases: input ripple follows the closed form for interleaved triangles',
    (phases) => {
      for (const output of [18, 24, 32, 48]) {
        const many = { ...parts, phases, synchronous: true };
        const found = resultOf(phasedPoint(many, 12.5, output, 4));
        const { switchDuty, inductorRipple } = found.phase;
        expectClose(found.inputRipple, interleavedRippleShare(phases, switchDuty) * inductorRipple, 1e-6);
      }
    },
  );

  it.each([2, 3, 4])(
    '%i phases: output r.m.s. comes to the flat-topped form as the ripple vanishes',
    (phases) => {
      const stiff = { ...parts, phases, inductance: 1e-3 };
      const found = resultOf(phasedPoint(stiff, 12.5, 32, 5.5));
      expectClose(
        found.outputCapacitorRms,
        interleavedCapacitorRms(phases, found.phase.switchDuty, 5.5),
        2e-3,
      );
    },
  );

  it('each carries its part of the current, and the ripple of the input falls', () => {
    const one = resultOf(phasedPoint(parts, 12.5, 32, 5.5));
    const two = resultOf(phasedPoint({ ...parts, phases: 2 }, 12.5, 32, 5.5));
    // Half the current in each loses less in the resistances, so the duty is a little smaller.
    expectClose(two.phase.inductorMean, one.phase.inductorMean / 2, 0.02);
    expect(two.inputRipple).toBeLessThan(one.inputRipple);
    expect(two.outputCapacitorRms).toBeLessThan(one.outputCapacitorRms);
    expect(two.outputRipple).toBeLessThan(one.outputRipple);
    expect(two.terms.fixed).toBe(one.terms.fixed);
    expect(two.terms.switchConduction).toBeLessThan(0.6 * one.terms.switchConduction);
  });

  it('adds the power up', () => {
    const found = resultOf(phasedPoint({ ...parts, phases: 3 }, 12.5, 32, 5.5));
    const sum = Object.values(found.terms).reduce((total, term) => total + term, 0);
    expectClose(found.total, sum, 1e-12);
    expectClose(found.inputCurrent * 12.5, 32 * 5.5 + sum, 1e-12);
    expectClose(found.efficiency, (32 * 5.5) / (32 * 5.5 + sum), 1e-12);
  });

  it('fails by name like one stage', () => {
    const found = phasedPoint({ ...parts, phases: 2, inductorResistance: 2 }, 12.5, 32, 5.5);
    expect(found.ok ? '' : found.reason.key).toBe('ratioNotReachable');
    const below = phasedPoint(parts, 33, 32, 1);
    expect(below.ok ? '' : below.reason.key).toBe('railBelowInput');
  });
});

/** Switched circuit of N phases on one capacitor, stepped in time with small straight steps; for this test alone. */
function simulate(circuit: PhasedParts, input: number, output: number, load: number, duty: number) {
  const { phases, frequency, inductance: L } = circuit;
  const steps = 12_000;
  const h = 1 / frequency / steps;
  const resistor = output / load;
  const currents = Array.from({ length: phases }, () => load / phases / (1 - duty));
  let charge = output;
  const seen = { high: -Infinity, low: Infinity, inHigh: -Infinity, inLow: Infinity, square: 0, mean: 0 };
  const periods = 900;
  for (let period = 0; period < periods; period++) {
    for (let step = 0; step < steps; step++) {
      // Long settling is not needed step by step: coarse periods first, fine ones at the end.
      const coarse = period < periods - 1 ? 60 : 1;
      if (step % coarse !== 0) continue;
      const dt = h * coarse;
      let into = 0;
      const on: boolean[] = [];
      for (let n = 0; n < phases; n++) {
        on[n] = ((step + coarse / 2) / steps - n / phases + 1) % 1 < duty;
        if (!on[n]) into += currents[n]!;
      }
      const rail =
        (charge + circuit.capacitorResistance * into) / (1 + circuit.capacitorResistance / resistor);
      for (let n = 0; n < phases; n++) {
        const i = currents[n]!;
        const across = on[n]
          ? input - i * (circuit.inductorResistance + circuit.switchResistance)
          : input -
            i * (circuit.inductorResistance + circuit.rectifierResistance) -
            circuit.rectifierDrop -
            rail;
        currents[n] = i + (across / L) * dt;
      }
      charge += ((into - rail / resistor) / circuit.capacitance) * dt;
      if (coarse > 1) continue;
      const sum = currents.reduce((total, i) => total + i, 0);
      seen.high = Math.max(seen.high, rail);
      seen.low = Math.min(seen.low, rail);
      seen.inHigh = Math.max(seen.inHigh, sum);
      seen.inLow = Math.min(seen.inLow, sum);
      seen.square += (into - rail / resistor) ** 2 / steps;
      seen.mean += rail / steps;
    }
  }
  return seen;
}

describe('against a time-stepping simulation of two phases on one capacitor', () => {
  it('rail, ripple of rail and input, r.m.s. of the capacitor within 0.5 %', () => {
    const two = { ...parts, phases: 2 };
    const found = resultOf(phasedPoint(two, 12.5, 32, 5.5));
    const seen = simulate(two, 12.5, 32, 5.5, found.phase.switchDuty);
    expectClose(seen.mean, 32, 5e-3);
    expectClose(seen.high - seen.low, found.outputRipple, 5e-3);
    // The input ripple is the small rest of large currents: 0.5 % of what one phase swings.
    const gap = Math.abs(seen.inHigh - seen.inLow - found.inputRipple);
    expect(gap).toBeLessThan(5e-3 * found.phase.inductorRipple);
    expectClose(Math.sqrt(seen.square), found.outputCapacitorRms, 5e-3);
  });
});

describe('waveforms', () => {
  it.each([1, 2, 3])(
    '%i phases: one length, times rise, peaks and means are those of the point',
    (phases) => {
      const many = { ...parts, phases };
      const found = resultOf(phasedPoint(many, 12.5, 32, 5.5));
      const waves = phasedWaveforms(many, found, 5.5);
      const { time } = waves;
      for (const list of [waves.inductor, waves.switch, waves.rectifier, waves.input, waves.ripple]) {
        expect(list).toHaveLength(time.length);
      }
      for (let i = 1; i < time.length; i++) expect(time[i]!).toBeGreaterThanOrEqual(time[i - 1]!);
      expectClose(time.at(-1)!, 2 / many.frequency, 1e-9);
      expectClose(Math.max(...waves.inductor), found.phase.inductorPeak, 1e-6);
      expectClose(Math.max(...waves.input), found.inputPeak, 1e-6);
      expectClose(Math.max(...waves.ripple) - Math.min(...waves.ripple), found.outputRipple, 1e-2);
      const mean = time
        .slice(1)
        .reduce(
          (sum, t, i) => sum + ((waves.rectifier[i]! + waves.rectifier[i + 1]!) / 2) * (t - time[i]!),
          0,
        );
      expectClose((mean / time.at(-1)!) * phases, 5.5, 1e-6);
    },
  );

  it('in discontinuous conduction the inductor rests at zero', () => {
    const found = resultOf(phasedPoint({ ...parts, inductance: 3.3e-6 }, 12, 24, 0.4));
    expect(found.phase.mode).toBe('discontinuous');
    const waves = phasedWaveforms({ ...parts, inductance: 3.3e-6 }, found, 0.4);
    expect(Math.min(...waves.inductor)).toBeGreaterThanOrEqual(-1e-9);
    const atRest = waves.inductor.filter((i) => Math.abs(i) < 1e-9).length;
    expect(atRest).toBeGreaterThan(8);
  });
});

it('one phase of several sees its share of the shared capacitors', () => {
  const one: BoostParts = onePhase({ ...parts, phases: 4 });
  expectClose(one.capacitance, parts.capacitance / 4, 1e-12);
  expectClose(one.capacitorResistance, parts.capacitorResistance * 4, 1e-12);
});
