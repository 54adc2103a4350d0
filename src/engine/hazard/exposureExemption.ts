import exemptionTable from '../../../reference-data/exposureExemption.json';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';

const megahertz = 1e6;

/** Gain of a half-wave dipole over an isotropic antenna. */
export const dipoleGain = 1.64;

/** The three states of the rule, in the words they are shown in. */
export const exemptionWords = {
  exempt: 'exempt from routine evaluation',
  needed: 'evaluation needed',
  near: 'inside λ/2π: exemption does not apply',
} as const;
export type ExemptionState = (typeof exemptionWords)[keyof typeof exemptionWords];

/** Reach of the near zone as the rule counts it, m: 47.7/f, f in MHz. FCC 19-126 footnote 143. */
export function exemptionNearZone(frequency: number): number {
  return exemptionTable.wavelengthOverTwoPi.value / (frequency / megahertz);
}

/**
 * Effective radiated power up to which a source at a distance needs no routine evaluation, W.
 *
 * 1920 R² (0.3 to 1.34 MHz), 3450 R²/f² (1.34 to 30), 3.83 R² (30 to 300). frequency: Hz; distance: m, from any part of
 * the radiating structure. Errors: `exemptionNearZone` closer than λ/2π, `exemptionFrequency` outside 0.3 to 300 MHz.
 * The exemption is from the evaluation only, never from the limits. Source: 47 CFR 1.1307(b)(3)(i)(C) table 1.
 */
export function exemptPower(frequency: number, distance: number): Outcome<number> {
  const row = exemptionRow(frequency);
  if (!row) {
    return failure('exemptionFrequency', 'The exemption table read here covers 0.3 to 300 MHz.', {
      frequency,
    });
  }
  const nearZone = exemptionNearZone(frequency);
  if (distance < nearZone) {
    return failure(
      'exemptionNearZone',
      `Closer than λ/2π (${nearZone.toPrecision(2)} m) the exemption does not apply.`,
      { distance, nearZone },
    );
  }
  return success(row.coefficient * distance * distance * (frequency / megahertz) ** row.power);
}

/** Least distance at which an effective radiated power is exempt from routine evaluation, m; never inside λ/2π. */
export function exemptionDistance(frequency: number, effectivePower: number): Outcome<number> {
  const row = exemptionRow(frequency);
  if (!row) {
    return failure('exemptionFrequency', 'The exemption table read here covers 0.3 to 300 MHz.', {
      frequency,
    });
  }
  const perSquareMetre = row.coefficient * (frequency / megahertz) ** row.power;
  return success(Math.max(exemptionNearZone(frequency), Math.sqrt(effectivePower / perSquareMetre)));
}

/** What the rule says of a source at a distance. effectivePower: average ERP, W (EIRP/1.64). */
export function exemptionState(
  frequency: number,
  distance: number,
  effectivePower: number,
): Outcome<ExemptionState> {
  const limit = exemptPower(frequency, distance);
  if (!limit.ok) return limit.reason.key === 'exemptionNearZone' ? success(exemptionWords.near) : limit;
  return success(effectivePower <= limit.value ? exemptionWords.exempt : exemptionWords.needed);
}

function exemptionRow(frequency: number) {
  const f = frequency / megahertz;
  const rows = exemptionTable.rows;
  return rows.find(
    (row, index) => f >= row.from && (f < row.to || (index === rows.length - 1 && f <= row.to)),
  );
}
