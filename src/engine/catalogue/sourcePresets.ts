import batteryTable from '../../../reference-data/batteries.json' with { type: 'json' };
import type { SourceInput } from '../../../shared/design/schema.ts';

type Kind = SourceInput['kind'];
type Typical = Omit<SourceInput, 'kind' | 'capacity' | 'continuousCurrent' | 'peakCurrent'>;

const hours = 3600;
const { kinds, sources } = batteryTable;

/** Resistance goes with the size of a battery: the upper figure of the table at its capacity, held at both ends, Ω. */
const leadAcidResistance = { small: 7 * hours, resistance: sources.leadAcid.resistance['7 Ah'][1]! };
const lithiumResistance = {
  small: 3.6 * hours,
  resistance: sources.lithiumIronPhosphate.resistance['3.6 Ah'][1]!,
};

function scaled({ small, resistance }: { small: number; resistance: number }, capacity: number | null) {
  return capacity === null ? resistance : Number((resistance * Math.min(1, small / capacity)).toPrecision(2));
}

/**
 * Typical figures of a kind of source, in SI, for a capacity in coulombs; null for a source of one's own.
 *
 * Upper ends of the usual resistances, full and rested. Sources: `batteries.json`, partly from memory; measure yours.
 */
export function typicalSource(kind: Kind, capacity: number | null): Typical | null {
  switch (kind) {
    case 'leadAcid':
      return {
        openVoltage: sources.leadAcid.full[1]!,
        internalResistance: Math.max(
          scaled(leadAcidResistance, capacity),
          sources.leadAcid.resistance['100 Ah'][0]!,
        ),
        capacityTime: 20 * hours,
        peukertExponent: kinds.gel.exponent.usual,
        emptyVoltage: sources.leadAcid.empty[0]!,
        emptyResistanceFactor: 2,
        chargingVoltage: sources.leadAcid.charging[0]!,
      };
    case 'lithiumIronPhosphate':
      return {
        openVoltage: sources.lithiumIronPhosphate.full[0]!,
        internalResistance: Math.max(scaled(lithiumResistance, capacity), 0.005),
        capacityTime: 5 * hours,
        peukertExponent: kinds.lithiumIronPhosphate.exponent.usual,
        emptyVoltage: 12.8,
        emptyResistanceFactor: 1.5,
        chargingVoltage: sources.lithiumIronPhosphate.charging[1]!,
      };
    case 'mainsSupply':
      return {
        openVoltage: sources.mainsSupply.full[1]!,
        internalResistance: sources.mainsSupply.resistance['inside its limit'][1]!,
        capacityTime: 20 * hours,
        peukertExponent: 1,
        emptyVoltage: null,
        emptyResistanceFactor: 1,
        chargingVoltage: null,
      };
    case 'vehicle':
      return {
        openVoltage: sources.vehicle.full[0]!,
        internalResistance: sources.vehicle.resistance['at the battery'][1]!,
        capacityTime: 20 * hours,
        peukertExponent: kinds.flooded.exponent.usual,
        emptyVoltage: 12,
        emptyResistanceFactor: 2,
        chargingVoltage: sources.vehicle.full[1]!,
      };
    case 'other':
      return null;
  }
}
