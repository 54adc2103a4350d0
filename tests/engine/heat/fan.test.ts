import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import {
  type Fan,
  fanCooling,
  fanPressure,
  freeFlow,
  linearFan,
  operatingPoint,
} from '../../../src/engine/heat/fan.ts';
import { prepareFinArray } from '../../../src/engine/heat/finArray.ts';
import { forcedHeat } from '../../../src/engine/heat/forcedAir.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { between, finGeometries } from './geometries.ts';
import { geometryOf } from './referenceSinks.ts';

const { forced } = cases;
const sink = prepareFinArray(geometryOf({ ...forced.geometry, eps: 0.1 }));
const duct = { kind: 'duct' } as const;
const at = (fan: Fan, path: Parameters<typeof operatingPoint>[2] = duct) =>
  operatingPoint(sink, fan, path, forced.film_T, standardPressure);

describe('fan curve', () => {
  it('passes through its points and falls between them', () => {
    const fan = {
      points: forced.fan_3point.pts.map(([flow, pressure]) => ({ flow: flow!, pressure: pressure! })),
      voltageShare: 1,
    };
    for (const { flow, pressure } of fan.points) expectClose(fanPressure(fan, flow), pressure, 1e-12);
    expectClose(fanPressure(fan, 0.005), 36.5, 1e-12);
    expect(fanPressure(fan, 0.03)).toBeLessThan(0);
  });

  it('goes with the voltage: flow with it, pressure with its square', () => {
    const slow = linearFan(40, 0.02, 0.5);
    expectClose(freeFlow(slow), 0.01, 1e-12);
    expectClose(fanPressure(slow, 0), 10, 1e-12);
    expectClose(fanPressure(slow, 0.005), 5, 1e-12);
  });
});

describe('fan and sink', () => {
  it('agree at the reference point, two figures of a data sheet', () => {
    const { p0, q0, q, V, dp, R } = forced.fan_linear;
    const point = at(linearFan(p0, q0));
    expectClose(point.channelFlow, q, 1e-7);
    expectClose(point.velocity, V, 1e-7);
    expectClose(point.pressure.drop, dp, 1e-7);
    expectClose(forcedHeat(sink, point.velocity, 318.15, 298.15, standardPressure).resistance, R, 1e-7);
  });

  it('agree at the reference point, three points of a curve', () => {
    const { pts, q, V, dp } = forced.fan_3point;
    const point = at({
      points: pts.map(([flow, pressure]) => ({ flow: flow!, pressure: pressure! })),
      voltageShare: 1,
    });
    expectClose(point.channelFlow, q, 1e-7);
    expectClose(point.velocity, V, 1e-7);
    expectClose(point.pressure.drop, dp, 1e-7);
  });

  it('balance for any sink, and a bypass takes air from the channels', () => {
    fc.assert(
      fc.property(
        finGeometries,
        between(5, 300),
        between(0.002, 0.1),
        between(1e-4, 0.02),
        (geometry, p0, q0, section) => {
          const prepared = prepareFinArray(geometry);
          const fan = linearFan(p0, q0);
          const of = (path: Parameters<typeof operatingPoint>[2]) =>
            operatingPoint(prepared, fan, path, 310, standardPressure);
          const ducted = of(duct);
          expect(Math.abs(fanPressure(fan, ducted.fanFlow) - ducted.pressure.drop)).toBeLessThan(1e-4 * p0);
          const past = of({ kind: 'bypass', section });
          expect(Math.abs(fanPressure(fan, past.fanFlow) - past.pressure.drop)).toBeLessThan(1e-3 * p0);
          expect(past.channelFlow).toBeLessThan(ducted.channelFlow);
          expect(past.fanFlow).toBeGreaterThan(ducted.fanFlow * (1 - 1e-6));
          expectClose(of({ kind: 'open' }).channelFlow, ducted.channelFlow / 2, 1e-9);
        },
      ),
    );
  });

  it('names a stopped fan, an open one and a fast one', () => {
    const keys = (fan: Fan, path: Parameters<typeof operatingPoint>[2]) =>
      fanCooling(sink, fan, path, 340, 300, standardPressure).notes.map((n) => n.key);
    expect(keys(linearFan(40, 0.02, 0), duct)).toEqual(['fanStopped']);
    expect(keys(linearFan(10, 0.004), { kind: 'open' })).toEqual(['openFan']);
    expect(keys(linearFan(40, 0.02), duct)).toContain('flowTurbulent');
    expect(fanCooling(sink, linearFan(40, 0.02, 0), duct, 340, 300, standardPressure).heat).toBe(0);
  });

  it('cools many times better than still air', () => {
    const blown = fanCooling(sink, linearFan(40, 0.02), duct, 348.15, 298.15, standardPressure);
    expect(blown.heat).toBeGreaterThan(3 * cases.sinks[1]!.rec.Q);
  });
});
