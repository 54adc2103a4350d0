import { type AirPath, type Fan, fanCooling, operatingPoint } from './fan.ts';
import type { FinConditions, PreparedFinArray } from './finArray.ts';
import { forcedHeat, forcedUncertainty } from './forcedAir.ts';
import type { HeatAt, SinkLaws } from './sinkLaws.ts';

/** A fan on a sink and how its air is led. */
export interface FanOnSink {
  readonly fan: Fan;
  readonly path: AirPath;
}

/** Film over air temperature for which fan and sink are matched once, K: half of a working rise of 40 K. */
const matchingRise = 20;
/** Rise at which the notes of a fan are asked for, K. */
const notedRise = 40;
/** Air temperature at which they are, K. */
const notedAir = 298.15;

/**
 * A finned sink with a fan: the greater of what the fan takes off and what the sink gives off without it. Fan and
 * natural flow do not add, and the outer faces and radiation beside the blown channels are left out (cautious).
 *
 * The operating point is found once for each air temperature; it moves by less than 1 % with the plate temperature.
 */
export function withFan(
  still: SinkLaws,
  prepared: PreparedFinArray,
  { fan, path }: FanOnSink,
  conditions: FinConditions,
): SinkLaws {
  let matchedAir = Number.NaN;
  let velocity = 0;
  const blown: HeatAt = (plate, air) => {
    if (air !== matchedAir) {
      matchedAir = air;
      velocity = operatingPoint(prepared, fan, path, air + matchingRise, conditions.pressure).velocity;
    }
    return forcedHeat(prepared, velocity, plate, air, conditions.pressure, conditions.filmFactor).heat;
  };
  const heat: HeatAt = (plate, air) =>
    plate >= air ? Math.max(blown(plate, air), still.heat(plate, air)) : still.heat(plate, air);
  const { notes } = fanCooling(prepared, fan, path, notedAir + notedRise, notedAir, conditions.pressure);
  return {
    ...still,
    heat,
    branches: [heat],
    blown: (air) => operatingPoint(prepared, fan, path, air + matchingRise, conditions.pressure),
    detail: (plate, air, surroundings) => {
      const without = still.detail(plate, air, surroundings);
      const total = blown(plate, air);
      if (plate < air || total <= without.total) return without;
      const { filmCoefficient } = forcedHeat(
        prepared,
        velocity,
        plate,
        air,
        conditions.pressure,
        conditions.filmFactor,
      );
      return { total, convection: total, radiation: 0, filmCoefficient, channel: null };
    },
    uncertainty: Math.max(forcedUncertainty, still.uncertainty),
    notes: [...still.notes, ...notes],
  };
}
