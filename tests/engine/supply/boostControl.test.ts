import { describe, expect, it } from 'vitest';
import {
  capacitanceForAveraging,
  capacitanceForDroop,
  droopFactor,
  loadStepDroop,
  peakPowerLoss,
  rightHalfPlaneZero,
  stageResonance,
  usableCrossover,
} from '../../../src/engine/supply/boostControl.ts';
import cases from '../cases/boost.json';
import { expectClose } from '../closeTo.ts';

const { inputs, statespace_Hz: zero, f0_Hz: resonance } = cases.rhpz;
const duty = 1 - inputs.Vg / inputs.Vo;

/** Zero of the averaged state-space model, by the root of the numerator: D' Vo − s L IL = 0. */
function stateSpaceZero(): number {
  const inductorCurrent = inputs.Io / (1 - duty);
  return ((1 - duty) * inputs.Vo) / (inputs.L * inductorCurrent) / (2 * Math.PI);
}

describe('right-half-plane zero, 12.5 to 32 V at 5.5 A with 10 µH', () => {
  it('is 14.1 kHz, as the averaged state-space model has it', () => {
    const found = rightHalfPlaneZero(inputs.Vo, inputs.Io, duty, inputs.L);
    expectClose(found, zero, 1e-9);
    expectClose(found, stateSpaceZero(), 1e-9);
    expectClose(stageResonance(duty, inputs.L, inputs.C), resonance, 1e-9);
  });

  it('bounds the crossover at 2.8 kHz, and a tenth of a slow clock bounds it too', () => {
    expectClose(usableCrossover(zero, 150e3).cautious, 2.83e3, 2e-3);
    expectClose(usableCrossover(zero, 150e3).bold, zero / 3, 1e-12);
    expect(usableCrossover(zero, 20e3)).toEqual({ cautious: 2000, bold: 2000 });
  });
});

describe('load step', () => {
  it.each(cases.step_droop_factor.map((row) => [row.phase_margin_deg, row.k] as const))(
    'factor at %i°: %f (independent implementation)',
    (degrees, factor) => {
      expect(Math.abs(droopFactor((degrees * Math.PI) / 180) - factor)).toBeLessThan(0.003);
    },
  );

  it('5.5 A on 330 µF with 2.83 kHz dip 0.66 V', () => {
    expectClose(loadStepDroop(5.5, 2830, 330e-6, 0), 0.66, 0.01);
    expectClose(loadStepDroop(5.5, 2830, 330e-6, 0.01) - loadStepDroop(5.5, 2830, 330e-6, 0), 0.055, 1e-9);
    expectClose(capacitanceForDroop(5.5, 2830, loadStepDroop(5.5, 2830, 330e-6, 0)), 330e-6, 1e-12);
  });

  it.each(cases.droop_dB.map((row) => [row.dV_frac, row.dB] as const))(
    'a dip of %f costs %f dB',
    (share, decibels) => {
      expectClose(peakPowerLoss(share), decibels, 1e-9);
    },
  );

  it.each(cases.averaging.map((row) => [row.Ipk, row.Iavg, row.t, row.dV, row.C] as const))(
    'averaging %f A to %f A for %f s within %f V takes %f F',
    (peak, mean, time, droop, farads) => {
      expectClose(capacitanceForAveraging(peak, mean, time, droop), farads, 1e-12);
    },
  );
});
