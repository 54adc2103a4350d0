import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { fieldsOf, leafAt } from '../../../shared/design/leaves.ts';
import { defaultUnit } from '../../../src/engine/quantity/units.ts';
import { applies } from '../../../src/page/state/applies.ts';
import { givenGroups, type UnitOf } from '../../../src/page/state/given.ts';
import { plainSpaces } from '../support.tsx';

const metric: UnitOf = (_path, spec) => defaultUnit(spec, 'metric');
const first = examples[0]!.design;

function rowAt(path: string, design = first) {
  const rows = givenGroups(design, metric).flatMap((group) => group.rows);
  const found = rows.find((row) => row.path === path);
  return found && { ...found, value: plainSpaces(found.value) };
}

describe('given values as text', () => {
  it.each(examples)('$key: every field that has a meaning is there once, or in its list', ({ design }) => {
    const rows = givenGroups(design, metric).flatMap((group) => group.rows);
    const paths = rows.map((row) => row.path);
    expect(new Set(paths).size).toBe(paths.length);
    for (const { path } of fieldsOf(design)) {
      if (path === 'name' || !applies(design, path)) continue;
      expect(
        paths.some((each) => path === each || path.startsWith(`${each}.`)),
        path,
      ).toBe(true);
    }
    for (const row of rows) expect(row.value, row.path).not.toMatch(/undefined|null|NaN|\[object/);
  });

  it.each([
    ['sink.width', '150 mm', false],
    ['source.kind', 'LiFePO4 battery', false],
    ['amplifier.efficiencyMeasured', 'yes', false],
    ['amplifier.biasInReceive', 'no', true],
    ['sink.mass', '–', true],
    ['surroundings.ambient', '30 °C', false],
  ])('%s is %s', (path, value, idle) => {
    expect(rowAt(path)).toMatchObject({ value, idle });
  });

  it('a list is told row by row, its empty cells left out', () => {
    expect(rowAt('converter.points')?.list).toMatchObject({
      noun: 'Point',
      items: [/12.V, 4.A, 94.%/, /91/].map((each) => expect.stringMatching(each)),
    });
    expect(rowAt('wiring.path')?.list?.items[1]).toMatch(/^connector, .*, 2$/);
  });

  it('how a value was measured, and bench runs', () => {
    const doubted = { ...first, doubts: { 'sink.finHeight': 'caliper' as const, 'sink.width': 0.002 } };
    expect(rowAt('doubts.sink.finHeight', doubted)?.value).toBe('caliper, ±0.1 mm');
    expect(rowAt('doubts.sink.width', doubted)?.value).toBe('±2 mm');
    expect(leafAt(first, 'sink.finHeight')).toBe(0.03);
  });
});
