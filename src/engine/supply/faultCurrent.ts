import { note, type Outcome, success } from '../../../shared/outcome.ts';

/** No source has less resistance than this, Ω: it bounds the current when the design says zero. Own choice. */
export const leastSourceResistance = 1e-3;

/** A current-limited supply lets about this much of its limit through into a short. Own choice. */
const supplyOvershoot = 1.3;

export interface FaultInput {
  readonly kind: 'leadAcid' | 'lithiumIronPhosphate' | 'mainsSupply' | 'vehicle' | 'other';
  readonly openVoltage: number;
  readonly internalResistance: number;
  /** From the source terminals to the short, Ω. */
  readonly pathResistance: number;
  readonly continuousCurrent: number | null;
  readonly peakCurrent: number | null;
}

export interface FaultCurrent {
  /** Prospective current, A. */
  readonly current: number;
  readonly limitedBy: 'resistance' | 'supply';
  /** Power turned into heat in source and path, W. */
  readonly power: number;
}

/**
 * Current into a short at the end of a path, A.
 *
 * Isc = Voc/(Rsource + Rpath). A mains supply with a stated limit is taken to hold 1.3 times that limit; batteries and
 * vehicles are not limited by what their protection promises, because it acts late.
 * Never fails: a source given as 0 Ω is computed with 1 mΩ, and a note says so.
 */
export function faultCurrent(input: FaultInput): Outcome<FaultCurrent> {
  const resistance = input.internalResistance + input.pathResistance;
  const used = Math.max(resistance, leastSourceResistance);
  const notes =
    used > resistance
      ? [
          note(
            'assumed',
            'faultResistanceAssumed',
            'The source is entered with next to no resistance: the fault current is computed with 1 mΩ.',
            { resistance: used },
          ),
        ]
      : [];
  const byResistance = input.openVoltage / used;
  const limit = supplyLimit(input);
  if (limit !== null && limit < byResistance) {
    return success({ current: limit, limitedBy: 'supply', power: limit * limit * used }, notes);
  }
  return success(
    { current: byResistance, limitedBy: 'resistance', power: input.openVoltage * byResistance },
    notes,
  );
}

function supplyLimit(input: FaultInput): number | null {
  if (input.kind !== 'mainsSupply') return null;
  const stated = input.peakCurrent ?? input.continuousCurrent;
  return stated === null ? null : stated * supplyOvershoot;
}
