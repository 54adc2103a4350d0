import { describe, expect, it } from 'vitest';
import {
  bleederResistance,
  storedEnergy,
  storedEnergySeverity,
} from '../../../src/engine/hazard/storedEnergy.ts';
import { expectClose } from '../closeTo.ts';

describe('energy of a charged capacitor', () => {
  it.each([
    [0.01, 13.8, 0.95],
    [0.1, 13.8, 9.5],
    [58, 13.8, 5500],
    [4700e-6, 48, 5.4],
  ])('%f F at %f V: %f J', (capacitance, voltage, joules) => {
    expectClose(storedEnergy(capacitance, voltage), joules, 6e-3);
  });

  it.each([
    [0.99, null],
    [1, 'caution'],
    [99, 'caution'],
    [100, 'warning'],
  ])('%f J is spoken of as %s', (joules, severity) => {
    expect(storedEnergySeverity(joules)).toBe(severity);
  });
});

describe('bleeder', () => {
  it('takes the rail to 5 % in three time constants', () => {
    const resistance = bleederResistance(1e-3, 48, 48 * 0.05, 3);
    expectClose(resistance * 1e-3, 1, 2e-3);
  });

  it('has no resistance to offer when there is nothing to discharge', () => {
    expect(bleederResistance(1e-3, 10, 12, 3)).toBe(0);
    expect(bleederResistance(0, 48, 2, 3)).toBe(0);
  });
});
