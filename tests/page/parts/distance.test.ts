import fc from 'fast-check';
import { expect, test } from 'vitest';
import { writeDistanceUp, writeNearest } from '../../../src/page/parts/distance.ts';
import { plainSpaces } from '../support.tsx';

test.each([
  [0.2, 'metric', '0.2 m'],
  [0.21, 'metric', '0.3 m'],
  [3.1, 'metric', '3.1 m'],
  [12.3, 'metric', '13 m'],
  [101, 'metric', '110 m'],
  [3.1, 'inch', '11 ft'],
  [2, 'inch', '6.6 ft'],
  [0.2, 'inch', '0.7 ft'],
] as const)('%f m, %s: %s', (metres, system, words) => {
  expect(plainSpaces(writeDistanceUp(metres, system))).toBe(words);
});

test('a distance to keep is never written shorter than it is, in either unit', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 5000, noNaN: true }), (metres) => {
      const read = (words: string) => Number.parseFloat(words);
      expect(read(writeDistanceUp(metres, 'metric'))).toBeGreaterThanOrEqual(metres * (1 - 1e-6));
      expect(read(writeDistanceUp(metres, 'inch')) * 0.3048).toBeGreaterThanOrEqual(metres * (1 - 1e-6));
    }),
  );
});

test('how near people come is written as entered', () => {
  expect(plainSpaces(writeNearest(6, 'metric'))).toBe('6 m');
  expect(plainSpaces(writeNearest(3.048, 'inch'))).toBe('10 ft');
});
