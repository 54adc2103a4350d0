import { describe, expect, it } from 'vitest';
import { bandNames, bandTopEdge } from '../../../src/engine/hazard/amateurBands.ts';
import {
  exposureLimit,
  type LimitSet,
  limitSets,
  type Tier,
} from '../../../src/engine/hazard/exposureLimits.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const at = (set: LimitSet, tier: Tier, megahertz: number) =>
  resultOf(exposureLimit(set, tier, megahertz * 1e6));

describe('47 CFR 1.1310(e)(1) table 1', () => {
  it.each([
    ['general', 0.3, 614, 1.63, 1000],
    ['general', 1.339999, 614, 1.63, 1000],
    ['general', 1.34, 614.9, 1.634, 1002.4],
    ['general', 3, 274.7, 0.73, 200],
    ['general', 10, 82.4, 0.219, 18],
    ['general', 29.999999, 27.47, 0.073, 2],
    ['general', 30, 27.5, 0.073, 2],
    ['general', 54, 27.5, 0.073, 2],
    ['controlled', 2.999999, 614, 1.63, 1000],
    ['controlled', 3, 614, 1.63, 1000],
    ['controlled', 10, 184.2, 0.489, 90],
    ['controlled', 30, 61.4, 0.163, 10],
  ] as const)('%s, %f MHz: %f V/m, %f A/m, %f W/m²', (tier, megahertz, electric, magnetic, density) => {
    const limit = at('fcc', tier, megahertz);
    expectClose(limit.electric, electric, 1e-3);
    expectClose(limit.magnetic, magnetic, 1e-3);
    expectClose(limit.density ?? 0, density, 1e-3);
  });

  it('averages over 30 min for everybody and 6 min for the trained household', () => {
    expect(at('fcc', 'general', 14).averaging).toBe(1800);
    expect(at('fcc', 'controlled', 14).averaging).toBe(360);
  });

  it.each([0.5, 10, 50])(
    'at %f MHz E²/377 and 377 H² agree with the power density within 1 %',
    (megahertz) => {
      const limit = at('fcc', 'general', megahertz);
      expectClose(limit.electric ** 2 / 377, limit.density ?? 0, 0.01);
      expectClose(limit.magnetic ** 2 * 377, limit.density ?? 0, 0.01);
    },
  );
});

describe('other sets', () => {
  it.each([
    ['icnirp2020', 'general', 7, 300 / 7 ** 0.7, 2.2 / 7, null, 1800],
    ['icnirp2020', 'general', 30, 27.7, 0.073, 2, 1800],
    ['icnirp2020', 'controlled', 7, 660 / 7 ** 0.7, 0.7, null, 1800],
    ['icnirp2020Local', 'general', 7, 671 / 7 ** 0.7, 0.7, null, 360],
    ['icnirp2020Local', 'controlled', 50, 139, 0.36, 50, 360],
    ['eu1999', 'general', 4, 43.5, 0.1825, null, 360],
    ['eu1999', 'controlled', 5, 122, 0.32, null, 360],
  ] as const)('%s, %s, %f MHz', (set, tier, megahertz, electric, magnetic, density, averaging) => {
    const limit = at(set, tier, megahertz);
    expectClose(limit.electric, electric, 1e-12);
    expectClose(limit.magnetic, magnetic, 1e-12);
    expect(limit.density).toBe(density);
    expect(limit.averaging).toBe(averaging);
  });

  it('EU 1999 steps from 27.5 to 28 V/m at 10 MHz, as printed', () => {
    expectClose(at('eu1999', 'general', 9.999999).electric, 27.5, 1e-3);
    expect(at('eu1999', 'general', 10).electric).toBe(28);
  });

  it('levels from memory carry a note, read ones none', () => {
    const memory = exposureLimit('eu1999', 'general', 14e6);
    expect(memory.ok && memory.notes.map((one) => one.kind)).toEqual(['from memory']);
    const read = exposureLimit('fcc', 'general', 14e6);
    expect(read.ok && read.notes).toEqual([]);
  });
});

describe('every set', () => {
  it('has levels on every band, and the controlled tier is never the stricter', () => {
    for (const set of limitSets) {
      for (const band of bandNames) {
        const general = resultOf(exposureLimit(set, 'general', bandTopEdge(band)));
        const controlled = resultOf(exposureLimit(set, 'controlled', bandTopEdge(band)));
        expect(controlled.electric).toBeGreaterThanOrEqual(general.electric);
        expect(controlled.magnetic).toBeGreaterThanOrEqual(general.magnetic);
      }
    }
  });

  it('names a frequency it does not know', () => {
    const found = exposureLimit('eu1999', 'controlled', 0.5e6);
    expect(found.ok ? '' : found.reason.key).toBe('noExposureLimit');
  });
});
