import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Segment } from '../../../src/engine/heat/deviceLadder.ts';
import { finArrayHeat, prepareFinArray } from '../../../src/engine/heat/finArray.ts';
import { type HeatTable, tabulateHeat } from '../../../src/engine/heat/heatTable.ts';
import {
  advance,
  type InvertibleNode,
  periodicState,
  timeToLimit,
  timeToRise,
  warmUp,
} from '../../../src/engine/heat/sinkTransient.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { between } from './geometries.ts';
import { geometryOf } from './referenceSinks.ts';

const { geometry: g, C: capacity, P: power, t: times, dT: rises, keyed, T_amb: air } = cases.warmup;
const array = prepareFinArray(geometryOf(g));
const plain = { pressure: 101325, filmFactor: 1, channelFactor: 1 };
const law = tabulateHeat([(rise) => finArrayHeat(array, air + rise, air, air, plain).total]);
const node: InvertibleNode = { law, capacity };

/** Q = G θ: the node of the textbooks, with closed solutions. */
function linearLaw(conductance: number): HeatTable {
  return { heat: (rise) => conductance * rise, slope: () => conductance, rise: (heat) => heat / conductance };
}

/** Fourth-order Runge-Kutta in many small steps, the yardstick. */
function rungeKutta(of: InvertibleNode, start: number, segments: readonly Segment[], steps = 400) {
  let rise = start;
  let released = 0;
  const ends = segments.map((segment) => {
    const h = segment.duration / steps;
    const flow = (x: number) => (segment.power - of.law.heat(x)) / of.capacity;
    for (let i = 0; i < steps; i++) {
      const a = flow(rise);
      const b = flow(rise + (h / 2) * a);
      const c = flow(rise + (h / 2) * b);
      const d = flow(rise + h * c);
      const middle = rise + (h * (5 * a + 4 * b + 4 * c - d)) / 24;
      const next = rise + (h / 6) * (a + 2 * b + 2 * c + d);
      released += (h / 6) * (of.law.heat(rise) + 4 * of.law.heat(middle) + of.law.heat(next));
      rise = next;
    }
    return rise;
  });
  return { ends, released };
}

describe('warm-up of a sink', () => {
  it('agrees with the reference warm-up', () => {
    times.forEach((time, i) => {
      if (time > 0) expect(Math.abs(advance(node, 0, power, time) - rises[i]!)).toBeLessThan(0.003);
    });
  });

  it('agrees with the reference keyed from cold', () => {
    const cycle = [
      { power: 100, duration: 300 },
      { power: 8, duration: 300 },
    ];
    const ends = warmUp(node, 0, Array.from({ length: 6 }, () => cycle).flat());
    ends.forEach((end, i) => {
      expect(Math.abs(end - keyed.dT[i + 1]!)).toBeLessThan(0.003);
    });
  });

  it('is exact for a linear law', () => {
    const linear = { law: linearLaw(2), capacity: 500 };
    expectClose(advance(linear, 10, 100, 200), 50 - 40 * Math.exp(-0.8), 1e-10);
  });
});

describe('periodic state of a sink', () => {
  const cycles = fc.record({
    period: between(0.05, 3600),
    share: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
    high: between(1, 400),
    low: fc.double({ min: 0, max: 10, noNaN: true }),
    heatCapacity: between(60, 5000),
  });

  it.each([
    ['0.01 K at the usual tolerance', undefined, 0.01],
    ['0.1 K at ten times the usual tolerance', 0.1, 0.1],
  ])('returns to its start and releases what it takes up, within %s', (_, tolerance, bound) => {
    fc.assert(
      fc.property(cycles, ({ period, share, high, low, heatCapacity }) => {
        const body = { law, capacity: heatCapacity };
        const segments = [
          { power: high, duration: share * period },
          { power: low, duration: (1 - share) * period },
        ];
        const state = periodicState(body, segments, 0, tolerance);
        const steps = 200 + Math.ceil(period / heatCapacity) * 40;
        const exact = rungeKutta(body, state.start, segments, steps);
        // How far the start is from the true fixed point follows from the miss over one period.
        const miss = exact.ends[1]! - state.start;
        const contraction = -Math.expm1((-law.slope(state.mean) * period) / heatCapacity);
        expect(Math.abs(miss)).toBeLessThan(bound * contraction + 1e-9);
        expect(Math.abs(exact.ends[0]! - state.ends[0]!)).toBeLessThan(bound);
        const input = high * share * period + low * (1 - share) * period;
        expectClose(exact.released + heatCapacity * miss, input, 1e-6);
        expect(Math.abs(state.highest - Math.max(...state.ends))).toBeLessThan(1e-3);
      }),
      { numRuns: 60 },
    );
  });

  it('is the closed form for a linear law', () => {
    const linear = { law: linearLaw(2), capacity: 500 };
    const segments = [
      { power: 100, duration: 120 },
      { power: 0, duration: 180 },
    ];
    const state = periodicState(linear, segments);
    const peak = (50 * -Math.expm1(-120 / 250)) / -Math.expm1(-300 / 250);
    expectClose(state.highest, peak, 1e-6);
    expectClose(state.lowest, peak * Math.exp(-180 / 250), 1e-6);
    expectClose(state.mean, 20, 1e-6);
  });

  it('starts from a neighbour by its bend and needs one period then', () => {
    const cycle = (share: number) => [
      { power: 120, duration: 300 * share },
      { power: 5, duration: 300 * (1 - share) },
    ];
    const { bend } = periodicState(node, cycle(0.4));
    expect(periodicState(node, cycle(0.42), bend).iterations).toBe(1);
    expectClose(periodicState({ law: linearLaw(2), capacity: 500 }, cycle(0.4)).bend, 0, 1e-9);
  });

  it('is the end of a long warm-up', () => {
    const segments = [
      { power: 100, duration: 300 },
      { power: 8, duration: 300 },
    ];
    const long = warmUp(node, 0, Array.from({ length: 40 }, () => segments).flat());
    const state = periodicState(node, segments);
    expect(Math.abs(state.ends[0]! - long.at(-2)!)).toBeLessThan(0.005);
    expect(Math.abs(state.start - long.at(-1)!)).toBeLessThan(0.005);
  });

  it('rises with the share of the cycle and takes any start', () => {
    const at = (share: number, bend?: number) =>
      periodicState(
        node,
        [
          { power: 120, duration: 300 * share },
          { power: 5, duration: 300 * (1 - share) },
        ],
        bend,
      ).highest;
    for (let share = 0; share < 1; share += 0.1) expect(at(share + 0.1)).toBeGreaterThan(at(share));
    for (const bend of [-20, 20, 300]) expect(Math.abs(at(0.4, bend) - at(0.4))).toBeLessThan(0.01);
    expect(Math.abs(at(1) - law.rise(120))).toBeLessThan(0.01);
    expect(periodicState(node, [{ power: 0, duration: 300 }]).highest).toBe(0);
  });
});

describe('time to a limit', () => {
  it('is the time of the reference warm-up', () => {
    times.slice(1, 9).forEach((time, i) => {
      expectClose(timeToRise(node, power, 0, rises[i + 1]!), time, 2e-6);
    });
  });

  it('is the logarithm of a linear law, to 1e-6 even close to its end', () => {
    const linear = { law: linearLaw(2), capacity: 500 };
    for (const rise of [1, 25, 49, 49.999999]) {
      expectClose(timeToRise(linear, 100, 0, rise), -250 * Math.log1p(-rise / 50), 1e-6);
      expectClose(timeToLimit(linear, 100, 0, rise)!, -250 * Math.log1p(-rise / 50), 1e-6);
    }
    expect(timeToRise(linear, 100, 0, 50.1)).toBe(Number.POSITIVE_INFINITY);
    expect(timeToLimit(linear, 100, 0, 50.1)).toBeNull();
  });

  it('is when sink and device together meet the limit', () => {
    const device = (time: number) => 60 * 0.4 * -Math.expm1(-time / 20);
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 62, noNaN: true }), (limit) => {
        const time = timeToLimit(node, power, 0, limit, device)!;
        const plate = rungeKutta(node, 0, [{ power, duration: time }]).ends[0]!;
        expect(Math.abs(plate + device(time) - limit)).toBeLessThan(1e-4);
      }),
    );
    expect(timeToLimit(node, power, 0, 63, device)).toBeNull();
  });

  it('is at once when the device alone passes it, and waits for a device on a cold sink', () => {
    const instant = (time: number) => (time > 0 ? 50 : 0);
    expect(timeToLimit(node, power, 0, 40, instant)!).toBeLessThan(1e-6);
    expect(timeToLimit(node, power, 45, 40)).toBe(0);
    const slow = (time: number) => 10 * -Math.expm1(-time / 5);
    expectClose(timeToLimit(node, 0, 0, 5, slow)!, 5 * Math.LN2, 1e-9);
    expect(timeToLimit(node, 0, 0, 11, slow)).toBeNull();
  });
});
