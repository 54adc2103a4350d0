import { type Conductor, copperCoefficient, copperVolumetricHeat } from './conductor.ts';
import { heatLostPerLength, insulationConductivity } from './wireTemperature.ts';

/** Heat capacity of insulation by volume, J/(K m³). From memory. */
const insulationHeat = 1.6e6;
/** Step of the numeric slope, K. */
const slopeStep = 0.05;

/** Heat capacity of one metre of an insulated wire, J/(K m). */
export function wireHeatCapacity(conductor: Conductor): number {
  const outside = (Math.PI / 4) * conductor.outsideDiameter ** 2;
  const inside = (Math.PI / 4) * conductor.strandedDiameter ** 2;
  return copperVolumetricHeat * conductor.area + insulationHeat * (outside - inside);
}

/**
 * Time constant of a wire near a working temperature, s: C'/(dq'/dTc − I² R'20 0.00393).
 *
 * Speech is averaged completely (0.1 to 1 s), overs of a minute are not: use the r.m.s. over the longest over.
 * surface, ambient: K; current: A. Errors: none; null when the wire would run away.
 */
export function wireTimeConstant(
  conductor: Conductor,
  current: number,
  surface: number,
  ambient: number,
): number | null {
  const outside = conductor.outsideDiameter;
  const resistance = Math.log(outside / conductor.strandedDiameter) / (2 * Math.PI * insulationConductivity);
  const low = Math.max(ambient, surface - slopeStep);
  const high = surface + slopeStep;
  const lostLow = heatLostPerLength(outside, low, ambient);
  const lostHigh = heatLostPerLength(outside, high, ambient);
  const perCopper = (lostHigh - lostLow) / (high - low + (lostHigh - lostLow) * resistance);
  const conductance = perCopper - current * current * conductor.resistancePerLength * copperCoefficient;
  return conductance > 0 ? wireHeatCapacity(conductor) / conductance : null;
}
