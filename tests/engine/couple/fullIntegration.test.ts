import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { cycleAt, heatSegments, holdTimeOf } from '../../../src/engine/couple/serviceCycle.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';

/**
 * The direct periodic state and the hold time against a plain time-stepping of all stores at once: sink with the exact
 * heat law (no table), device stages, from cold, until nothing changes from cycle to cycle. Written for the test alone.
 */
const prepared = prepare(exampleOf('field-station-60w'));
const coupled = resultOf(prepared.coupled);
const { path, design } = coupled;
const ambient = design.surroundings.ambient;

interface Stores {
  plate: number;
  stages: number[];
}

function step(stores: Stores, plateHeat: number, deviceHeat: number, dt: number): void {
  const { heatCapacity, heat } = path.sink;
  const slope = (plate: number) => (plateHeat - heat(plate, ambient)) / heatCapacity;
  const k1 = slope(stores.plate);
  const k2 = slope(stores.plate + (dt / 2) * k1);
  const k3 = slope(stores.plate + (dt / 2) * k2);
  const k4 = slope(stores.plate + dt * k3);
  stores.plate += (dt / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  stores.stages = path.stages.map((stage, i) => {
    const settled = deviceHeat * stage.resistance;
    const decay = stage.timeConstant > 0 ? Math.exp(-dt / stage.timeConstant) : 0;
    return settled + (stores.stages[i]! - settled) * decay;
  });
}

const junctionOf = (stores: Stores, deviceHeat: number) =>
  stores.plate + path.spreading * deviceHeat + stores.stages.reduce((sum, rise) => sum + rise, 0);

const cold = (): Stores => ({ plate: ambient, stages: path.stages.map(() => 0) });

describe('against a full integration in time', () => {
  it.each([0.1, 0.4, 0.75])(
    'key-down at duty %f: highest junction within the cycle agrees within 0.1 K',
    (share) => {
      const state = resultOf(cycleAt(coupled, 'keyDown', share));
      const parts = heatSegments(coupled, share, state.load);
      const stores = cold();
      let highest = 0;
      for (let cycle = 0; cycle < 40; cycle += 1) {
        highest = 0;
        for (const part of parts) {
          const steps = Math.ceil(part.segment.duration / 0.5);
          const dt = part.segment.duration / steps;
          for (let i = 0; i < steps; i += 1) {
            step(stores, part.segment.plate, part.heat, dt);
            highest = Math.max(highest, junctionOf(stores, part.heat));
          }
        }
      }
      expect(Math.abs(state.junctionPeak - highest)).toBeLessThan(0.1);
    },
  );

  it('hold time from cold agrees within half a second', () => {
    const limit = prepared.limits.design;
    const found = resultOf(holdTimeOf(coupled, 'keyDown', limit));
    const load = resultOf(coupled.load('keyDown', limit));
    const [carrier] = heatSegments(coupled, 1, load);
    const stores = cold();
    let time = 0;
    const dt = 0.1;
    while (junctionOf(stores, carrier!.heat) < limit && time < 3600) {
      step(stores, carrier!.segment.plate, carrier!.heat, dt);
      time += dt;
    }
    expect(found).not.toBeNull();
    expect(Math.abs((found ?? 0) - time)).toBeLessThan(0.5);
  });

  it.each([
    ['FT8', 300, 0.5],
    ['WSPR', 600, 0.4],
  ] as const)(
    '%s slots in a cycle of %i s: every element followed, within 0.4 K',
    (keyDownMode, cycle, share) => {
      const slotted = change(design, { service: { keyDownMode, cycle } });
      const inSlots = resultOf(prepare(slotted).coupled);
      const state = resultOf(cycleAt(inSlots, 'keyDown', share));
      const [over, rest] = heatSegments(inSlots, share, state.load);
      const { segments } = state.load.signal;
      const stores = cold();
      let highest = 0;
      const run = (duration: number, plateHeat: number, deviceHeat: number) => {
        const steps = Math.ceil(duration / 0.5);
        for (let i = 0; i < steps; i += 1) {
          step(stores, plateHeat, deviceHeat, duration / steps);
          highest = Math.max(highest, junctionOf(stores, deviceHeat));
        }
      };
      for (let round = 0; round < 30; round += 1) {
        highest = 0;
        let left = over!.segment.duration;
        for (let k = 0; left > 1e-6; k += 1) {
          const { on, duration } = segments![k % segments!.length]!;
          const heat = (on ? state.load.keyDownHeat : state.load.keyUpHeat) / path.deviceCount;
          run(Math.min(duration, left), over!.segment.plate + (heat - over!.heat) * path.deviceCount, heat);
          left -= duration;
        }
        run(rest!.segment.duration, rest!.segment.plate, rest!.heat);
      }
      expect(Math.abs(state.junctionPeak - highest)).toBeLessThan(0.4);
      expect(state.junctionPeak).toBeGreaterThan(highest - 0.1);
    },
  );
});
