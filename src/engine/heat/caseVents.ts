import { airProperties } from './air.ts';
import { gravity } from './constants.ts';

/** Openings of a case: as much free area high as low. */
export interface CaseVents {
  /** Of the lower openings, m². */
  readonly area: number;
  /** Between the middles of lower and upper openings, m. */
  readonly height: number;
}

/** Discharge coefficient of sharp-edged holes (from memory, 0.60 to 0.65). */
const discharge = 0.6;

/**
 * Heat that air rising through the vents of a case carries off, W: ρ cp q ΔT with the stack flow
 * q = Cd A √(2 g H ΔT/T)/√2, two equal openings in series, all inside air at one temperature.
 *
 * A guess: what stands between the openings, mesh over them and the warmth that collects under the lid are not known.
 *
 * @param inside mean temperature of the inside air, K; no flow is counted when it is cooler than the room
 * Source: stack effect as in ASHRAE Handbook Fundamentals, ventilation and infiltration (from memory).
 */
export function ventHeat(vents: CaseVents, inside: number, ambient: number, pressure: number): number {
  const rise = inside - ambient;
  if (!(rise > 0) || !(vents.area > 0)) return 0;
  const air = airProperties(inside, pressure);
  const flow = discharge * vents.area * Math.sqrt((gravity * vents.height * rise) / inside);
  return air.density * air.specificHeat * flow * rise;
}
