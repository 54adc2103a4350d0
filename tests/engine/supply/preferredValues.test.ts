import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { preferredValue, type Series, seriesValues } from '../../../src/engine/supply/preferredValues.ts';

const all: Series[] = ['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192'];

describe('series of IEC 60063 (from memory)', () => {
  it('E6 and E12', () => {
    expect(seriesValues('E3')).toEqual([1, 2.2, 4.7]);
    expect(seriesValues('E6')).toEqual([1, 1.5, 2.2, 3.3, 4.7, 6.8]);
    expect(seriesValues('E12')).toEqual([1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2]);
  });

  it('E96 has its printed values in a few places, E192 its one exception', () => {
    expect(seriesValues('E96').slice(0, 6)).toEqual([1, 1.02, 1.05, 1.07, 1.1, 1.13]);
    expect(seriesValues('E96').at(-1)).toBe(9.76);
    expect(seriesValues('E48').at(-1)).toBe(9.53);
    expect(seriesValues('E192')).toContain(9.2);
    expect(seriesValues('E192')).not.toContain(9.19);
  });

  it.each(all)('%s has its number of values, rising', (series) => {
    const values = seriesValues(series);
    expect(values).toHaveLength(Number(series.slice(1)));
    expect(values).toEqual([...new Set(values)].sort((first, second) => first - second));
  });
});

describe('the preferred value next to one', () => {
  it.each([
    ['E12', 3.9e-6, 'nearest', 3.9e-6],
    ['E12', 4.1e-6, 'nearest', 3.9e-6],
    ['E12', 9.2e3, 'nearest', 1e4],
    ['E6', 9.9, 'up', 10],
    ['E6', 10.1, 'down', 10],
    ['E24', 0.00029, 'down', 0.00027],
  ] as const)('%s, %f, %s: %f', (series, value, direction, preferred) => {
    expect(preferredValue(series, value, direction)).toBe(preferred);
  });

  it('up is not below, down is not above, nearest is one of them, and preferred values stay', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.double({ min: 1e-12, max: 1e9, noNaN: true }),
        (series, value) => {
          const up = preferredValue(series, value, 'up');
          const down = preferredValue(series, value, 'down');
          const near = preferredValue(series, value);
          return (
            up >= value * (1 - 1e-8) &&
            down <= value * (1 + 1e-8) &&
            (near === up || near === down) &&
            preferredValue(series, near, 'up') === near &&
            preferredValue(series, near, 'down') === near
          );
        },
      ),
      { numRuns: 300 },
    );
  });
});
