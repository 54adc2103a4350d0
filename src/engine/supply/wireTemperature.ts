import insulationTable from '../../../reference-data/wireInsulation.json';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { airProperties } from '../heat/air.ts';
import { radiantHeat, standardPressure } from '../heat/constants.ts';
import { powerRoot } from '../heat/monotoneRoot.ts';
import { type Conductor, copperFactor } from './conductor.ts';

/** Emissivity of wire insulation of any colour. Own choice. */
export const insulationEmissivity = 0.9;
/** Thermal conductivity of PVC insulation, W/(m K). IEC 60287-2-1. */
export const insulationConductivity = insulationTable.conductivity.pvc;
/** Width at which a search for a temperature ends, K: far below the doubt. */
const searchTolerance = 1e-4;
/** Rise at which the first guess of the heat given off is made, K. */
const trialRise = 10;
/** Copper melts here, K: beyond it there is no wire to have a temperature. */
const copperMelts = 1357.8;

export interface WireSurroundings {
  /** Still air around the wire, K. */
  readonly ambient: number;
  /** Current-carrying wires that lie together, the wire itself counted; the supply pair is 2. */
  readonly together?: number;
  /** Air pressure, Pa; sea level if not given. */
  readonly pressure?: number;
}

export interface WireTemperature {
  /** Of the copper, K. */
  readonly conductor: number;
  /** Of the outside of the insulation, K. */
  readonly surface: number;
  /** Heat given off by one metre of one wire, W/m. */
  readonly heatPerLength: number;
}

/**
 * Ampacity of each of several touching wires, all loaded, over that of one wire alone.
 *
 * Heat balance on the outline of the group: 2 wires 0.87, 3 0.77, 4 0.71, 5 0.67, 6 0.63, 7 and more 0.60. Own
 * computation; published figures for 2 to 5 wires run from 0.94 to 0.50 and bracket it.
 */
export function togetherFactor(count: number): number {
  const rows = insulationTable.together;
  const row = rows[Math.min(Math.max(Math.round(count), 1), rows.length) - 1];
  return row ? row.factor : 1;
}

/**
 * Nusselt number of a long horizontal cylinder in still air, on its diameter.
 *
 * Nu = (0.60 + 0.387 Ra^(1/6)/(1 + (0.559/Pr)^(9/16))^(8/27))², 1e-5 < Ra < 1e12. Source: Churchill and Chu 1975.
 */
export function cylinderNusselt(rayleigh: number, prandtl: number): number {
  const shape = (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27);
  return (0.6 + (0.387 * rayleigh ** (1 / 6)) / shape) ** 2;
}

/**
 * Heat lost by one metre of a horizontal wire in still air, W/m, by convection and radiation.
 *
 * q' = π D (h (Ts − Ta) + ε σ (Ts⁴ − Ta⁴)), h = Nu k/D, air at the mean of surface and ambient.
 *
 * outside: diameter, m; surface, ambient: K; pressure: Pa. Valid for 1e-5 < Ra < 1e12, long horizontal wire.
 * Source: Churchill and Chu 1975; air after the US Standard Atmosphere 1976.
 */
export function heatLostPerLength(
  outside: number,
  surface: number,
  ambient: number,
  pressure = standardPressure,
): number {
  const rise = surface - ambient;
  if (rise <= 0) return 0;
  const air = airProperties((surface + ambient) / 2, pressure);
  const rayleigh = air.rayleighFactor * rise * outside ** 3;
  const convection = (cylinderNusselt(rayleigh, air.prandtl) * air.conductivity * rise) / outside;
  return Math.PI * outside * (convection + insulationEmissivity * radiantHeat(surface, ambient));
}

/** Thermal resistance of one metre of insulation, K m/W: ln(Do/Dc)/(2 π k). */
function insulationResistance(conductor: Conductor): number {
  return (
    Math.log(conductor.outsideDiameter / conductor.strandedDiameter) / (2 * Math.PI * insulationConductivity)
  );
}

/**
 * Current at which a wire in still air reaches a given copper temperature, A.
 *
 * The current found for one wire alone is lowered by `togetherFactor`. Zero when the ambient is as warm as the limit.
 *
 * limit: copper temperature, K. Valid for a long horizontal wire at rest in air; the model stands 5 % above the
 * free-air table of NFPA 70 on average and 13.5 % at worst. Sources: `heatLostPerLength`; IEC 60287-2-1.
 */
export function modelAmpacity(conductor: Conductor, limit: number, surroundings: WireSurroundings): number {
  const { ambient, together = 1, pressure = standardPressure } = surroundings;
  if (limit <= ambient) return 0;
  const asked = { limit, ambient, together, pressure };
  const known = lastAmpacity.get(conductor);
  if (known && sameQuestion(known.asked, asked)) return known.current;
  const current = findAmpacity(conductor, asked);
  lastAmpacity.set(conductor, { asked, current });
  return current;
}

type AmpacityQuestion = Readonly<Record<'limit' | 'ambient' | 'together' | 'pressure', number>>;

/** The last answer for each conductor: a table of all sizes is asked for with the same air again and again. */
const lastAmpacity = new WeakMap<Conductor, { readonly asked: AmpacityQuestion; readonly current: number }>();

function sameQuestion(one: AmpacityQuestion, other: AmpacityQuestion): boolean {
  return (
    one.limit === other.limit &&
    one.ambient === other.ambient &&
    one.together === other.together &&
    one.pressure === other.pressure
  );
}

function findAmpacity(
  conductor: Conductor,
  { limit, ambient, together, pressure }: AmpacityQuestion,
): number {
  const resistance = insulationResistance(conductor);
  const outside = conductor.outsideDiameter;
  // Copper over air as a share of what is allowed rises with the rise of the surface, nearly in proportion.
  const reached = (rise: number): number =>
    (rise + heatLostPerLength(outside, ambient + rise, ambient, pressure) * resistance) / (limit - ambient);
  const surface = ambient + powerRoot(reached, (limit - ambient) / 2, searchTolerance, limit - ambient);
  const heat = heatLostPerLength(outside, surface, ambient, pressure);
  const alone = Math.sqrt(heat / (conductor.resistancePerLength * copperFactor(limit)));
  return alone * togetherFactor(together);
}

/**
 * Steady temperature of a wire that carries a current in still air.
 *
 * Solves I² R'(Tc) = q'(Ts) with Tc = Ts + q' ln(Do/Dc)/(2 π k). Wires that lie together are computed as one wire
 * alone with the current raised by 1/`togetherFactor`.
 *
 * current: r.m.s., A. Errors: `wireMelts` when no temperature below the melting point of copper balances the heat.
 * Doubt: ±25 % of the rise.
 */
export function wireTemperature(
  conductor: Conductor,
  current: number,
  surroundings: WireSurroundings,
): Outcome<WireTemperature> {
  const { ambient, together = 1, pressure = standardPressure } = surroundings;
  const equivalent = current / togetherFactor(together);
  const resistance = insulationResistance(conductor);
  const heatAt20 = equivalent * equivalent * conductor.resistancePerLength;
  const outside = conductor.outsideDiameter;
  if (current <= 0) return success({ conductor: ambient, surface: ambient, heatPerLength: 0 });
  // Loss over heat grows nearly as a power of the rise: the loss by more than it, the heat with the warm copper.
  const balance = (rise: number): number => {
    const lost = heatLostPerLength(outside, ambient + rise, ambient, pressure);
    return lost / (heatAt20 * copperFactor(ambient + rise + lost * resistance));
  };
  const surface = ambient + powerRoot(balance, trialRise, searchTolerance, copperMelts - ambient);
  const lost = heatLostPerLength(outside, surface, ambient, pressure);
  const copper = surface + lost * resistance;
  if (copper > copperMelts) return melts(conductor, current);
  return success({ conductor: copper, surface, heatPerLength: lost });
}

function melts(conductor: Conductor, current: number): Outcome<WireTemperature> {
  return failure(
    'wireMelts',
    `${conductor.size} cannot carry ${current.toPrecision(3)} A: the copper would melt before it gave the heat off.`,
    { current },
  );
}
