import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  calibrateLinearStage,
  classAEnd,
  hottestPoint,
  type LinearClass,
  type LinearStage,
  railLimitedPower,
  stageCurrent,
  stagePoint,
  standingRailCurrent,
} from '../../../src/engine/amplifier/linearStage.ts';
import { meanOver } from '../../../src/engine/signal/envelopeTable.ts';
import { keyingPattern } from '../../../src/engine/signal/keying.ts';
import { speechEnvelope } from '../../../src/engine/signal/speechEnvelope.ts';
import { phaseShiftEnvelope, twoToneEnvelope } from '../../../src/engine/signal/steadyEnvelopes.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { referenceMeasurement, referenceStage } from './referenceStage.ts';

const rail = 13.8;
const pep = 110;
const heatAt = (stage: LinearStage, rfPower: number, volts = rail) =>
  volts * stageCurrent(stage, rfPower) - rfPower;

function idealStage(stageClass: LinearClass, knee = 0): LinearStage {
  const swing = (1 - knee) * 10;
  const efficiency = ((stageClass === 'A' ? 0.5 : Math.PI / 4) * swing) / 10;
  return resultOf(
    calibrateLinearStage({
      ...referenceMeasurement,
      class: stageClass,
      ratedPower: 100,
      ratedRail: 10,
      efficiency,
      quiescentCurrent: 0,
    }),
  );
}

describe('class B', () => {
  it.each([0, 0.1, 0.3])('keeps its closed forms with a knee of %f of the rail', (knee) => {
    const stage = idealStage('B', knee);
    const k = 1 / (1 - knee);
    for (const r of [0.01, 0.2, 0.5, 0.75, 0.9, 1]) {
      const rfPower = r * r * 100;
      const dcPower = 10 * stageCurrent(stage, rfPower);
      expectClose(dcPower, (4 / Math.PI) * k * r * 100, 1e-9);
      expectClose(rfPower / dcPower, ((Math.PI / 4) * r) / k, 1e-9);
      expectClose(dcPower - rfPower, 100 * ((4 / Math.PI) * k * r - r * r), 1e-9);
    }
  });

  it.each(cases.groups.backoff)('agrees with an independent computation: $id', ({ inputs, expected }) => {
    const stage = idealStage('B');
    const rfPower = 100 * inputs.r * inputs.r;
    expectClose(rfPower / (10 * stageCurrent(stage, rfPower)), expected.eta, 1e-9);
    expectClose(heatAt(stage, rfPower, 10) / 100, expected.Pdiss_over_Ppep, 1e-9);
  });

  // R. L. Boylestad and L. Nashelsky, Electronic Devices and Circuit Theory, chapter 12: greatest heat at 2/pi of the
  // swing, 2 Vcc^2/(pi^2 RL) for the pair, which is 0.4 of the greatest output.
  it('is hottest at 2/pi of the full swing', () => {
    const hottest = hottestPoint(idealStage('B'), 10, 100);
    expectClose(hottest.amplitude, 2 / Math.PI, 1e-5);
    expectClose(hottest.heat, 100 * (4 / Math.PI ** 2), 1e-9);
    expectClose(hottest.heat / 100, 0.4, 0.014);
  });

  // Lecture text on class B: supplies of +-15 V, 12 V peak into 8 ohms, 5.32 W. The pair works as a push-pull stage
  // on 15 V with each device's load 8 ohms.
  it('gives the published heat of an audio pair', () => {
    const stage = resultOf(
      calibrateLinearStage({
        ...referenceMeasurement,
        class: 'B',
        deviceCount: 1,
        ratedPower: 9,
        ratedRail: 15,
        efficiency: (Math.PI / 4) * (12 / 15),
      }),
    );
    expectClose(heatAt(stage, 9, 15), 5.32, 1e-3);
    expectClose(stage.loadPerDevice, 8, 1e-9);
  });

  // Lecture text: efficiency at 75 % of the swing 0.589; back-off by 6 dB 39.5 %.
  it('has the published efficiencies below full swing', () => {
    const stage = idealStage('B');
    expectClose(56.25 / (10 * stageCurrent(stage, 56.25)), 0.589, 1e-3);
    const backedOff = 100 * 10 ** -0.6;
    expectClose(backedOff / (10 * stageCurrent(stage, backedOff)), 0.395, 5e-3);
  });

  // Boylestad and Nashelsky, chapter 12, examples 12.6 and 12.7: 30 V and 16 ohms (printed answers from memory).
  it.each([
    [20, 12.5, 23.9, 0.523],
    [30, 28.125, 35.81, 0.7854],
  ])('gives the textbook example with a swing of %i V', (swing, out, input, efficiency) => {
    const full = 30 ** 2 / 32;
    const measured = {
      ...referenceMeasurement,
      deviceCount: 1,
      ratedPower: full,
      ratedRail: 30,
      efficiency: Math.PI / 4,
    };
    const stage = resultOf(calibrateLinearStage({ ...measured, class: 'B' }));
    const rfPower = swing ** 2 / 32;
    expectClose(rfPower, out, 1e-4);
    expectClose(30 * stageCurrent(stage, rfPower), input, 2e-3);
    expectClose(rfPower / (30 * stageCurrent(stage, rfPower)), efficiency, 2e-3);
    expectClose(hottestPoint(stage, 30, full).heat, 11.4, 1e-3);
  });
});

describe('class A', () => {
  // F. H. Raab et al., Power Amplifier and Transmitter Technologies, Part 2 (2003): 50 % at PEP, 5 % at 10 dB
  // peak-to-average; 12.5 % at 6 dB of back-off.
  it('has the published efficiencies', () => {
    const stage = idealStage('A');
    expectClose(100 / (10 * stageCurrent(stage, 100)), 0.5, 1e-9);
    expectClose(10 / (10 * stageCurrent(stage, 10)), 0.05, 1e-9);
    expectClose(25 / (10 * stageCurrent(stage, 25)), 0.125, 1e-9);
  });

  it('draws the same current at any output and is hottest without drive', () => {
    const stage = resultOf(calibrateLinearStage({ ...referenceMeasurement, class: 'A', efficiency: 0.33 }));
    const standing = 110 / (0.33 * rail);
    expectClose(standingRailCurrent(stage), standing, 1e-12);
    for (const share of [0, 0.3, 1]) expectClose(stageCurrent(stage, share * 110), standing, 1e-9);
    expect(hottestPoint(stage, rail, 110)).toEqual({ amplitude: 0, heat: rail * stageCurrent(stage, 0) });
    expectClose(stage.ratedVoltage, 2 * 0.33 * rail, 1e-9);
    expectClose(stagePoint(stage, 110).conductionAngle, 2 * Math.PI, 1e-9);
  });
});

describe('class C', () => {
  it('holds the efficiency and the conduction angle at the rated power', () => {
    const angle = (120 * Math.PI) / 180;
    const stage = resultOf(
      calibrateLinearStage({ ...referenceMeasurement, class: 'C', efficiency: 0.68, conductionAngle: angle }),
    );
    const point = stagePoint(stage, 110);
    expectClose(110 / (rail * point.dcCurrent), 0.68, 1e-9);
    expectClose(point.conductionAngle, angle, 1e-9);
    expectClose(point.fundamentalVoltage, (0.68 / 0.8968) * rail, 1e-4);
    expect(stage.quiescentPerDevice).toBeLessThan(0);
    expect(standingRailCurrent(stage)).toBe(0);
    expect(stageCurrent(stage, 0)).toBe(0);
    expect(classAEnd(stage, 110)).toBe(0);
  });

  it('is class B at 180 degrees', () => {
    const measurement = { ...referenceMeasurement, efficiency: 0.6, conductionAngle: Math.PI };
    const c = resultOf(calibrateLinearStage({ ...measurement, class: 'C' }));
    const b = resultOf(calibrateLinearStage({ ...measurement, class: 'B' }));
    expectClose(c.loadPerDevice, b.loadPerDevice, 1e-12);
    for (const power of [1, 50, 110]) expectClose(stageCurrent(c, power), stageCurrent(b, power), 1e-9);
  });
});

describe('reference amplifier', () => {
  it.each(cases.groups.ref_amp)('agrees with an independent computation: $id', ({ inputs, expected }) => {
    const rfPower = inputs.r ** 2 * pep;
    expectClose(rail * stageCurrent(referenceStage, rfPower), expected.Pdc, 1e-6);
    expectClose(heatAt(referenceStage, rfPower), expected.Pdiss, 1e-6);
  });

  it('is hottest at 0.742 of the full amplitude', () => {
    const hottest = hottestPoint(referenceStage, rail, pep);
    expectClose(hottest.amplitude, 0.742, 1e-3);
    expectClose(hottest.heat, 62.05, 1e-4);
  });

  it.each(cases.groups.calibration)('calibrates on an efficiency: $id', ({ inputs, expected }) => {
    const stage = resultOf(calibrateLinearStage({ ...referenceMeasurement, efficiency: inputs.eta_pep }));
    expectClose(stage.ratedVoltage, expected.V1eff, 1e-9);
    expectClose(heatAt(stage, pep), expected.Pdiss_r1, 1e-9);
    expectClose(heatAt(stage, pep / 4), expected.Pdiss_r05, 1e-9);
  });

  it.each([
    [0.45, 7.9507, 134.44, 95.44],
    [0.55, 9.7299, 90, 73.23],
    [0.65, 11.514, 59.23, 57.87],
  ])('has the tabulated swing and heat at an efficiency of %f', (efficiency, swing, full, quarter) => {
    const stage = resultOf(calibrateLinearStage({ ...referenceMeasurement, efficiency }));
    expectClose(stage.ratedVoltage, swing, 1e-5);
    expectClose(heatAt(stage, pep), full, 1e-4);
    expectClose(heatAt(stage, pep / 4), quarter, 1e-4);
  });

  it('makes 86.8 W of heat at half its power, not half of its 90 W', () => {
    const stage = resultOf(calibrateLinearStage(referenceMeasurement));
    expect(Math.abs(heatAt(stage, pep / 2) - 86.8)).toBeLessThan(0.05);
    expectClose(heatAt(stage, pep), 90, 1e-9);
  });

  // Evaluation-board note of a VHF MOSFET (2011): 12.5 V, 80 W, about 10 A, 1 A standing current: efficiency 64 %.
  it('needs 82 % of the rail for a published VHF amplifier', () => {
    const stage = resultOf(
      calibrateLinearStage({
        ...referenceMeasurement,
        deviceCount: 1,
        ratedPower: 80,
        ratedRail: 12.5,
        efficiency: 0.64,
      }),
    );
    expectClose(stage.ratedVoltage / 12.5, 0.823, 1e-3);
  });

  // Own computation: rail power, heat and rail current over an over, watts and amperes.
  describe('modes', () => {
    const kink = [classAEnd(referenceStage, pep)];
    const full = rail * stageCurrent(referenceStage, pep);
    const standing = rail * standingRailCurrent(referenceStage);
    const { keyedShare } = resultOf(keyingPattern(20));
    const railPower = (r: number) => rail * stageCurrent(referenceStage, r * r * pep);

    it.each([
      ['key down', full, pep, 164.73, 54.73],
      ['CW with bias held', keyedShare * full + (1 - keyedShare) * standing, keyedShare * pep, 80.21, 31.81],
      ['CW with bias keyed', keyedShare * full, keyedShare * pep, 72.48, 24.08],
      ['two tones', meanOver(twoToneEnvelope(kink), railPower), pep / 2, 105.78, 50.78],
      [
        'PSK31, half reversals',
        meanOver(phaseShiftEnvelope(0.5, kink), railPower),
        0.75 * pep,
        135.26,
        52.76,
      ],
      ['SSB 20 %', meanOver(resultOf(speechEnvelope(0.2, 1, kink)), railPower), 0.2 * pep, 61.493, 39.493],
      ['standby', standing, 0, 13.8, 13.8],
    ])('%s', (_, dc, rf, tabulatedDc, tabulatedHeat) => {
      expect(Math.abs(dc - tabulatedDc)).toBeLessThan(0.0055);
      expect(Math.abs(dc - rf - tabulatedHeat)).toBeLessThan(0.0055);
    });
  });
});

describe('rail', () => {
  it('supports the rated power at the rated rail, and power as the square of rail minus knee', () => {
    const stage = resultOf(calibrateLinearStage(referenceMeasurement));
    expectClose(railLimitedPower(stage, rail), pep, 1e-12);
    const lower = (12 - stage.knee) / (rail - stage.knee);
    expectClose(railLimitedPower(stage, 12), pep * lower * lower, 1e-12);
    expect(railLimitedPower(stage, 0.5 * stage.knee)).toBe(0);
  });

  // A 13.8 V stage with a knee of 1.5 V loses 1.37 dB at 12.0 V (own computation).
  it('loses the tabulated power when the rail sags', () => {
    const stage = { ...referenceStage, ratedVoltage: 12.3, knee: 1.5 };
    expectClose(10 * Math.log10(railLimitedPower(stage, 13.8) / railLimitedPower(stage, 12)), 1.37, 4e-3);
  });
});

describe('laws of a linear stage', () => {
  const measurement = fc.record({
    class: fc.constantFrom('A', 'AB', 'B', 'C') as fc.Arbitrary<LinearClass>,
    ratedPower: fc.double({ min: 0.01, max: 3000, noNaN: true }),
    ratedRail: fc.double({ min: 3, max: 150, noNaN: true }),
    efficiency: fc.double({ min: 0.05, max: 0.99, noNaN: true }),
    quiescentCurrent: fc.double({ min: 0, max: 50, noNaN: true }),
    conductionAngle: fc.double({ min: Math.PI / 2, max: Math.PI, noNaN: true }),
    deviceCount: fc.integer({ min: 1, max: 16 }),
  });

  it('closes energy, keeps the measured efficiency and rises with amplitude, or gives a reason', () => {
    fc.assert(
      fc.property(measurement, (given) => {
        const outcome = calibrateLinearStage(given);
        if (!outcome.ok) {
          expect(outcome.reason.key).toMatch(
            /efficiency above the class|standing current above rail current/,
          );
          return;
        }
        const stage = outcome.value;
        const dc = given.ratedRail * stageCurrent(stage, given.ratedPower);
        expectClose(given.ratedPower / dc, given.efficiency, 1e-8);
        expect(stage.knee).toBeGreaterThanOrEqual(0);
        let before = 0;
        for (let i = 0; i <= 20; i++) {
          const rfPower = (i / 20) ** 2 * given.ratedPower;
          const point = stagePoint(stage, rfPower);
          expect(point.dcCurrent).toBe(stageCurrent(stage, rfPower));
          expect(point.dcCurrent).toBeGreaterThanOrEqual(before * (1 - 1e-12));
          expect(given.ratedRail * point.dcCurrent - rfPower).toBeGreaterThanOrEqual(0);
          before = point.dcCurrent;
        }
      }),
      { numRuns: 300 },
    );
  });

  it('names the limit when the efficiency is above the class', () => {
    const outcome = calibrateLinearStage({ ...referenceMeasurement, class: 'B', efficiency: 0.85 });
    expect(outcome.ok ? '' : outcome.reason.sentence).toContain('78.5 %');
    const biased = calibrateLinearStage({ ...referenceMeasurement, efficiency: 0.785 });
    expect(biased.ok ? '' : biased.reason.key).toBe('efficiency above the class');
    const angle = (120 * Math.PI) / 180;
    const c = calibrateLinearStage({
      ...referenceMeasurement,
      class: 'C',
      efficiency: 0.95,
      conductionAngle: angle,
    });
    expect(c.ok ? 0 : c.reason.numbers?.greatest).toBeCloseTo(0.8968, 4);
  });

  it('refuses a standing current above the rail current', () => {
    const outcome = calibrateLinearStage({ ...referenceMeasurement, quiescentCurrent: 20 });
    expect(outcome.ok ? '' : outcome.reason.key).toBe('standing current above rail current');
  });

  it('refuses a measurement of nothing', () => {
    const outcome = calibrateLinearStage({ ...referenceMeasurement, ratedPower: 0 });
    expect(outcome.ok ? '' : outcome.reason.key).toBe('no measurement');
  });
});
