import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boostPoint } from '../../../src/engine/supply/boost.ts';
import {
  type BoostTask,
  type ChosenParts,
  suggestParts,
} from '../../../src/engine/supply/boostSuggestion.ts';
import { preferredValue } from '../../../src/engine/supply/preferredValues.ts';
import { resultOf } from '../resultOf.ts';

const task: BoostTask = {
  inputVoltage: 10.5,
  outputVoltage: 32,
  outputCurrent: 5.5,
  phases: 1,
  frequency: 150e3,
  hotFactor: 1.5,
  rectifierDrop: 0.45,
  stableCapacitance: 0,
  highestInput: 14.6,
};
const none: ChosenParts = {
  inductance: null,
  inductorResistance: null,
  saturationCurrent: null,
  currentLimit: null,
  switchResistance: null,
  outputCapacitance: null,
  outputCapacitorResistance: null,
  inputCapacitance: null,
};
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('suggested parts', () => {
  it('are standard values', () => {
    const { parts } = resultOf(suggestParts(task, none));
    const isStandard = (series: 'E6' | 'E12' | 'E24', value: number) =>
      expect(preferredValue(series, value)).toBe(value);
    isStandard('E12', parts.inductance);
    isStandard('E12', parts.inductorResistance);
    isStandard('E12', parts.saturationCurrent);
    isStandard('E24', parts.currentLimit);
    isStandard('E12', parts.switchResistance);
    isStandard('E6', parts.outputCapacitance);
    isStandard('E12', parts.outputCapacitorResistance);
    isStandard('E6', parts.inputCapacitance);
  });

  it('keep their rules for any task: ripple at most 30 %, saturation 20 % above the peak, copper 1 %', () => {
    fc.assert(
      fc.property(
        double(9, 12),
        double(20, 60),
        double(0.3, 10),
        fc.constantFrom(1, 2, 3, 4),
        double(50e3, 500e3),
        (inputVoltage, outputVoltage, outputCurrent, phases, frequency) => {
          const asked = { ...task, inputVoltage, outputVoltage, outputCurrent, phases, frequency };
          const { parts } = resultOf(suggestParts(asked, none));
          const point = resultOf(
            boostPoint(
              {
                inductance: parts.inductance,
                inductorResistance: 0,
                switchResistance: 0,
                rectifierDrop: task.rectifierDrop,
                rectifierResistance: 0,
                synchronous: false,
                capacitance: parts.outputCapacitance,
                capacitorResistance: 0,
                frequency,
              },
              inputVoltage,
              outputVoltage,
              outputCurrent / phases,
            ),
          );
          const power = inputVoltage * point.inductorMean;
          return (
            point.inductorRipple <= 0.3 * point.inductorMean * (1 + 1e-9) &&
            parts.saturationCurrent >= 1.2 * point.inductorPeak * (1 - 1e-9) &&
            parts.saturationCurrent >= parts.currentLimit &&
            parts.currentLimit >= 1.15 * point.inductorPeak * (1 - 1e-9) &&
            parts.inductorResistance * point.inductorMean ** 2 <= 0.01 * power * (1 + 1e-9) &&
            parts.switchResistance * task.hotFactor * point.switchRms ** 2 <= 0.01 * power * (1 + 1e-9)
          );
        },
      ),
      { numRuns: 200 },
    );
  });

  it('leave what the builder chose, and build on it', () => {
    const { parts } = resultOf(suggestParts(task, { ...none, inductance: 4.1e-6, currentLimit: 77 }));
    expect(parts.inductance).toBe(4.1e-6);
    expect(parts.currentLimit).toBe(77);
    expect(parts.saturationCurrent).toBeGreaterThanOrEqual(77);
  });

  it('ratings stand above the voltages they meet', () => {
    const { ratings } = resultOf(suggestParts(task, none));
    expect(ratings).toEqual({
      switchVoltage: 60,
      rectifierVoltage: 45,
      capacitorVoltage: 50,
      inputCapacitorVoltage: 25,
      rectifierCurrent: 10,
    });
  });

  it('a rail below the input is named', () => {
    const found = suggestParts({ ...task, outputVoltage: 9 }, none);
    expect(found.ok ? '' : found.reason.key).toBe('railBelowInput');
  });
});
