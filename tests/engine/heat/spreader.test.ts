import { describe, expect, it } from 'vitest';
import { metalOf } from '../../../src/engine/heat/materials.ts';
import { plateSpread } from '../../../src/engine/heat/plateSpread.ts';
import { type Spreader, spreaderResistance } from '../../../src/engine/heat/spreader.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const copper: Spreader = {
  width: 0.03,
  length: 0.03,
  thickness: 0.005,
  metal: metalOf('copper'),
  joint: 0.05,
  faceWidth: 0.01,
  faceLength: 0.015,
};
const plate = { width: 0.12, length: 0.1, thickness: 0.005, conductivity: 200, film: 60 };

/** Face of the part to the plate's mean, K/W, on a plate of aluminium. */
function whole(spreader: Spreader): number {
  const local = resultOf(
    plateSpread(plate, [{ x: 0.06, y: 0.05, width: spreader.width, length: spreader.length }]),
  ).meanMatrix[0]![0]!;
  return local + resultOf(spreaderResistance(spreader, local));
}

describe('a spreader plate', () => {
  it('as large as the part is a slab and a joint: t/(k A) + R_joint', () => {
    const slab = { ...copper, width: 0.01, length: 0.015 };
    expectClose(resultOf(spreaderResistance(slab, 0.3)), 0.005 / (401 * 0.01 * 0.015) + 0.05, 1e-6);
  });

  it('helps a small part on a thin plate, copper more than aluminium', () => {
    const bare = resultOf(plateSpread(plate, [{ x: 0.06, y: 0.05, width: 0.01, length: 0.015 }]))
      .meanMatrix[0]![0]!;
    const withCopper = whole({ ...copper, joint: 0.02 });
    expect(withCopper).toBeLessThan(bare);
    expect(withCopper).toBeLessThan(whole({ ...copper, joint: 0.02, metal: metalOf('sheet') }));
  });

  it('grows with the joint under it by at least that much', () => {
    const better = resultOf(spreaderResistance(copper, 0.3));
    const worse = resultOf(spreaderResistance({ ...copper, joint: 0.15 }, 0.3));
    expect(worse - better).toBeGreaterThanOrEqual(0.1);
  });

  it('is no better than heat spread at once over a block of the same size and no worse than none', () => {
    const least = copper.thickness / (401 * 0.03 * 0.03) + copper.joint;
    const most = copper.thickness / (401 * 0.01 * 0.015) + copper.joint + 0.5;
    const found = resultOf(spreaderResistance(copper, 0.3));
    expect(found).toBeGreaterThan(least);
    expect(found).toBeLessThan(most);
  });
});
