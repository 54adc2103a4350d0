import { describe, expect, it } from 'vitest';
import padsTable from '../../../reference-data/interfacePads.json' with { type: 'json' };
import { interfaceResistance, type Pad, pressedShare } from '../../../src/engine/heat/interface.ts';
import { expectClose } from '../closeTo.ts';

const pads = Object.keys(padsTable.rows) as Pad[];
const squareCentimetre = 1e-4;

describe('interface between case and plate', () => {
  // Typical results for 1 cm², K/W (from memory): grease 0.3 to 1, mica with grease 1.8 to 2.4, silicone pad 2 to 3,
  // dry metal 0.5 to 2.7.
  it.each([
    ['grease', 0.3, 1],
    ['mica', 1.8, 2.4],
    ['siliconePad', 2, 3],
    ['bare', 0.5, 2.7],
  ] as const)('is typical for %s', (pad, low, high) => {
    const { typical } = interfaceResistance(pad, squareCentimetre);
    expect(typical).toBeGreaterThanOrEqual(low);
    expect(typical).toBeLessThanOrEqual(high);
  });

  // Cengel and Ghajar, table 3-1: dry aluminium plates of 10 µm roughness at 1 atm, 3640 W/(m² K).
  it('has the published dry joint inside its range', () => {
    const { low, high } = interfaceResistance('bare', squareCentimetre);
    expect(1 / (3640 * squareCentimetre)).toBeGreaterThan(low);
    expect(1 / (3640 * squareCentimetre)).toBeLessThan(high);
  });

  it.each(pads)('has its typical value inside its range: %s', (pad) => {
    const { low, typical, high } = interfaceResistance(pad, squareCentimetre);
    expect(low).toBeLessThan(typical);
    expect(high).toBeGreaterThan(typical);
  });

  it('goes with the reciprocal of the area', () => {
    expectClose(
      interfaceResistance('mica', 2e-4).typical,
      interfaceResistance('mica', 1e-4).typical / 2,
      1e-12,
    );
  });

  it('presses a tab less than a flange', () => {
    expect(pressedShare('tab')).toBeGreaterThanOrEqual(0.5);
    expect(pressedShare('tab')).toBeLessThanOrEqual(0.7);
    expect(pressedShare('flangeCeramic')).toBe(1);
  });
});
