import { describe, expect, it } from 'vitest';
import { type BoostParts, boostPoint } from '../../../src/engine/supply/boost.ts';
import { boostWaveforms } from '../../../src/engine/supply/boostWaveform.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const parts: BoostParts = {
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

const mean = (time: readonly number[], values: readonly number[], power = 1) => {
  let area = 0;
  for (let index = 1; index < time.length; index++) {
    const middle = ((values[index] ?? 0) ** power + (values[index - 1] ?? 0) ** power) / 2;
    area += middle * ((time[index] ?? 0) - (time[index - 1] ?? 0));
  }
  return area / ((time.at(-1) ?? 0) - (time[0] ?? 0));
};

describe.each([
  ['continuous', 5.5],
  ['discontinuous', 0.3],
] as const)('waveforms in %s conduction at %f A', (mode, current) => {
  const point = resultOf(boostPoint(parts, 12.5, 32, current));
  const waves = boostWaveforms(parts, point, 3, 200);

  it('stand for the point: means, r.m.s. and extremes', () => {
    expect(point.mode).toBe(mode);
    expectClose(mean(waves.time, waves.inductorCurrent), point.inductorMean, 1e-4);
    expectClose(Math.sqrt(mean(waves.time, waves.switchCurrent, 2)), point.switchRms, 1e-3);
    expectClose(Math.sqrt(mean(waves.time, waves.rectifierCurrent, 2)), point.rectifierRms, 1e-3);
    expectClose(mean(waves.time, waves.rectifierCurrent), current, 1e-3);
    expectClose(Math.max(...waves.inductorCurrent), point.inductorPeak, 1e-9);
    expectClose(mean(waves.time, waves.outputVoltage), 32, 1e-9);
    expectClose(
      Math.max(...waves.outputVoltage) - Math.min(...waves.outputVoltage),
      point.outputRipple,
      0.02,
    );
  });

  it('run over whole periods with rising time and one length', () => {
    expectClose(waves.time.at(-1) ?? 0, 3 / parts.frequency, 1e-9);
    for (let index = 1; index < waves.time.length; index++) {
      expect(waves.time[index] ?? 0).toBeGreaterThanOrEqual(waves.time[index - 1] ?? 0);
    }
    for (const wave of Object.values(waves)) expect(wave).toHaveLength(waves.time.length);
  });

  it('repeat: the currents end as they began and the charge of the capacitor returns', () => {
    expectClose(waves.inductorCurrent.at(-1) ?? 0, waves.inductorCurrent[0] ?? 0, 1e-9);
    const first = waves.outputVoltage[0] ?? 0;
    const third = waves.outputVoltage[(waves.outputVoltage.length / 3) * 2] ?? 0;
    expect(Math.abs(third - first)).toBeLessThan(0.01 * point.outputRipple);
  });
});
