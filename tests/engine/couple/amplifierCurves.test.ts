import { describe, expect, it } from 'vitest';
import { amplifierCurves, solve } from '../../../src/engine/index.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';
import { referenceDesign } from './referenceDesign.ts';

const beacon = exampleOf('pocket-beacon-10w');

describe('the curves of a final', () => {
  it('over its amplitude: every watt of the supply is output or heat, hottest where the table says', () => {
    const curve = resultOf(amplifierCurves(referenceDesign).output);
    curve.amplitude.forEach((r, i) => {
      expectClose(curve.supplyPower[i]!, curve.output[i]! + curve.heat[i]!, 1e-12);
      expectClose(curve.output[i]!, 110 * r * r, 1e-9);
    });
    // Own computation: 62.05 W at 0.742 of the amplitude; 61.68 W at 0.8.
    expectClose(curve.hottest!.heat, 62.05, 1e-4);
    expect(curve.hottest!.amplitude).toBeCloseTo(0.742, 2);
    expectClose(curve.heat[40]!, 61.68, 2e-4);
  });

  it('class B at full swing: 40.5 % of PEP at 2/pi of the amplitude (Boylestad and Nashelsky, chapter 12)', () => {
    const ideal = change(referenceDesign, {
      amplifier: { class: 'B', saturationVoltage: 0, onResistance: 0 },
    });
    const { hottest } = resultOf(amplifierCurves(ideal).output);
    expectClose(hottest!.heat, (4 / Math.PI ** 2) * 110, 1e-9);
    expectClose(hottest!.amplitude, 2 / Math.PI, 1e-5);
  });

  it('a switching class has no curve over its amplitude, and says why', () => {
    const { output, mismatch } = amplifierCurves(beacon);
    expect(!output.ok && output.reason.key).toBe('notLinear');
    expect(mismatch.ok).toBe(true);
  });

  it('over mismatch: begins at the heat into a matched load, the phases lie in order', () => {
    const curve = resultOf(amplifierCurves(referenceDesign).mismatch);
    expectClose(curve.worst[0]!, 54.734, 1e-4);
    curve.swr.forEach((_swr, i) => {
      expect(curve.worst[i]).toBeGreaterThanOrEqual(curve.mean[i]! - 1e-9);
      expect(curve.mean[i]).toBeGreaterThanOrEqual(curve.mildest[i]! - 1e-9);
    });
    const at3 = curve.swr.findIndex((swr) => Math.abs(swr - 3) < 1e-9);
    expectClose(curve.worst[at3]!, 164.734 - 110 / 3, 1e-4);
  });

  it('meets the solution at the SWR of the design, foldback included', () => {
    const design = change(referenceDesign, { amplifier: { swr: 4, foldbackSwr: 2, outputLoss: 0.5 } });
    const curve = resultOf(amplifierCurves(design).mismatch);
    const at = curve.swr.findIndex((swr) => Math.abs(swr - 4) < 1e-9);
    expectClose(curve.worst[at]!, solve(design).values.deviceHeatPep!, 1e-9);
    const open = resultOf(amplifierCurves(change(design, { amplifier: { foldbackSwr: null } })).mismatch);
    expect(curve.worst.at(-1)).toBeLessThan(0.8 * open.worst.at(-1)!);
    expectClose(curve.worst[2]!, open.worst[2]!, 1e-12);
  });

  it('derates from 25 °C to the greatest junction temperature, with a point for each service it carries', () => {
    const curve = resultOf(amplifierCurves(beacon).derating);
    expect(curve.points.map((point) => point.service)).toEqual(['cw', 'keyDown']);
    expect(curve.allowed.at(-1)).toBe(0);
    expectClose(
      curve.allowed[0]!,
      (beacon.device.maximumJunction - 298.15) / beacon.device.junctionToCase,
      1e-9,
    );
  });
});
