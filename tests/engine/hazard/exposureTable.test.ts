import { describe, expect, it } from 'vitest';
import { exposureDistance } from '../../../src/engine/hazard/exposureDistance.ts';
import { exemptionWords } from '../../../src/engine/hazard/exposureExemption.ts';
import { exemptionPower, exposureTable } from '../../../src/engine/hazard/exposureTable.ts';
import cases from '../cases/exposure.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { wireOn20 } from './exposureInput.ts';

const dipoleGain = 10 * Math.log10(1.64);

describe('exposure of every band', () => {
  const rows = exposureTable({ ...wireOn20, gain: dipoleGain });

  it('has the ten HF bands and 6 m, longest wave first, the chosen one marked', () => {
    expect(rows.map((row) => row.band)).toEqual([
      '160 m',
      '80 m',
      '60 m',
      '40 m',
      '30 m',
      '20 m',
      '17 m',
      '15 m',
      '12 m',
      '10 m',
      '6 m',
    ]);
    expect(rows.filter((row) => row.chosen).map((row) => row.band)).toEqual(['20 m']);
  });

  it.each(cases.byBand.map((row) => [row.band, row] as const))(
    '%s at its top edge: distance rounded up (independent implementation)',
    (band, published) => {
      const row = rows.find((one) => one.band === band.replace('/75', ''));
      expectClose(row?.frequency ?? 0, published.f_MHz * 1e6, 1e-9);
      const distance = published.R_gp_m['k2.56'];
      expect(row?.distance).toBeGreaterThanOrEqual(Math.max(0.2, distance) * (1 - 6e-3));
      expect(row?.distance).toBeLessThanOrEqual(distance + 0.11);
      expect(row?.exemptFrom).toBeGreaterThanOrEqual(published.R_exempt_ERP100_m * (1 - 2e-3));
      expect(row?.exemptFrom).toBeLessThanOrEqual(1.1 * published.R_exempt_ERP100_m + 0.1);
    },
  );

  it('has the same average power on all bands and the same distance as the band alone', () => {
    for (const row of rows) {
      expect(row.averagePower).toBe(100);
      const alone = exposureDistance({ ...wireOn20, gain: dipoleGain, band: row.band });
      expect(row.distance).toBe(resultOf(alone).shown);
    }
  });

  it('has its US exemption in three states', () => {
    const at = (nearestPerson: number) =>
      exposureTable({ ...wireOn20, nearestPerson }).map((row) => row.exemption);
    expect(at(30).every((state) => state === exemptionWords.exempt)).toBe(true);
    expect(new Set(at(4))).toEqual(new Set(Object.values(exemptionWords)));
    expect(at(0.5).every((state) => state === exemptionWords.near)).toBe(true);
    expect(exposureTable({ ...wireOn20, nearestPerson: 4 })[0]?.judgedAt).toBe(4);
    expect(rows[5]?.judgedAt).toBe(rows[5]?.distance);
  });

  it('gives any other antenna limits and the exemption test but no distance', () => {
    const other = exposureTable({ ...wireOn20, kind: 'other', nearestPerson: 30 });
    for (const row of other) {
      expect(row.distance).toBeNull();
      expect(row.electric).toBeGreaterThan(0);
      expect(row.exemption).toBe(exemptionWords.exempt);
    }
    expect(exposureTable({ ...wireOn20, kind: 'other' })[0]?.exemption).toBeNull();
  });

  it.each(['fcc', 'icnirp2020', 'eu1999'] as const)('%s covers every band in both tiers', (limitSet) => {
    for (const tier of ['general', 'controlled'] as const) {
      expect(exposureTable({ ...wireOn20, limitSet, tier })).toHaveLength(11);
    }
  });
});

describe('power for the exemption test', () => {
  it('is EIRP over 1.64, and for a short antenna not less than the average power', () => {
    expectClose(exemptionPower({ ...wireOn20, gain: dipoleGain }), 100, 1e-9);
    expectClose(exemptionPower({ ...wireOn20, kind: 'smallLoop', gain: -10 }), 100, 1e-9);
    expectClose(
      exemptionPower({ ...wireOn20, kind: 'smallLoaded', gain: 5.15 }),
      (10 ** 0.515 * 100) / 1.64,
      1e-9,
    );
  });

  it('is averaged over 30 min even where the limit is averaged over 6', () => {
    const overs = {
      ...wireOn20,
      gain: dipoleGain,
      exposureBy: 'overs',
      exposureOver: 420,
      exposurePause: 420,
    } as const;
    expectClose(exemptionPower({ ...overs, tier: 'controlled' }), (100 * 16) / 30, 1e-9);
    expect(exposureTable({ ...overs, tier: 'controlled' })[0]?.averagePower).toBe(100);
  });
});
