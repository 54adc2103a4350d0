import { describe, expect, it } from 'vitest';
import { solutionAtEdge } from '../../../shared/band.ts';
import { examples } from '../../../shared/design/examples.ts';
import { figuresCsv } from '../../../src/engine/catalogue/figuresCsv.ts';
import { figuresJson } from '../../../src/engine/catalogue/figuresJson.ts';
import { band, solve } from '../../../src/engine/index.ts';
import { readCsv } from '../../readCsv.ts';

const columns = [
  'key',
  'label',
  'symbol',
  'value',
  'unit',
  'low edge',
  'high edge',
  'formula or method',
  'source',
];

describe.each(examples)('figures of $key', ({ design }) => {
  const solution = solve(design);
  const found = band(design, { samples: 40 });
  const sure = found.ok ? found.value : null;
  const [header, ...rows] = readCsv(figuresCsv(solution, sure));
  const byKey = new Map(rows.map((row) => [row[0], row]));

  it('the table has every quantity, to the last digit, and nothing twice', () => {
    expect(header).toEqual(columns);
    for (const row of rows) expect(row).toHaveLength(columns.length);
    expect(byKey.size).toBe(rows.length);
    for (const [key, value] of Object.entries(solutionAtEdge(solution, sure).values)) {
      expect(byKey.get(key)?.[3], key).toBe(String(value));
    }
  });

  it('numbers have no thousands, no decimal comma, no words but “no limit”', () => {
    for (const row of rows) {
      for (const cell of [row[3], row[5], row[6]])
        expect(cell, row[0]).toMatch(/^(-?\d+(\.\d+)?(e[-+]\d+)?|no limit|)$/);
      expect(row[3], row[0]).not.toBe('');
    }
  });

  it('edges stand where the band has them', () => {
    const edges = Object.entries(sure?.edges ?? {}).filter(([key]) => byKey.has(key));
    expect(edges.length).toBeGreaterThan(15);
    for (const [key, { low, high }] of edges) {
      const row = byKey.get(key)!;
      expect(row[5]).toBe(Number.isFinite(low) ? String(low) : 'no limit');
      expect(row[6]).toBe(high === null ? 'no limit' : String(high));
    }
    for (const row of readCsv(figuresCsv(solution)).slice(1)) expect([row[5], row[6]]).toEqual(['', '']);
  });

  it('everything that is found says how; units, sources and service names are written out', () => {
    for (const row of rows) {
      expect(row[4], row[0]).not.toBe('');
      expect(row[7], row[0]).not.toBe('');
    }
    expect(byKey.get('deviceHeatPep')?.[4]).toBe('W');
    expect(byKey.get('keyDown.junctionPeak')?.[1]).toContain(`${solution.words.keyDown.name}: `);
  });

  it('the JSON holds the same numbers', () => {
    const { quantities, band: told } = JSON.parse(figuresJson(design, solution, sure));
    for (const [key, { value }] of Object.entries(quantities as Record<string, { value: number }>)) {
      expect(Number(byKey.get(key)?.[3]), key).toBe(value);
    }
    expect(told.samples).toBe(40);
  });
});
