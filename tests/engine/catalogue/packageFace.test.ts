import { describe, expect, it } from 'vitest';
import { deviceSchema } from '../../../shared/design/amplifierSchema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { usualFace } from '../../../src/engine/catalogue/packageFace.ts';
import { exampleOf } from '../couple/designs.ts';

const packages = ['tab', 'largeTab', 'can', 'flangeCeramic', 'stud', 'mouldedRf'] as const;

describe('usual contact face of a package', () => {
  it.each(packages)('%s: within the ranges of the sheet, the long side first', (name) => {
    const face = usualFace(name)!;
    expect(face.contactLength).toBeGreaterThanOrEqual(face.contactWidth);
    expect(deviceSchema.safeParse({ ...startDesign.device, package: name, ...face }).success).toBe(true);
  });

  it('is none for another package', () => {
    expect(usualFace('other')).toBeNull();
  });

  it.each(['field-station-60w', 'data-final-100w', 'pocket-beacon-10w'] as const)(
    'is the one of the example %s',
    (name) => {
      const { device } = exampleOf(name);
      expect(device).toMatchObject(usualFace(device.package)!);
    },
  );
});
