import { describe, expect, it } from 'vitest';
import { bleederFor, storedEnergy, storedEnergySeverity } from '../../../src/engine/hazard/storedEnergy.ts';
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
  it('takes the rail to 5 % in the time asked, three time constants', () => {
    const { resistance } = bleederFor(1e-3, 48, 3);
    expectClose(Math.exp(-3 / (resistance * 1e-3)), 0.05, 5e-3);
  });

  it('warms by V²/R while the rail is on', () => {
    const { resistance, power } = bleederFor(0.1, 48, 30);
    expectClose(resistance, 100, 1e-9);
    expectClose(power, 23.04, 1e-9);
  });
});
