import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { prepareHeatPath, spreadingAt } from '../../../src/engine/couple/heatPath.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { solve } from '../../../src/engine/couple/solve.ts';
import { resultOf } from '../resultOf.ts';
import { anyDesign } from './designArbitrary.ts';
import { change, exampleOf } from './designs.ts';
import { watched } from './watched.ts';

const field = exampleOf('field-station-60w');
const placed = (...places: { x: number; y: number }[]): Design => change(field, { device: { places } });

describe('a heat path that cannot be', () => {
  it.each<[string, string, Design]>([
    ['a part over the edge', 'partOffPlate', placed({ x: 0.001, y: 0.05 }, { x: 0.1, y: 0.05 })],
    ['parts that overlap', 'partsOverlap', placed({ x: 0.05, y: 0.05 }, { x: 0.051, y: 0.05 })],
    ['fins that do not fit', 'finsDoNotFit', change(field, { sink: { finCount: 60 } })],
    ['pins that touch', 'pinsDoNotFit', change(field, { sink: { shape: 'pins', pinColumns: 100 } })],
    [
      'a fan whose curve does not fall',
      'fanCurve',
      change(field, { sink: { fan: 'along', fanMiddleFlow: 0.4, fanMiddlePressure: 5 } }),
    ],
  ])('%s is named, and nothing else is lost', (_, key, design) => {
    const { reasons, values, verdicts, services } = solve(design);
    expect(reasons.map((reason) => reason.key)).toContain(key);
    expect(reasons.find((reason) => reason.key === key)!.sentence).toMatch(/\.$/);
    expect(services.keyDown).toMatchObject({ ok: false, reason: { key } });
    // Supply and people stand as before.
    expect(values.inputCurrentPep).toBeCloseTo(solve(field).values.inputCurrentPep!, 9);
    expect(verdicts.find((verdict) => verdict.key === 'supply')?.headline).toContain('A at the peak');
  });

  it('a fan too weak for its fins still meets their drop, at little air', () => {
    const weak = change(field, { sink: { fan: 'along', fanPressure: 0.5, fanFlow: 1e-5 } });
    const { values, reasons } = solve(weak);
    expect(reasons).toEqual([]);
    expect(values.fanFlow).toBeGreaterThan(0);
    expect(values.fanFlow).toBeLessThan(1e-5);
  });

  it('text where a reading of a log should be is refused by its place', () => {
    const beacon = structuredClone(exampleOf('pocket-beacon-10w')) as unknown as {
      bench: { readings: { temperature: unknown }[] }[];
    };
    beacon.bench[0]!.readings[3]!.temperature = 'warm';
    const checked = checkDesign(beacon);
    expect(checked.ok).toBe(false);
    expect(!checked.ok && checked.faults[0]!.path).toBe('bench.0.readings.3.temperature');
  });
});

describe('the heat path', () => {
  it('spreads better in a plate that conducts better, and as found in its own metal', () => {
    const path = resultOf(prepare(field).path);
    const at = (conductivity: number) => resultOf(spreadingAt(field, path, conductivity));
    expect(at(path.sink.conductivity)).toBeCloseTo(path.spreading, 9);
    expect(at(2 * path.sink.conductivity)).toBeLessThan(path.spreading);
  });
});

describe('a heat path that is kept while other things are edited', () => {
  it('hangs on what it is kept by alone', () => {
    const read = new Set<string>();
    fc.assert(
      fc.property(anyDesign, (design) => {
        const parts = watched(design.converter.parts, 'parts.', read);
        const converter = watched({ ...design.converter, parts }, 'converter.', read);
        prepareHeatPath(watched({ ...design, converter }, '', read), 101_325);
      }),
      { numRuns: 300 },
    );
    const sections = ['sink', 'device', 'surroundings', 'bench', 'converter'];
    const allowed = [...sections, 'converter.kind', 'converter.heatTo', 'converter.parts', 'parts.phases'];
    expect([...read].filter((name) => !allowed.includes(name))).toEqual([]);
    expect(sections.filter((name) => !read.has(name))).toEqual([]);
  });

  it('is the same for another final and another wire, and another one for a wider plate', () => {
    const first = prepare(field).path;
    expect(prepare(change(field, { amplifier: { pep: 40 }, wiring: { length: 3 } })).path).toBe(first);
    const wider = prepare(change(field, { sink: { width: field.sink.width + 0.01 } })).path;
    expect(resultOf(wider).ratingHeat).toBeGreaterThan(resultOf(first).ratingHeat);
    expect(resultOf(prepare(field).path).ratingHeat).toBe(resultOf(first).ratingHeat);
  });
});
