import { expect } from 'vitest';

/** Checks a value against an expected one within a relative tolerance (absolute when the expected value is 0). */
export function expectClose(value: number, expected: number, relative: number, what = ''): void {
  const gap = Math.abs(value - expected) / (expected === 0 ? 1 : Math.abs(expected));
  expect(gap, `${what} ${value} against ${expected}`).toBeLessThanOrEqual(relative);
}
