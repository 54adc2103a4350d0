import { describe, expect, it } from 'vitest';
import {
  exemptionDistance,
  exemptionNearZone,
  exemptionState,
  exemptPower,
} from '../../../src/engine/hazard/exposureExemption.ts';
import { exposureLimit } from '../../../src/engine/hazard/exposureLimits.ts';
import cases from '../cases/exposure.json';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

describe('exemption from routine evaluation (47 CFR 1.1307(b)(3)(i)(C) table 1)', () => {
  it.each([
    [1, 50, 1920 * 2500],
    [10, 10, 3450],
    [50, 2, 15.32],
  ])('%f MHz at %f m: %f W', (megahertz, distance, watts) => {
    expectClose(resultOf(exemptPower(megahertz * 1e6, distance)), watts, 1e-9);
  });

  it.each([1, 10, 50])('at %f MHz is S π R²/1.64 with full reflection, within 0.3 %%', (megahertz) => {
    const limit = resultOf(exposureLimit('fcc', 'general', megahertz * 1e6));
    const distance = 100;
    const derived = ((limit.density ?? 0) * Math.PI * distance * distance) / 1.64;
    expectClose(resultOf(exemptPower(megahertz * 1e6, distance)), derived, 3e-3);
  });

  // FCC 19-126 footnote 143: λ/2π is 20 cm at 239 MHz.
  it('λ/2π is 20 cm at 239 MHz', () => {
    expectClose(exemptionNearZone(239e6), 0.2, 3e-3);
  });

  it.each(cases.byBand.map((row) => [row.band, row] as const))(
    '%s: 100 W ERP (independent implementation)',
    (_, row) => {
      const frequency = row.f_MHz * 1e6;
      expectClose(resultOf(exemptionDistance(frequency, 100)), row.R_exempt_ERP100_m, 2e-3);
      expectClose(
        resultOf(exemptPower(frequency, exemptionNearZone(frequency) * (1 + 1e-12))),
        row.ERP_threshold_at_lambda_over_2pi_W,
        2e-3,
      );
    },
  );

  it.each([
    [14.35e6, 20, 100, 'exempt from routine evaluation'],
    [28.5e6, 3, 100, 'evaluation needed'],
    [14.35e6, 2, 1, 'inside λ/2π: exemption does not apply'],
  ] as const)('%f Hz, %f m, %f W: %s', (frequency, distance, power, state) => {
    expect(resultOf(exemptionState(frequency, distance, power))).toBe(state);
  });

  it('names a frequency outside the table', () => {
    const found = exemptionState(400e6, 10, 1);
    expect(found.ok ? '' : found.reason.key).toBe('exemptionFrequency');
  });
});
