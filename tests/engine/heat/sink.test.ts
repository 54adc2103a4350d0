import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pressureAtAltitude } from '../../../src/engine/heat/air.ts';
import { defaultChannelFactor } from '../../../src/engine/heat/finArray.ts';
import { prepareSink, type SinkDescription } from '../../../src/engine/heat/sink.ts';
import { tabulateSink } from '../../../src/engine/heat/sinkTable.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { between } from './geometries.ts';
import { descriptionOf } from './referenceSinks.ts';

/** The reference sinks have the conductivity of the extruded row, but for one of 170 W/(m K), 0.04 K hotter for it. */
const describeCase = (name: string): SinkDescription =>
  descriptionOf(cases.sinks.find((row) => row.name === name)!.geometry);
const black = describeCase('B_black_anodised_100x100');

describe('sink', () => {
  it.each(cases.steady)('finds the plate of $name at $heat W', (row) => {
    const sink = resultOf(prepareSink(describeCase(row.name), { channelFactor: 1 }));
    expect(Math.abs(sink.steadyPlate(row.heat, row.air) - row.plate)).toBeLessThan(0.04);
  });

  const sameMetal = cases.altitude.filter((row) => !row.name.startsWith('E'));
  it.each(sameMetal)('finds the rise of $name at altitude', (row) => {
    row.altitude.forEach((altitude, i) => {
      const sink = resultOf(
        prepareSink(describeCase(row.name), { channelFactor: 1, pressure: pressureAtAltitude(altitude) }),
      );
      expectClose(sink.steadyPlate(row.heat, 298.15) - 298.15, row.rise[i]!, 1e-6);
    });
  });

  it('closes: the steady plate gives off the heat put in', () => {
    fc.assert(
      fc.property(between(0.001, 3000), fc.constantFrom('fins' as const, 'panel' as const), (heat, shape) => {
        const sink = resultOf(prepareSink({ ...black, shape }));
        const plate = sink.steadyPlate(heat, 300);
        expectClose(sink.heat(plate, 300), heat, 1e-6);
      }),
    );
    expect(resultOf(prepareSink(black)).steadyPlate(0, 300)).toBe(300);
  });

  it('has the mass and the heat capacity of the drawing unless weighed', () => {
    // 100 x 100 x 5 mm and 10 fins of 2 x 25 x 100 mm of 2700 kg/m³, 900 J/(kg K).
    const sink = resultOf(prepareSink(black));
    expectClose(sink.mass, 2700 * (5e-5 + 5e-5), 1e-12);
    expectClose(sink.finMass, 2700 * 5e-5, 1e-12);
    expectClose(sink.heatCapacity, 243, 1e-12);
    const weighed = resultOf(prepareSink({ ...black, mass: 0.3 }));
    expectClose(weighed.heatCapacity, 270, 1e-12);
    expect(weighed.drawnMass).toBe(sink.mass);
  });

  it('counts the surface of fins and plate', () => {
    // 9 gaps of 80/9 mm, 18 + 2 fin faces, 2 plate edges, 10 tips, all 100 mm long.
    expectClose(resultOf(prepareSink(black)).surfaceArea, 0.1 * (0.08 + 20 * 0.025 + 0.01 + 0.02), 1e-12);
  });

  it('refuses fins that do not fit', () => {
    const outcome = prepareSink({ ...black, finCount: 51 });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) {
      expect(outcome.reason.key).toBe('finsDoNotFit');
      expect(outcome.reason.sentence).toContain('51 fins of 2 mm take 102 mm');
    }
    expect(prepareSink({ ...black, shape: 'panel', finCount: 51 }).ok).toBe(true);
  });

  it('names its doubts', () => {
    const wide = resultOf(prepareSink(black));
    expect(wide.notesAt(340, 300)).toEqual([]);
    expect(wide.filmUncertainty(340, 300)).toBe(0.15);
    expect(wide.notesAt(305, 300).map((n) => n.key)).toEqual(['riseSmall']);
    const tight = resultOf(prepareSink({ ...black, finCount: 30 }));
    expect(tight.notesAt(340, 300).map((n) => n.key)).toEqual(['gapTooTight']);
    expect(tight.filmUncertainty(340, 300)).toBe(0.25);
    expect(wide.notesAt(500, 420).map((n) => n.key)).toEqual(['airRange']);
    const assumed = prepareSink(black);
    expect(assumed.ok && assumed.notes.map((n) => n.key)).toEqual(['channelFactor']);
    const measured = prepareSink(black, { channelFactor: 1 });
    expect(measured.ok && measured.notes).toEqual([]);
  });

  it('splits its heat without loss and takes the smaller of its branches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 45 }), between(0.1, 300), (finCount, rise) => {
        const sink = resultOf(prepareSink({ ...black, finCount }));
        const detail = sink.heatDetail(300 + rise, 300);
        expectClose(detail.convection + detail.radiation, detail.total, 1e-12);
        expectClose(Math.min(...sink.branches.map((b) => b(300 + rise, 300))), detail.total, 1e-12);
      }),
    );
  });

  it('applies the channel factor by default', () => {
    const plain = resultOf(prepareSink(black, { channelFactor: 1 })).heatDetail(348, 298);
    const usual = resultOf(prepareSink(black)).heatDetail(348, 298);
    expectClose(usual.filmCoefficient, defaultChannelFactor * plain.filmCoefficient, 1e-12);
  });

  it('radiates to walls colder than the air', () => {
    const sink = resultOf(prepareSink(black));
    expect(sink.heatDetail(330, 300, 280).radiation).toBeGreaterThan(sink.heatDetail(330, 300).radiation);
  });

  it('answers for every shape and mounting', () => {
    const pins = { section: 'round', pinThickness: 0.003, pinHeight: 0.025, columns: 10, rows: 10 } as const;
    const mountings = (['upright', 'crosswise', 'finsUp', 'finsDown'] as const).map((kind) => ({ kind }));
    const tilted = { kind: 'tilted', tilt: 0.5 } as const;
    for (const shape of ['fins', 'panel', 'finsBothSides', 'pins'] as const) {
      for (const mounting of [...mountings, tilted]) {
        const outcome = prepareSink({ ...black, shape, mounting, pins });
        const sink = resultOf(outcome);
        const plate = sink.steadyPlate(10, 300);
        expectClose(sink.heatDetail(plate, 300).total, 10, 1e-6);
        expectClose(tabulateSink(sink, 300).heat(plate - 300), 10, 3e-3);
        expect(sink.filmUncertainty(340, 300)).toBeGreaterThanOrEqual(0.15);
      }
    }
  });

  it('never cools better with level fins than with upright ones', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 45 }), between(0.1, 300), (finCount, rise) => {
        const heat = (kind: 'upright' | 'crosswise') =>
          resultOf(prepareSink({ ...black, finCount, mounting: { kind } })).heat(300 + rise, 300);
        expect(heat('crosswise')).toBeLessThanOrEqual(heat('upright'));
      }),
    );
  });

  it('weighs fins on both sides and pins', () => {
    const both = resultOf(prepareSink({ ...black, shape: 'finsBothSides' }));
    expectClose(both.finMass, 2 * resultOf(prepareSink(black)).finMass, 1e-12);
    const square = {
      section: 'square',
      pinThickness: 0.003,
      pinHeight: 0.025,
      columns: 10,
      rows: 10,
    } as const;
    const pins = resultOf(prepareSink({ ...black, shape: 'pins', pins: square }));
    expectClose(pins.finMass, 2700 * 100 * 0.003 * 0.003 * 0.025, 1e-9);
  });

  it('refuses pins that touch or are not described, and names a lean beyond the rule', () => {
    const touching = {
      section: 'square',
      pinThickness: 0.01,
      pinHeight: 0.025,
      columns: 10,
      rows: 4,
    } as const;
    const keyOf = (change: Partial<SinkDescription>) => {
      const outcome = prepareSink({ ...black, shape: 'pins', ...change });
      return outcome.ok ? '' : outcome.reason.key;
    };
    expect(keyOf({ pins: touching })).toBe('pinsDoNotFit');
    expect(keyOf({})).toBe('pinsMissing');
    const leaning = prepareSink({ ...black, mounting: { kind: 'tilted', tilt: 1.3 } });
    expect(leaning.ok && leaning.notes.map((n) => n.key)).toContain('tiltTooLarge');
  });
});
