import { describe, expect, it } from 'vitest';
import { contactTableAt } from '../../../src/engine/hazard/contactTable.ts';
import { expectClose } from '../closeTo.ts';

describe('contact currents beside the power that reaches them', () => {
  it('at 1.8 MHz: levels of IEEE C95.1 and ICNIRP 2010 in rising order', () => {
    const rows = contactTableAt(1.8e6, 50);
    expect(rows.map((row) => [row.key, Math.round(row.level * 1e4) / 10])).toEqual([
      ['unrestricted.touch', 16.7],
      ['icnirp.public', 20],
      ['icnirp.occupational', 40],
      ['restricted.touch', 50],
      ['brush', 50],
      ['restricted.grasp', 100],
    ]);
    expectClose(rows[0]?.power ?? 0, 0.014, 0.01);
  });

  it('above 10 MHz ICNIRP lists none', () => {
    expect(contactTableAt(50e6, 50).some((row) => row.key.startsWith('icnirp'))).toBe(false);
  });
});
