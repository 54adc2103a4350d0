import { describe, expect, it } from 'vitest';
import { arrheniusFactor } from '../../../src/engine/amplifier/derating.ts';
import { solve } from '../../../src/engine/index.ts';
import { expectClose } from '../closeTo.ts';
import { change, exampleOf } from './designs.ts';

const fieldStation = exampleOf('field-station-60w');
const notes = (design: typeof fieldStation) => solve(design).notes.map((one) => one.key);

describe('what the devices stand', () => {
  it('a voltage above the rating forbids with a matched load and warns under mismatch', () => {
    // 36 V of rail and 25.4 V of swing: 61.4 V matched; at SWR 3 half as much again of the swing, less by the loss.
    expect(solve(fieldStation).values.drainPeakVoltage).toBeCloseTo(61.4, 0);
    const low = solve(change(fieldStation, { device: { maximumVoltage: 60 } }));
    expect(low.services.ssb.ok && low.services.ssb.value.governing.key).toBe('drainVoltage');
    const off = change(fieldStation, { device: { maximumVoltage: 65 }, amplifier: { swr: 3 } });
    expect(notes(off)).toContain('drainVoltageMismatched');
    expect(notes(change(off, { amplifier: { foldbackSwr: 1.2 } }))).not.toContain('drainVoltage');
    expect(notes(fieldStation)).not.toContain('drainVoltageMismatched');
  });

  it('the working point lies on the derating line where the junction is at its greatest', () => {
    const { values } = solve(fieldStation);
    const { junctionToCase, maximumJunction } = fieldStation.device;
    for (const service of ['ssb', 'cw', 'keyDown']) {
      const allowed = (maximumJunction - values[`${service}.casePeak`]!) / junctionToCase;
      expectClose(values[`${service}.allowedHeat`]!, allowed, 1e-9);
      expectClose(values[`${service}.heatPerDevice`]!, values[`${service}.deviceHeatOver`]! / 2, 1e-12);
    }
    const weak = change(fieldStation, { device: { maximumHeat: 20 } });
    expect(solve(weak).values['keyDown.allowedHeat']).toBe(20);
    expect(notes(weak)).toContain('derating');
  });

  it('ageing is a factor against the design limit: 1 there, above it more', () => {
    const { values } = solve(fieldStation);
    const factor = values['keyDown.ageingFactor']!;
    expectClose(factor, arrheniusFactor(values.designLimit!, values['keyDown.junctionPeak']!), 1e-9);
    expect(values['keyDown.ageingFactor']! > 1).toBe(values['keyDown.junctionMargin']! < 0);
    expect(Object.keys(values).filter((key) => /life|hours/i.test(key))).toEqual([]);
  });

  it('tells the levels: close ends 25 K and stop begins 10 K below the data sheet', () => {
    const { values } = solve(fieldStation);
    expect(values.closeLimit).toBe(fieldStation.device.maximumJunction - 25);
    expect(values.stopLimit).toBe(fieldStation.device.maximumJunction - 10);
  });
});

describe('mismatch through the whole design', () => {
  it('heats the devices by what is not put out, at the worst phase, and never less than matched', () => {
    let before = 0;
    for (const swr of [1, 1.5, 2, 3, 5, 10]) {
      const { values } = solve(change(fieldStation, { amplifier: { swr } }));
      expect(values.deviceHeatPep).toBeGreaterThan(before);
      expectClose(
        values.deviceHeatPep! - values.deviceHeatMatched!,
        values.forwardAtDevices! * (1 - 1 / values.swrAtDevices!),
        1e-9,
      );
      expect(values.deviceHeatLeast).toBeLessThanOrEqual(values.deviceHeatMatched! + 1e-9);
      before = values.deviceHeatPep!;
    }
  });

  it('the worst and the mildest phase lie as far apart as the table says', () => {
    // Own computation: eta 0.55, SWR 3: 1.4848 of the matched output at the worst phase, 0.2727 at the mildest.
    const lossless = change(fieldStation, {
      amplifier: { swr: 3, outputLoss: 0, drivePower: 0, pep: 60, ratedPep: 60 },
    });
    const { values } = solve(lossless);
    expectClose(values.deviceHeatPep! / 60, 1.4848484848, 1e-6);
    expectClose(values.deviceHeatLeast! / 60, 0.2727272727, 1e-6);
  });

  it('exposure keeps the forward power', () => {
    const { values } = solve(change(fieldStation, { amplifier: { swr: 3 } }));
    expect(values.exposureDistance).toBe(solve(fieldStation).values.exposureDistance);
  });
});
