import { expect, test } from 'vitest';
import { median, tableOf } from '../bench/figures.ts';

test('the median is the middle value, or the mean of the two in the middle', () => {
  expect(median([5, 1, 9])).toBe(5);
  expect(median([4, 1, 9, 2])).toBe(3);
});

test('the table says which median meets its target', () => {
  const table = tableOf([
    { name: 'quick', unit: 'ms', runs: [1, 2, 30], target: 5 },
    { name: 'slow', unit: 'kB', runs: [95], target: 90 },
  ]);
  expect(table).toMatch(/quick +2\.00 ms +1\.00 - 30\.0 +5 ms +met/);
  expect(table).toMatch(/slow +95\.0 kB +90 kB +NOT MET/);
});
