import { expect, test } from 'vitest';
import { sumOf, tallyOfRun } from '../../src/build/testReport.mjs';

const green = { numPassedTests: 7, numFailedTests: 0, testResults: [] };

test('a clean run counts what passed', () => {
  expect(tallyOfRun(green, 0)).toEqual({ passed: 7, failed: 0 });
});

test('a file that could not be read is a failure although no test in it failed', () => {
  const unread = { status: 'failed', assertionResults: [] };
  expect(tallyOfRun({ ...green, testResults: [unread, unread] }, 1)).toEqual({ passed: 7, failed: 2 });
});

test('a run that ends badly counts as a failure even when its report is green or missing', () => {
  expect(tallyOfRun(green, 1)).toEqual({ passed: 7, failed: 1 });
  expect(tallyOfRun(null, 1)).toEqual({ passed: 0, failed: 1 });
});

test('tallies add up', () => {
  expect(sumOf([tallyOfRun(green, 0), { passed: 0, failed: 1 }, { passed: 1, failed: 0 }])).toEqual({
    passed: 8,
    failed: 1,
  });
});
