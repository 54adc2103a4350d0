import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const folder = new URL('../../../reference-data/', import.meta.url);
const tables = readdirSync(folder).filter((name) => name.endsWith('.json'));
const marks = ['primary', 'secondary', 'from memory', 'common practice', 'own choice', 'own computation'];

/** Every object in a table that names a title is a source. */
function sourcesIn(value: unknown): Record<string, unknown>[] {
  if (value === null || typeof value !== 'object') return [];
  const own = 'title' in value ? [value as Record<string, unknown>] : [];
  return [...own, ...Object.values(value).flatMap(sourcesIn)];
}

describe('tables of published facts', () => {
  it('are all here', () => {
    expect(tables.length).toBeGreaterThan(20);
  });

  it.each(tables)('%s names its sources, each with part, year and status', (name) => {
    const found = sourcesIn(JSON.parse(readFileSync(new URL(name, folder), 'utf8')));
    expect(found.length).toBeGreaterThan(0);
    for (const source of found) {
      expect(Object.keys(source).sort()).toEqual(['part', 'status', 'title', 'year']);
      expect(marks).toContain(source.status);
      expect(source.year === null || typeof source.year === 'number').toBe(true);
    }
  });
});
