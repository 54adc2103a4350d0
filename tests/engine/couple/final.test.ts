import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drainPower } from '../../../src/engine/amplifier/outputNetwork.ts';
import { prepareFinal } from '../../../src/engine/couple/final.ts';
import { nominalRail } from '../../../src/engine/couple/finalStage.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';
import { referenceDesign } from './referenceDesign.ts';

const room = 298.15;
const fieldStation = exampleOf('field-station-60w');
const beacon = exampleOf('pocket-beacon-10w');

function finalOf(design: typeof referenceDesign) {
  return resultOf(prepareFinal(design));
}

describe('a final known by its devices', () => {
  const final = finalOf(referenceDesign);

  // Own computation: the reference amplifier of the tables at several amplitudes.
  it.each(cases.groups.ref_amp.map((one) => [one.inputs.r, one.expected] as const))(
    'takes what the table says at amplitude %f',
    (r, expected) => {
      const point = final.at(r, 13.8, room);
      expectClose(13.8 * point.railCurrent, expected.Pdc, 1e-6);
      expectClose(point.rfPower, expected.Prf, 1e-6);
    },
  );

  it('settles with on-resistance that rises with temperature', () => {
    const { inputs, expected } = cases.groups.bias.find((one) => one.id === 'ron_feedback')! as {
      inputs: { alpha: number; Rth: number; Tcase: number };
      expected: { Tj: number; eta: number; Pdev: number };
    };
    const warm = finalOf(change(referenceDesign, { amplifier: { onResistanceCoefficient: inputs.alpha } }));
    expect(warm.feelsTemperature).toBe(true);
    let junction = room;
    let heat = 0;
    for (let round = 0; round < 60; round += 1) {
      const point = warm.at(1, 13.8, junction);
      heat = (13.8 * point.railCurrent - point.rfPower) / 2;
      junction = inputs.Tcase + 273.15 + inputs.Rth * heat;
    }
    expectClose(junction - 273.15, expected.Tj, 1e-6);
    expectClose(heat, expected.Pdev, 1e-6);
    expectClose(110 / (110 + 2 * heat), expected.eta, 1e-6);
  });

  it('says so when the devices are too hot for the power, and stays finite', () => {
    const hot = finalOf(change(referenceDesign, { amplifier: { onResistanceCoefficient: 0.02 } }));
    const point = hot.at(1, 13.8, 800);
    expect(point.limited).toBe(true);
    expect(Number.isFinite(point.railCurrent)).toBe(true);
  });
});

describe('the output transformer', () => {
  const withTurns = (turnsRatio: number, pep: number) =>
    change(referenceDesign, {
      amplifier: { turnsRatio, pep, onResistance: 0, saturationVoltage: 1.5, arrangement: 'pushPull' },
    });

  // Own computation (closed form): 2 (Vdd - Vk)^2 N^2/50 from 13.8 V with 1.5 V lost.
  it.each([
    [2, 24.2064],
    [3, 54.4644],
    [4, 96.8256],
  ])('with ratio %f ends at %f W and names it', (ratio, greatest) => {
    expect(prepareFinal(withTurns(ratio, greatest * 0.999)).ok).toBe(true);
    const refused = prepareFinal(withTurns(ratio, greatest * 1.001));
    expect(!refused.ok && refused.reason.key).toBe('ratioCannotMakePower');
    expect(!refused.ok && refused.reason.numbers?.greatest).toBeCloseTo(greatest, 6);
    expect(!refused.ok && refused.reason.sentence).toMatch(/Secondary to primary \d+ : \d/);
  });

  it('keeps its load: half the power is not half the heat', () => {
    const final = finalOf(withTurns(4, 96));
    const heatAt = (power: number) => {
      const point = final.at(Math.sqrt(power / 96), 13.8, room);
      return 13.8 * point.railCurrent - point.rfPower;
    };
    expect(heatAt(48)).toBeGreaterThan(0.9 * heatAt(96));
  });

  it('a single side sees four times the load of push-pull, so its ratio is half', () => {
    const pair = finalOf(withTurns(4, 50));
    const side = finalOf(change(withTurns(4, 50), { amplifier: { arrangement: 'parallel', turnsRatio: 8 } }));
    expectClose(side.stageAt(room)!.loadPerDevice, pair.stageAt(room)!.loadPerDevice, 1e-12);
  });

  it('lets a stated efficiency fix the knee and the ratio the load', () => {
    const wound = change(fieldStation, { amplifier: { turnsRatio: 2 } });
    const stage = finalOf(wound).stageAt(room)!;
    expectClose(stage.loadPerDevice, 50 / 4 / 2, 1e-12);
    expectClose(stage.knee, finalOf(fieldStation).stageAt(room)!.knee, 1e-12);
    expect(nominalRail(wound)).toBe(wound.converter.outputVoltage);
  });
});

describe('a final known by readings', () => {
  const readings = [
    { power: 60, current: 3.4 },
    { power: 0, current: 0.3 },
    { power: 15, current: 1.75 },
  ];
  const read = change(fieldStation, { amplifier: { calibration: 'readings', readings } });

  it('goes through every reading', () => {
    const final = finalOf(read);
    for (const { power, current } of readings) {
      const amplitude = Math.sqrt(power / read.amplifier.pep);
      expectClose(final.at(amplitude, read.amplifier.ratedRail, room).railCurrent, current, 1e-9);
    }
    expect(final.followsEnvelope).toBe(true);
  });

  it('never puts out more than it takes in, on any rail', () => {
    const final = finalOf(change(read, { amplifier: { pep: 200 } }));
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (amplitude, rail) => {
          const point = final.at(amplitude, rail, room);
          expect(rail * point.railCurrent).toBeGreaterThanOrEqual(point.rfPower * (1 - 1e-12));
        },
      ),
    );
  });

  it('says when the power lies above the readings, and needs one at rest', () => {
    const above = prepareFinal(change(read, { amplifier: { pep: 80 } }));
    expect(above.ok && above.notes.map((one) => one.key)).toContain('beyondReadings');
    const without = prepareFinal(change(read, { amplifier: { readings: [readings[0]!, readings[2]!] } }));
    expect(!without.ok && without.reason.key).toBe('no reading without drive');
  });
});

describe('mismatch', () => {
  it('at the worst phase takes the same current and puts out the forward power over S', () => {
    const matched = finalOf(referenceDesign);
    const off = finalOf(change(referenceDesign, { amplifier: { swr: 3 } }));
    for (const r of [0, 0.3, 0.7, 1]) {
      expect(off.at(r, 13.8, room).railCurrent).toBe(matched.at(r, 13.8, room).railCurrent);
      expectClose(off.at(r, 13.8, room).rfPower, matched.at(r, 13.8, room).rfPower / 3, 1e-12);
    }
  });

  it('is softened by the loss of the network, which passes twice', () => {
    const lossy = finalOf(
      change(referenceDesign, { amplifier: { swr: 3, outputLoss: 3, pep: 50, ratedPep: 50 } }),
    );
    const seen = 0.5 * 10 ** -0.3;
    expectClose(lossy.load.swr, (1 + seen) / (1 - seen), 1e-12);
  });

  it('foldback holds the reflected power', () => {
    const folded = finalOf(change(referenceDesign, { amplifier: { swr: 4, foldbackSwr: 2 } }));
    const reflection = (swr: number) => (swr - 1) / (swr + 1);
    expectClose(folded.load.foldback * reflection(4) ** 2, reflection(2) ** 2, 1e-12);
    expectClose(folded.powerAtPep, 110 * folded.load.foldback, 1e-12);
    expect(finalOf(change(beacon, { amplifier: { swr: 4, foldbackSwr: 2 } })).load.foldback).toBe(1);
  });
});

describe('a switching final', () => {
  it('can be estimated from its devices', () => {
    const final = finalOf(change(beacon, { amplifier: { calibration: 'devices' } }));
    const point = final.at(1, beacon.amplifier.ratedRail, room);
    const efficiency = point.rfPower / (beacon.amplifier.ratedRail * point.railCurrent);
    // 10.7 W at the devices from 12 V through 0.2 ohm in class E: 1.5385^2 0.2 (0.97 A)^2 = 0.45 W, and 4 % besides.
    expect(efficiency).toBeGreaterThan(0.9);
    expect(efficiency).toBeLessThan(0.93);
  });

  it('takes its efficiency from the highest reading', () => {
    const final = finalOf(
      change(beacon, { amplifier: { calibration: 'readings', readings: [{ power: 10, current: 1.04 }] } }),
    );
    expectClose(final.at(1, beacon.amplifier.ratedRail, room).railCurrent, 1.04, 1e-9);
    expectClose(final.at(1, beacon.amplifier.ratedRail, room).rfPower, drainPower(10, 0.3), 1e-9);
  });
});
