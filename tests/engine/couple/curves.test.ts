import { describe, expect, it } from 'vitest';
import { warmUp } from '../../../src/engine/couple/curves.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { solve } from '../../../src/engine/couple/solve.ts';
import { resultOf } from '../resultOf.ts';
import { change, exampleOf } from './designs.ts';

const field = exampleOf('field-station-60w');
/** Hot enough to burn: all the time on the key. */
const hot = change(field, { service: { transmitShare: 0.8 } });

/** Seconds a bare sink takes from one temperature to another, by Euler's rule in small steps. */
function cooled(from: number, to: number): number {
  const { path } = resultOf(prepare(hot).coupled);
  const { ambient } = hot.surroundings;
  let time = 0;
  for (let plate = from; plate > to; time += 0.05) {
    plate -= (0.05 * path.sink.heat(plate, ambient)) / path.sink.heatCapacity;
  }
  return time;
}

describe('temperatures in time', () => {
  it('end with the cool-down after the last over, until the plate can be touched', () => {
    const { time, plate, junction, switchedOff, touchable, coolEnough } = resultOf(warmUp(hot, 'keyDown'));
    expect(coolEnough).toBeCloseTo(321.15, 6);
    const off = time.indexOf(switchedOff);
    const from = plate[off]!;
    expect(from).toBeGreaterThan(coolEnough);
    expect(touchable).not.toBeNull();
    const needed = cooled(from, coolEnough);
    expect(Math.abs(touchable! - switchedOff - needed) / needed).toBeLessThan(0.01);
    for (let i = off + 1; i < plate.length; i += 1) expect(plate[i]!).toBeLessThan(plate[i - 1]!);
    // Long after the device has followed, junction and plate are one.
    expect(junction.at(-1)! - plate.at(-1)!).toBeLessThan(0.01);
    expect(time.at(-1)!).toBeGreaterThan(touchable!);
  });

  it('say that a cool plate can be touched all the time', () => {
    const cool = change(field, { service: { transmitShare: 0.02 } });
    const found = resultOf(warmUp(cool, 'ssb'));
    expect(Math.max(...found.plate)).toBeLessThan(found.coolEnough);
    expect(found.touchable).toBeNull();
    expect(solve(cool).values['ssb.coolDownTime']).toBe(0);
  });

  it('give the cool-down from the highest plate as a figure of each service', () => {
    const { values } = solve(hot);
    const needed = cooled(values['keyDown.platePeak']!, 321.15);
    expect(Math.abs(values['keyDown.coolDownTime']! / needed - 1)).toBeLessThan(0.01);
    const tropics = change(hot, { surroundings: { ambient: 323.15 } });
    expect(solve(tropics).values['keyDown.coolDownTime']).toBeUndefined();
    expect(resultOf(warmUp(tropics, 'keyDown')).touchable).toBeNull();
  });

  it('start the cool-down of a sink inside in the warm air of its case', () => {
    const inside = change(hot, { sink: { placement: 'inside' } });
    const { store } = resultOf(prepare(inside).coupled);
    const { values } = solve(inside);
    const air = values['keyDown.sinkAir']!;
    expect(air).toBeGreaterThan(inside.surroundings.ambient + 5);
    const warm = values['keyDown.coolDownTime']!;
    expect(warm).toBeGreaterThan(
      store.coolingTime(values['keyDown.platePeak']!, 321.15, inside.surroundings.ambient)!,
    );
  });

  it('draw slots one by one', () => {
    const slots = change(field, { service: { keyDownMode: 'WSPR', cycle: 600 } });
    const { plate, time, switchedOff } = resultOf(warmUp(slots, 'keyDown'));
    expect(time.length).toBe(plate.length);
    // 2 slots of sending and listening and the rest, in 8 pieces each; the last rest is the cool-down.
    expect(time.indexOf(switchedOff)).toBe(12 * 8 * 5 - 8);
  });
});
