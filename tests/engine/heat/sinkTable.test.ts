import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareSink, type SinkDescription } from '../../../src/engine/heat/sink.ts';
import {
  type SinkAirTable,
  type SinkReading,
  tabulateSink,
  tabulateSinkOverAir,
} from '../../../src/engine/heat/sinkTable.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { between } from './geometries.ts';
import { blackSink } from './referenceSinks.ts';

const sinkOf = (change: Partial<SinkDescription>) => resultOf(prepareSink({ ...blackSink, ...change }));

/** Open gaps, gaps where the two channel correlations cross, tight gaps, a bare panel, a large sink. */
const sinks = [
  sinkOf({}),
  sinkOf({ finCount: 14, finish: 'bare' }),
  sinkOf({ finCount: 17, width: 0.08, finThickness: 0.0018, finHeight: 0.03 }),
  sinkOf({ finCount: 30 }),
  sinkOf({ shape: 'panel', finish: 'bare' }),
  sinkOf({ width: 0.5, length: 0.4, finCount: 30, finHeight: 0.06, alloy: 'cast' }),
];
const anySink = fc.constantFrom(...sinks);
const anyAir = fc.double({ min: 233, max: 343, noNaN: true });

describe('sink table', () => {
  it('reads what the sink computes', () => {
    fc.assert(
      fc.property(anySink, anyAir, between(0.05, 400), (sink, air, rise) => {
        const table = tabulateSink(sink, air);
        expectClose(table.heat(rise), sink.heat(air + rise, air), rise < 0.5 ? 2e-5 : 1e-5);
      }),
    );
  });

  it('has the slope of what it reads', () => {
    const table = tabulateSink(sinks[0]!, 300);
    for (const rise of [0.02, 0.3, 5, 60, 350, 500]) {
      const step = rise * 1e-5;
      expectClose(table.slope(rise), (table.heat(rise + step) - table.heat(rise - step)) / (2 * step), 1e-5);
    }
  });

  it('rises everywhere and is odd', () => {
    fc.assert(
      fc.property(anySink, between(1e-4, 3000), (sink, rise) => {
        const table = tabulateSink(sink, 300);
        expect(table.heat(1.001 * rise)).toBeGreaterThan(table.heat(rise));
        expect(table.slope(rise)).toBeGreaterThan(0);
        expect(table.heat(-rise)).toBe(-table.heat(rise));
      }),
    );
    expect(tabulateSink(sinks[0]!, 300).heat(0)).toBe(0);
  });

  it('can be asked backwards, far beyond its range too', () => {
    fc.assert(
      fc.property(anySink, between(1e-4, 2000), (sink, rise) => {
        const table = tabulateSink(sink, 300);
        expectClose(table.rise(table.heat(rise)), rise, 1e-9);
        expectClose(table.rise(table.heat(-rise)), -rise, 1e-9);
      }),
    );
  });
});

describe('sink table over air temperature', () => {
  const tables = sinks.map((sink) => ({ sink, table: tabulateSinkOverAir(sink, 290, 440) }));
  const readingOf = (table: SinkAirTable, rise: number, air: number) => {
    const reading: SinkReading = { heat: 0, riseSlope: 0, airSlope: 0 };
    table.read(rise, air, reading);
    return reading;
  };

  it('reads what the sink computes', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...tables),
        fc.double({ min: 290, max: 440, noNaN: true }),
        between(1, 300),
        ({ sink, table }, air, rise) => {
          expectClose(table.heat(rise, air), sink.heat(air + rise, air), 3e-4);
          expect(readingOf(table, rise, air).heat).toBe(table.heat(rise, air));
          expect(table.heat(-rise, air)).toBe(-table.heat(rise, air));
          expect(readingOf(table, rise, air).riseSlope).toBeGreaterThan(0);
        },
      ),
    );
  });

  it.each([0.02, 3, 40, 250, 600])('has the slopes of what it reads, at %d K', (rise) => {
    const { table } = tables[0]!;
    for (const air of [300, 352, 433]) {
      const reading = readingOf(table, rise, air);
      const step = rise * 1e-4;
      const byRise = (table.heat(rise + step, air) - table.heat(rise - step, air)) / (2 * step);
      const byAir = (table.heat(rise, air + 0.01) - table.heat(rise, air - 0.01)) / 0.02;
      expectClose(reading.riseSlope, byRise, 1e-4);
      // Above the table the slope over air is that of the last rise.
      if (rise < 400) expectClose(reading.airSlope, byAir, 1e-4);
    }
  });
});
