import { describe, expect, it } from 'vitest';
import adiabatic from '../../../reference-data/adiabatic.json';
import ampacity from '../../../reference-data/ampacity.json';
import awg from '../../../reference-data/awg.json';
import batteries from '../../../reference-data/batteries.json';
import connectors from '../../../reference-data/connectors.json';
import copper from '../../../reference-data/copper.json';
import coreMaterials from '../../../reference-data/coreMaterials.json';
import fusePulses from '../../../reference-data/fusePulses.json';
import fuses from '../../../reference-data/fuses.json';
import class5 from '../../../reference-data/iec60228Class5.json';
import pathParts from '../../../reference-data/pathParts.json';
import sources from '../../../reference-data/sources-supply.json';
import wireInsulation from '../../../reference-data/wireInsulation.json';

const marks = ['primary', 'secondary', 'from memory', 'common practice', 'own choice', 'own computation'];

/** Every object in a table that names a title is a source. */
function sourcesIn(value: unknown): Record<string, unknown>[] {
  if (value === null || typeof value !== 'object') return [];
  const own = 'title' in value ? [value as Record<string, unknown>] : [];
  return [...own, ...Object.values(value).flatMap(sourcesIn)];
}

describe('reference tables of the supply', () => {
  it.each([
    ['adiabatic', adiabatic],
    ['ampacity', ampacity],
    ['awg', awg],
    ['batteries', batteries],
    ['connectors', connectors],
    ['copper', copper],
    ['coreMaterials', coreMaterials],
    ['fusePulses', fusePulses],
    ['fuses', fuses],
    ['iec60228Class5', class5],
    ['pathParts', pathParts],
    ['wireInsulation', wireInsulation],
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
