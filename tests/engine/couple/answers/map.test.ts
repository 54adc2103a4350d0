import { describe, expect, it } from 'vitest';
import type { LimitMap } from '../../../../shared/answers.ts';
import { withValue } from '../../../../shared/design/leaves.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { usualAxis } from '../../../../shared/design/usualAxis.ts';
import { services } from '../../../../shared/solution.ts';
import { map, mapSteps } from '../../../../src/engine/couple/answers/map.ts';
import { solve } from '../../../../src/engine/index.ts';
import { exampleOf } from '../designs.ts';

const dataFinal = exampleOf('data-final-100w');
const columns = 12;
const rows = 40;
const x = usualAxis(dataFinal, 'surroundings.ambient');
const y = usualAxis(dataFinal, 'amplifier.pep');

function mapOf(design: Design): LimitMap {
  const found = map(design, { x, y, columns, rows });
  if (!found.ok) throw new Error(found.reason.sentence);
  return found.value;
}

const found = mapOf(dataFinal);

function marginAt(ambient: number, pep: number, service: string): number {
  const design = withValue(withValue(dataFinal, x.path, ambient), y.path, pep);
  return solve(design).values[`${service}.junctionMargin`]!;
}

describe('the map of power against ambient', () => {
  it('has a line where a fresh solve has no margin left, within a row of the map', () => {
    const rowHeight = (y.to - y.from) / rows;
    let seen = 0;
    for (const line of found.lines) {
      line.crossings.forEach((crossings, i) => {
        for (const pep of crossings) {
          const below = marginAt(found.columns[i]!, Math.max(y.from, pep - rowHeight), line.service);
          const above = marginAt(found.columns[i]!, Math.min(y.to, pep + rowHeight), line.service);
          expect(below * above, `${line.service} at ${pep} W`).toBeLessThanOrEqual(0);
          seen += 1;
        }
      });
    }
    expect(seen).toBeGreaterThan(4);
  });

  it('knows on which side of the line a service is fine', () => {
    for (const line of found.lines) {
      line.fineBelow.forEach((fine, i) => {
        expect(fine).toBe(marginAt(found.columns[i]!, y.from, line.service) >= 0);
      });
    }
  });

  it('falls with the temperature of the room', () => {
    const ssb = found.lines.find((line) => line.service === 'ssb')!;
    const single = ssb.crossings.flatMap((crossings) => (crossings.length === 1 ? [crossings[0]!] : []));
    expect(single.length).toBeGreaterThan(2);
    single.slice(1).forEach((pep, i) => {
      expect(pep).toBeLessThan(single[i]!);
    });
  });

  it('counts the designs it looked at: fewer than the cells it covers', () => {
    expect(found.solved).toBeGreaterThan(columns * 8);
    expect(found.solved).toBeLessThan(columns * rows);
  });

  it('yields after each column, so that it can be shown and stopped', () => {
    const steps = mapSteps(dataFinal, { x, y, columns: 3, rows });
    expect(steps.next()).toEqual({ done: false, value: 1 / 3 });
    expect(steps.next().value).toBeCloseTo(2 / 3, 12);
  });

  it('refuses axes that are none', () => {
    const ask = (a: string, b: string) =>
      map(dataFinal, { x: { path: a, from: 0, to: 1 }, y: { path: b, from: 0, to: 1 }, columns: 3, rows: 9 });
    const keyOf = (outcome: ReturnType<typeof ask>) => (outcome.ok ? 'found' : outcome.reason.key);
    expect(keyOf(ask('sink.length', 'sink.length'))).toBe('sameAxis');
    expect(keyOf(ask('sink.nonsense', 'sink.length'))).toBe('noSuchField');
    expect(keyOf(ask('surroundings.ambient', 'sink.length'))).toBe('emptyAxis');
  });

  it('keeps services that the class refuses empty', () => {
    const beacon = exampleOf('pocket-beacon-10w');
    const outcome = map(beacon, { x, y: usualAxis(beacon, 'amplifier.pep'), columns: 3, rows: 9 });
    const ssb = outcome.ok ? outcome.value.lines.find((line) => line.service === 'ssb')! : null;
    expect(ssb?.fineBelow).toEqual([null, null, null]);
    expect(services).toHaveLength(3);
  });
});
