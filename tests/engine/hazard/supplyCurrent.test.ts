import { describe, expect, it } from 'vitest';
import {
  greatestShortPower,
  shortSeverity,
  voltageSeverity,
} from '../../../src/engine/hazard/supplyCurrent.ts';
import { expectClose } from '../closeTo.ts';

describe('rail voltage', () => {
  it.each([
    [48, null],
    [49.9, null],
    [50, 'note'],
    [59.9, 'note'],
    [60, 'warning'],
    [119, 'warning'],
    [120, 'danger'],
  ])('%f V: %s', (voltage, severity) => {
    expect(voltageSeverity(voltage)).toBe(severity);
  });
});

describe('short across the source', () => {
  it.each([
    [10, 'caution'],
    [30, 'warning'],
    [528, 'danger'],
  ])('%f A: %s', (current, severity) => {
    expect(shortSeverity(current)).toBe(severity);
  });

  it('12.8 V behind 5 mΩ heat a short with 8.2 kW at most', () => {
    expectClose(greatestShortPower(12.8, 0.005), 8192, 1e-9);
  });
});
