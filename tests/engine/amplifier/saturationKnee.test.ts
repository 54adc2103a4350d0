import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { driveForFundamental } from '../../../src/engine/amplifier/conductionAngle.ts';
import { stageCurrent, stagePoint } from '../../../src/engine/amplifier/linearStage.ts';
import { saturatingOnLoad, saturatingStage } from '../../../src/engine/amplifier/saturationKnee.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { referenceDevices, referenceStage } from './referenceStage.ts';

describe('knee from saturation voltage and on-resistance', () => {
  // Own computation for the amplifier of the tables.
  it('has the tabulated reference amplifier', () => {
    const current = stageCurrent(referenceStage, 110);
    expectClose(referenceStage.ratedVoltage, 11.831, 5e-6);
    expectClose(2 * referenceStage.loadPerDevice, 2.545, 5e-5);
    expectClose(110 / (13.8 * current), 0.6677, 1e-4);
    expectClose(current, 11.937, 1e-4);
    expectClose((stagePoint(referenceStage, 110).conductionAngle * 180) / Math.PI, 183.19, 5e-5);
  });

  it('balances its own equation', () => {
    const power = fc.double({ min: 1, max: 300, noNaN: true });
    const resistance = fc.double({ min: 0, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(
        power,
        resistance,
        fc.double({ min: 0, max: 4, noNaN: true }),
        (watts, ohms, quiescentCurrent) => {
          const outcome = saturatingStage({
            ...referenceDevices,
            power: watts,
            onResistance: ohms,
            quiescentCurrent,
          });
          if (!outcome.ok) {
            expect(outcome.reason.key).toBe('power not reachable');
            return;
          }
          const stage = outcome.value;
          const drive = driveForFundamental(
            stage.quiescentPerDevice,
            stage.ratedVoltage / stage.loadPerDevice,
          );
          const peak = stage.quiescentPerDevice + drive;
          expectClose(stage.ratedVoltage, 13.8 - 0.4 - ohms * peak, 1e-9);
          // The larger of two roots: less swing would need more than is available.
          expect(stage.ratedVoltage).toBeGreaterThan(
            0.4 * (13.8 - 0.4 - ohms * stage.quiescentPerDevice) - 0.1,
          );
        },
      ),
    );
  });

  it('is limited by the saturation voltage alone without resistance', () => {
    const stage = resultOf(saturatingStage({ ...referenceDevices, onResistance: 0 }));
    expectClose(stage.knee, 0.4, 1e-9);
  });

  // Class B has the closed form V1 = (Va + sqrt(Va^2 - 4 Ron 4 P/n))/2; below the square root nothing is left at Va^2 n/(16 Ron).
  it('has the closed form of class B and its greatest power', () => {
    const va = 13.4;
    const b = { ...referenceDevices, class: 'B', onResistance: 0.1 } as const;
    const stage = resultOf(saturatingStage({ ...b, power: 110 }));
    expectClose(stage.ratedVoltage, (va + Math.sqrt(va * va - (16 * 0.1 * 110) / 2)) / 2, 1e-9);
    const greatest = (va * va * 2) / (16 * 0.1);
    expect(saturatingStage({ ...b, power: 0.999 * greatest }).ok).toBe(true);
    expect(saturatingStage({ ...b, power: 1.001 * greatest }).ok).toBe(false);
  });

  it('refuses a rail below the saturation voltage', () => {
    expect(saturatingStage({ ...referenceDevices, rail: 0.3 }).ok).toBe(false);
  });
});

describe('full swing in the other classes and on a given load', () => {
  it('class A carries twice its fundamental at the peak, class C what its angle asks', () => {
    const classA = resultOf(saturatingStage({ ...referenceDevices, class: 'A', power: 20 }));
    const fundamental = classA.ratedVoltage / classA.loadPerDevice;
    expectClose(classA.quiescentPerDevice, fundamental, 1e-12);
    expectClose(13.8 - 0.4 - 0.085 * 2 * fundamental, classA.ratedVoltage, 1e-12);
    const angle = (2 * Math.PI) / 3;
    const classC = resultOf(
      saturatingStage({ ...referenceDevices, class: 'C', power: 60, conductionAngle: angle }),
    );
    expectClose(stagePoint(classC, 60).conductionAngle, angle, 1e-9);
  });

  it.each(['A', 'AB', 'B', 'C'] as const)('class %s: the load found gives the same swing back', (name) => {
    const devices = { ...referenceDevices, class: name, power: 25 } as const;
    const stage = resultOf(saturatingStage(devices));
    const again = resultOf(saturatingOnLoad(devices, stage.loadPerDevice));
    expectClose(again.ratedVoltage, stage.ratedVoltage, 1e-9);
    expectClose(again.ratedPower, 25, 1e-9);
    expectClose(again.quiescentPerDevice, stage.quiescentPerDevice, 1e-9);
  });

  it('names a rail that leaves no swing', () => {
    const none = saturatingOnLoad({ ...referenceDevices, saturationVoltage: 14 }, 1);
    expect(!none.ok && none.reason.key).toBe('power not reachable');
  });
});
