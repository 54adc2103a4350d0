import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import { biasState } from '../../../src/engine/couple/biasState.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { solve } from '../../../src/engine/index.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';
import { referenceDesign } from './referenceDesign.ts';

function stateOf(design: Design) {
  const { final, path } = prepare(design);
  return biasState(design, resultOf(final), resultOf(path), 13.8, 350);
}

const bipolar = (tracking: Design['amplifier']['biasTracking'], resistor = 0) =>
  change(referenceDesign, {
    amplifier: {
      deviceKind: 'bipolar',
      biasTracking: tracking,
      biasResistance: resistor,
      quiescentCurrent: 0.2,
    },
    device: { junctionToCase: 3 },
  });

describe('stability of the bias', () => {
  // Own computation: 0.1 A at 13.8 V through 3 K/W, 2 mV/K: S = 0.320, with 0.1 ohm in the emitter 0.231.
  it('has the tabulated bipolar figures with the sensor on the case', () => {
    expectClose(stateOf(bipolar('case'))!.loopGain, 0.32, 2e-3);
    expectClose(stateOf(bipolar('case', 0.1))!.loopGain, 0.23064, 1e-4);
  });

  it('grows with the way from junction to sensor', () => {
    const gains = (['case', 'plate', 'nothing'] as const).map((place) => stateOf(bipolar(place))!.loopGain);
    expect(gains[1]).toBeGreaterThan(gains[0]!);
    expect(gains[2]).toBeGreaterThan(gains[1]!);
  });

  it('takes the standing current of a measured final from its reading at rest', () => {
    const read = change(referenceDesign, {
      amplifier: {
        calibration: 'readings',
        readings: [
          { power: 0, current: 0.8 },
          { power: 100, current: 12 },
        ],
      },
    });
    expect(stateOf(read)!.current).toBeCloseTo(0.4, 12);
  });

  it('is nothing for a class without standing current', () => {
    expect(stateOf(exampleOf('pocket-beacon-10w'))).toBeNull();
    expect(solve(exampleOf('pocket-beacon-10w')).values.biasLoopGain).toBeUndefined();
  });

  it('a runaway forbids transmitting, is named and says what cures it', () => {
    const wild = change(bipolar('nothing'), {
      amplifier: { quiescentCurrent: 2 },
      device: { junctionToCase: 4 },
    });
    const solution = solve(wild);
    const { ssb } = solution.services;
    expect(ssb.ok && ssb.value.governing.key).toBe('biasRunsAway');
    expect(ssb.ok && ssb.value.safeDuty).toBe(0);
    expect(solution.notes.find((one) => one.key === 'biasRunsAway')?.sentence).toMatch(
      /follow the temperature/,
    );
    expect(solution.values.biasMultiplier).toBeUndefined();
  });

  it('between 0.5 and 1 it only warns', () => {
    const drifting = bipolar('case');
    const solution = solve(change(drifting, { device: { junctionToCase: 6 } }));
    expect(solution.values.biasLoopGain).toBeGreaterThan(0.5);
    expect(solution.notes.map((one) => one.key)).toContain('biasDrifts');
  });
});
