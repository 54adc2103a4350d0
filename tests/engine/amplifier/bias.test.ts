import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { success } from '../../../shared/outcome.ts';
import {
  biasLoopGain,
  bipolarDrift,
  driftMultiplier,
  heatBalance,
  mosfetDrift,
  onResistanceAt,
  zeroDriftOverdrive,
} from '../../../src/engine/amplifier/bias.ts';
import { stageCurrent } from '../../../src/engine/amplifier/linearStage.ts';
import { saturatingStage } from '../../../src/engine/amplifier/saturationKnee.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { referenceDevices } from './referenceStage.ts';

const [drift, loop, feedback] = cases.groups.bias;

describe('standing current', () => {
  it('of a bipolar device drifts 7.7 % per kelvin', () => {
    const { Ic, tc } = drift!.inputs;
    expectClose(
      bipolarDrift({ current: Ic!, emitterResistance: 0, baseDrift: tc! }),
      drift!.expected.dIdT!,
      1e-9,
    );
    expectClose(bipolarDrift({ current: 1, emitterResistance: 0 }), 0.077, 3e-3);
  });

  it('has the loop gains of an independent computation', () => {
    const { Ic, Vdd, Rth, RE } = loop!.inputs;
    const ballasted = bipolarDrift({ current: Ic!, emitterResistance: RE! });
    expectClose(biasLoopGain(Vdd!, ballasted, Rth!), loop!.expected.S!, 1e-9);
    expectClose(biasLoopGain(13.8, bipolarDrift({ current: 0.1, emitterResistance: 0 }), 3), 0.32, 2e-3);
  });

  it('of a MOSFET drifts 3.5 mA/K in the worked example', () => {
    const bias = { current: 0.5, transconductance: 2, sourceResistance: 0, thresholdDrift: 0.003 };
    expectClose(mosfetDrift(bias), 0.0035, 1e-9);
    expectClose(biasLoopGain(13.8, mosfetDrift(bias), 2), 0.097, 5e-3);
  });

  it('of a square-law MOSFET stands still at the zero-drift overdrive', () => {
    expectClose(zeroDriftOverdrive(0.003), 1.2, 1e-12);
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.006, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (thresholdDrift, k) => {
          const overdrive = zeroDriftOverdrive(thresholdDrift, 320);
          // I = k V^2/2, g_m = k V.
          const bias = {
            current: 0.5 * k * overdrive ** 2,
            transconductance: k * overdrive,
            sourceResistance: 0.1,
            thresholdDrift,
            temperature: 320,
          };
          expect(Math.abs(mosfetDrift(bias))).toBeLessThan(1e-12);
          const colder = {
            ...bias,
            current: 0.125 * k * overdrive ** 2,
            transconductance: 0.5 * k * overdrive,
          };
          expect(mosfetDrift(colder)).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('rises without end at a loop gain of one', () => {
    expectClose(resultOf(driftMultiplier(0.5)), 2, 1e-12);
    const outcome = driftMultiplier(1);
    expect(outcome.ok ? '' : outcome.reason.key).toBe('bias runs away');
  });
});

describe('on-resistance and heat', () => {
  const { Vdd, Ppep, Iq_total, Vsat, Ron25, alpha, Rth, Tcase } = feedback!.inputs as Record<string, number>;

  function deviceHeat(coefficient: number) {
    return (junction: number) => {
      const stage = saturatingStage({
        ...referenceDevices,
        power: Ppep!,
        rail: Vdd!,
        quiescentCurrent: Iq_total!,
        saturationVoltage: Vsat!,
        onResistance: onResistanceAt(Ron25!, coefficient, junction),
      });
      return stage.ok ? success((Vdd! * stageCurrent(stage.value, Ppep!) - Ppep!) / 2) : stage;
    };
  }

  it('agrees with an independent computation', () => {
    const found = resultOf(heatBalance(deviceHeat(alpha!), Tcase! + 273.15, Rth!));
    expectClose(found.junctionTemperature - 273.15, feedback!.expected.Tj!, 1e-6);
    expectClose(found.heat, feedback!.expected.Pdev!, 1e-6);
    expectClose(Ppep! / (Ppep! + 2 * found.heat), feedback!.expected.eta!, 1e-6);
  });

  it('is a simple product without a coefficient', () => {
    const found = resultOf(heatBalance(deviceHeat(0), Tcase! + 273.15, Rth!));
    expectClose(found.junctionTemperature - 273.15, feedback!.expected.Tj_alpha0!, 1e-6);
    expectClose(found.heat, feedback!.expected.Pdev_alpha0!, 1e-6);
  });

  it('balances any convex heat curve, or says that there is none', () => {
    const share = fc.double({ min: 0, max: 0.03, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 200, noNaN: true }),
        share,
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        (watts, rise, path) => {
          const heatAt = (t: number) => success(watts * Math.exp(rise * (t - 300)));
          const outcome = heatBalance(heatAt, 300, path);
          if (!outcome.ok) {
            // Runaway (no balance once e a R P exceeds 1), or a balance above the ceiling.
            const steepest = Math.E * rise * path * watts;
            const atCeiling = 300 + path * heatAt(773.15).value;
            expect(steepest > 0.99 || atCeiling > 773).toBe(true);
            return;
          }
          const { junctionTemperature, heat } = outcome.value;
          expect(Math.abs(junctionTemperature - 300 - path * heat)).toBeLessThan(1e-6);
          expect(Math.abs(heat - heatAt(junctionTemperature).value)).toBeLessThan(1e-6 * (1 + heat));
          // The coolest balance: the slope of the curve there is below that of the path.
          expect(path * rise * heat).toBeLessThan(1 + 1e-3);
        },
      ),
    );
  });

  it('passes on the reason when the power is out of reach', () => {
    const outcome = heatBalance(deviceHeat(0.02), 450, 3);
    expect(outcome.ok ? '' : outcome.reason.key).toBe('power not reachable');
  });

  it('rises with temperature from its value at 25 degC', () => {
    expectClose(onResistanceAt(0.1, 0.006, 298.15), 0.1, 1e-12);
    expectClose(onResistanceAt(0.1, 0.006, 398.15), 0.16, 1e-12);
    expect(onResistanceAt(0.1, 0.02, 200)).toBe(0);
  });
});
