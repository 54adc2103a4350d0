import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  calibrateSwitchingStage,
  rematchedStage,
  type SwitchingClass,
  switchingPoint,
} from '../../../src/engine/amplifier/switchingStage.ts';
import { classDHalfBridge, classE, classEEfficiency } from '../../../src/engine/amplifier/switchingTheory.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const cold = 298.15;
const measurement = {
  class: 'E',
  ratedPower: 50,
  ratedRail: 24,
  efficiency: 0.88,
  onResistance: 0.1,
  onResistanceCoefficient: 0.006,
  deviceCount: 2,
} as const;

describe('switching stage', () => {
  it.each(['D', 'E', 'F'] as const)(
    'class %s has the measured efficiency at the rated rail with cold devices',
    (one) => {
      const stage = resultOf(calibrateSwitchingStage({ ...measurement, class: one }));
      const point = switchingPoint(stage, { rail: 24, junctionTemperature: cold });
      expectClose(point.rfPower, 50, 1e-12);
      expectClose(point.dcPower, 50 / 0.88, 1e-12);
      expectClose(point.dcCurrent, 50 / 0.88 / 24, 1e-12);
    },
  );

  it('puts 1.3652 Ron/R of the output into the on-resistance in class E', () => {
    // One device that loses nothing but its on-resistance, which is small.
    const load = 6;
    const onResistance = 0.002;
    const efficiency = classEEfficiency(onResistance, load);
    // The rail sees 1.7337 R plus, to first order, the loss.
    const dcPower = ((24 * 24) / (classE.dcResistance * load)) * efficiency;
    const stage = resultOf(
      calibrateSwitchingStage({
        ...measurement,
        deviceCount: 1,
        onResistance,
        efficiency: efficiency * 0.999,
        ratedPower: dcPower * efficiency,
      }),
    );
    expectClose(stage.conductionLoss, (1.3652 * onResistance) / load, 4e-3);
  });

  it('loses what the class D bridge loses in its devices', () => {
    // A half bridge has its two devices in series across the rail: four times the loss of a push-pull pair.
    const bridge = classDHalfBridge({
      rail: 24,
      load: 4,
      onResistance: 0.05,
      outputCapacitance: 0,
      frequency: 7e6,
    });
    const stage = resultOf(
      calibrateSwitchingStage({
        ...measurement,
        class: 'D',
        onResistance: 4 * 0.05,
        ratedPower: bridge.rfPower,
        efficiency: bridge.efficiency,
      }),
    );
    expectClose(stage.conductionLoss * bridge.rfPower, bridge.conductionLoss, 1e-9);
    expectClose(stage.otherLoss, 0, 1e-12);
    // Hot devices: 1.6 times the resistance.
    const hot = classDHalfBridge({
      rail: 24,
      load: 4,
      onResistance: 0.08,
      outputCapacitance: 0,
      frequency: 7e6,
    });
    const point = switchingPoint(stage, { rail: 24, junctionTemperature: cold + 100 });
    expectClose(point.rfPower, hot.rfPower, 1e-9);
    expectClose(point.rfPower / point.dcPower, hot.efficiency, 1e-9);
  });

  it('gives power as the square of the rail at one efficiency', () => {
    const stage = resultOf(calibrateSwitchingStage(measurement));
    const full = switchingPoint(stage, { rail: 24, junctionTemperature: 350 });
    const half = switchingPoint(stage, { rail: 12, junctionTemperature: 350 });
    expectClose(half.rfPower, full.rfPower / 4, 1e-12);
    expectClose(half.dcPower / half.rfPower, full.dcPower / full.rfPower, 1e-12);
    expect(switchingPoint(stage, { rail: 0, junctionTemperature: 350 }).dcCurrent).toBe(0);
  });

  it('does not feel the junction if the efficiency was measured hot', () => {
    const stage = resultOf(calibrateSwitchingStage({ ...measurement, onResistanceCoefficient: 0 }));
    const hot = switchingPoint(stage, { rail: 24, junctionTemperature: 420 });
    expect(hot).toEqual(switchingPoint(stage, { rail: 24, junctionTemperature: cold }));
  });

  it('needs another load for another power, with a loss in the on-resistance that rises in proportion', () => {
    const stage = resultOf(calibrateSwitchingStage(measurement));
    const half = rematchedStage(stage, 25);
    const point = switchingPoint(half, { rail: 24, junctionTemperature: cold });
    expectClose(point.rfPower, 25, 1e-12);
    expectClose(half.conductionLoss, stage.conductionLoss / 2, 1e-12);
    expect(point.rfPower / point.dcPower).toBeGreaterThan(0.88);
  });

  it('closes energy and loses output and efficiency as it warms', () => {
    const given = fc.record({
      class: fc.constantFrom('D', 'E', 'F') as fc.Arbitrary<SwitchingClass>,
      ratedPower: fc.double({ min: 0.01, max: 3000, noNaN: true }),
      ratedRail: fc.double({ min: 3, max: 150, noNaN: true }),
      efficiency: fc.double({ min: 0.05, max: 0.99, noNaN: true }),
      onResistance: fc.double({ min: 0, max: 20, noNaN: true }),
      onResistanceCoefficient: fc.double({ min: 0, max: 0.02, noNaN: true }),
      deviceCount: fc.integer({ min: 1, max: 16 }),
    });
    fc.assert(
      fc.property(given, fc.double({ min: 250, max: 500, noNaN: true }), (one, junctionTemperature) => {
        const outcome = calibrateSwitchingStage(one);
        if (!outcome.ok) {
          expect(outcome.reason.key).toBe('on-resistance loses more than measured');
          return;
        }
        const at = switchingPoint(outcome.value, { rail: one.ratedRail, junctionTemperature });
        const hotter = switchingPoint(outcome.value, {
          rail: one.ratedRail,
          junctionTemperature: junctionTemperature + 30,
        });
        expect(at.dcPower).toBeGreaterThan(at.rfPower);
        expect(hotter.rfPower).toBeLessThanOrEqual(at.rfPower);
        expect(hotter.rfPower / hotter.dcPower).toBeLessThanOrEqual((at.rfPower / at.dcPower) * (1 + 1e-12));
      }),
    );
  });

  it.each([
    [{ onResistance: 5 }, 'on-resistance loses more than measured'],
    [{ efficiency: 1 }, 'no measurement'],
    [{ ratedPower: 0 }, 'no measurement'],
  ])('gives a reason for %o', (change, key) => {
    const outcome = calibrateSwitchingStage({ ...measurement, ...change });
    expect(outcome.ok ? '' : outcome.reason.key).toBe(key);
  });
});
