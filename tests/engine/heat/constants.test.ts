import { describe, expect, it } from 'vitest';
import { radiantHeat } from '../../../src/engine/heat/constants.ts';
import { expectClose } from '../closeTo.ts';

describe('black radiation', () => {
  // Textbook value (from memory): a black face at 300 K radiates 459 W/m² to nothing.
  it('is σT⁴', () => {
    expectClose(radiantHeat(300, 0), 459.3, 1e-4);
  });

  it('is nothing between equals and odd', () => {
    expect(radiantHeat(310, 310)).toBe(0);
    expect(radiantHeat(300, 350)).toBe(-radiantHeat(350, 300));
  });
});
