import { describe, expect, it } from 'vitest';
import { caseAirHeat, tabulateCase } from '../../../src/engine/heat/caseAir.ts';
import { prepareSink } from '../../../src/engine/heat/sink.ts';
import {
  type CaseSegment,
  periodicInCase,
  type SinkInCase,
  steadyInCase,
  warmUpInCase,
} from '../../../src/engine/heat/sinkInCase.ts';
import { tabulateSinkOverAir } from '../../../src/engine/heat/sinkTable.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const ambient = 298.15;
const box = { width: 0.25, depth: 0.2, height: 0.1, emissivity: 0.85, bottomFree: true };
const sink = resultOf(
  prepareSink({
    shape: 'fins',
    width: 0.1,
    length: 0.1,
    baseThickness: 0.005,
    finCount: 14,
    finHeight: 0.025,
    finThickness: 0.002,
    alloy: 'extruded',
    finish: 'anodised',
    emissivity: 0.8,
    backExposed: false,
    mass: null,
  }),
);
const model: SinkInCase = {
  sink: tabulateSinkOverAir(sink, ambient, ambient + 150),
  sinkCapacity: sink.heatCapacity,
  box: tabulateCase(box, ambient, 101325),
  boxCapacity: 300,
  ambient,
};

function rungeKutta(start: { plate: number; air: number }, segments: readonly CaseSegment[]) {
  let { plate, air } = start;
  let released = 0;
  let highestAir = air;
  for (const segment of segments) {
    const steps = 600;
    const h = segment.duration / steps;
    const flow = (p: number, a: number): [number, number] => {
      const heat = model.sink.heat(p - a, ambient + a);
      return [
        (segment.sinkPower - heat) / model.sinkCapacity,
        (segment.casePower + heat - model.box.heat(a)) / model.boxCapacity,
      ];
    };
    for (let i = 0; i < steps; i++) {
      const before = model.box.heat(air);
      const a = flow(plate, air);
      const b = flow(plate + (h / 2) * a[0], air + (h / 2) * a[1]);
      const c = flow(plate + (h / 2) * b[0], air + (h / 2) * b[1]);
      const d = flow(plate + h * c[0], air + h * c[1]);
      plate += (h / 6) * (a[0] + 2 * b[0] + 2 * c[0] + d[0]);
      air += (h / 6) * (a[1] + 2 * b[1] + 2 * c[1] + d[1]);
      released += (h / 2) * (before + model.box.heat(air));
      highestAir = Math.max(highestAir, air);
    }
  }
  return { plate, air, released, highestAir };
}

describe('sink inside a closed case', () => {
  it.each([
    [300, 0.3, 60],
    [3600, 0.5, 30],
    [10, 0.2, 80],
  ])('returns to its start: cycle %d s, share %d, %d W', (cycle, share, power) => {
    const segments = [
      { sinkPower: power, casePower: 8, duration: cycle * share },
      { sinkPower: 2, casePower: 3, duration: cycle * (1 - share) },
    ];
    const state = periodicInCase(model, segments);
    const exact = rungeKutta(state.start, segments);
    expect(Math.abs(exact.plate - state.start.plate)).toBeLessThan(0.005);
    expect(Math.abs(exact.air - state.start.air)).toBeLessThan(0.005);
    expect(Math.abs(exact.highestAir - state.highest.air)).toBeLessThan(0.05);
    const input = segments.reduce((sum, s) => sum + (s.sinkPower + s.casePower) * s.duration, 0);
    expectClose(exact.released, input, 1e-3);
    // One period from there is the same by its own steps.
    const end = warmUpInCase(model, state.start, segments).at(-1)!;
    expect(Math.abs(end.plate - state.start.plate)).toBeLessThan(0.001);
  });

  it('is steady when both heat laws carry the heat', () => {
    const steady = steadyInCase(model, 20, 5);
    expectClose(caseAirHeat(box, ambient + steady.air, ambient, 101325), 25, 0.01);
    expectClose(sink.heat(ambient + steady.plate, ambient + steady.air), 20, 1e-3);
    const held = periodicInCase(model, [{ sinkPower: 20, casePower: 5, duration: 300 }]);
    expect(Math.abs(held.highest.plate - steady.plate)).toBeLessThan(0.01);
    expect(Math.abs(held.mean.air - steady.air)).toBeLessThan(0.01);
  });

  it('runs hotter than the same sink in the room', () => {
    expect(steadyInCase(model, 20, 0).plate).toBeGreaterThan(sink.steadyPlate(20, ambient) - ambient + 10);
  });
});
