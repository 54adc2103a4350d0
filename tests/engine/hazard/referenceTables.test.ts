import { describe, expect, it } from 'vitest';
import bands from '../../../reference-data/amateurBands.json';
import beryllium from '../../../reference-data/beryllium.json';
import contact from '../../../reference-data/contactCurrent.json';
import exemption from '../../../reference-data/exposureExemption.json';
import limits from '../../../reference-data/exposureLimits.json';
import modes from '../../../reference-data/exposureModes.json';
import rings from '../../../reference-data/ringMetals.json';
import sources from '../../../reference-data/sources-hazard.json';
import touchLimits from '../../../reference-data/touchLimits.json';
import touch from '../../../reference-data/touchTemperature.json';

const marks = ['primary', 'secondary', 'from memory', 'common practice', 'own choice', 'own computation'];

/** Every object in a table that names a title is a source. */
function sourcesIn(value: unknown): Record<string, unknown>[] {
  if (value === null || typeof value !== 'object') return [];
  const own = 'title' in value ? [value as Record<string, unknown>] : [];
  return [...own, ...Object.values(value).flatMap(sourcesIn)];
}

describe('reference tables of the hazards', () => {
  it.each([
    ['amateurBands', bands],
    ['beryllium', beryllium],
    ['contactCurrent', contact],
    ['exposureExemption', exemption],
    ['exposureLimits', limits],
    ['exposureModes', modes],
    ['ringMetals', rings],
    ['touchLimits', touchLimits],
    ['touchTemperature', touch],
    ['sources', sources],
  ])('%s names its sources, each with part, year and status', (_, table) => {
    const found = sourcesIn(table);
    expect(found.length).toBeGreaterThan(0);
    for (const source of found) {
      expect(Object.keys(source).sort()).toEqual(['part', 'status', 'title', 'year']);
      expect(marks).toContain(source.status);
      expect(source.year === null || typeof source.year === 'number').toBe(true);
    }
  });
});
