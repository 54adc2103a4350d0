import { type AirProperties, airProperties } from './air.ts';
import { stefanBoltzmann } from './constants.ts';
import type { FinConditions, PreparedFinArray } from './finArray.ts';
import { finEfficiency } from './finEfficiency.ts';
import { horizontalLength, horizontalPlateFilm } from './horizontalPlate.ts';
import { verticalPlateFilm } from './verticalPlate.ts';

/**
 * How a finned sink is mounted. Upright: plate vertical, fins vertical. Crosswise: plate vertical, fins level. Fins up or
 * down: plate level.
 */
export type Mounting =
  | { readonly kind: 'upright' }
  /** Upright fins leaning from the vertical by this angle, rad, at most 60°. */
  | { readonly kind: 'tilted'; readonly tilt: number }
  | { readonly kind: 'crosswise' }
  | { readonly kind: 'finsUp' }
  | { readonly kind: 'finsDown' };

/** Largest tilt for which gravity along the fins is a fair stand-in, rad (60°, from memory). */
export const largestTilt = Math.PI / 3;

/** Share of the fins-up film coefficient that is left with the fins down: 0.27/0.54 of the plate forms (own choice). */
const downShare = 0.5;

/** Standard deviation of ln(film coefficient) by mounting (own choice; upright see the sink). */
export const mountingUncertainty = { crosswise: 0.25, finsUp: 0.25, finsDown: 0.35 } as const;

/** Part of gravity that drives the air along tilted fins. Source: g cos θ rule, Cengel and Ghajar, section 9-2. */
export function gravityShare(mounting: Mounting): number {
  return mounting.kind === 'tilted' ? Math.cos(Math.min(Math.abs(mounting.tilt), largestTilt)) : 1;
}

/**
 * Mean Nusselt number on the gap of level fins on a level plate, open upwards:
 * Nu = 6.7e-4 Ra {1 - exp[-(7460/Ra)^0.44]}^1.7.
 *
 * @param rayleigh Ra on the gap, 200 to 6e5; about 25 %. For large Ra 0.53 Ra^(1/4), in line with a plate.
 *
 * Source: Jones and Smith, J. Heat Transfer 92 (1970), from memory; large-Ra limit checked.
 */
export function jonesSmith(rayleigh: number): number {
  if (rayleigh <= 0) return 0;
  return 6.7e-4 * rayleigh * (-Math.expm1(-((7460 / rayleigh) ** 0.44))) ** 1.7;
}

export interface MountedHeat {
  readonly total: number;
  readonly convection: number;
  readonly radiation: number;
  /** Between the fins; of the envelope when crosswise, W/(m² K). */
  readonly filmCoefficient: number;
  readonly finEfficiency: number;
}

interface State {
  readonly plate: number;
  readonly air: number;
  readonly rise: number;
  readonly film: AirProperties;
  /** σ(T² + T_sur²)(T + T_sur), W/(m² K). */
  readonly radiantFilm: number;
  readonly radiant: number;
}

function stateAt(plate: number, air: number, surroundings: number, pressure: number): State {
  const radiantFilm =
    stefanBoltzmann * (plate * plate + surroundings * surroundings) * (plate + surroundings);
  return {
    plate,
    air,
    rise: plate - air,
    film: airProperties((plate + air) / 2, pressure),
    radiantFilm,
    radiant: radiantFilm * (plate - surroundings),
  };
}

/** Fin efficiency in the channels for a film coefficient there. */
function channelEfficiency(prepared: PreparedFinArray, h: number, radiantFilm: number): number {
  const { geometry, exchange } = prepared;
  const radiating = (exchange.fins * radiantFilm) / (2 * geometry.finHeight * geometry.length);
  return finEfficiency(
    h + radiating,
    geometry.conductivity,
    prepared.efficiencyThickness,
    prepared.correctedHeight,
  );
}

function outerEfficiency(prepared: PreparedFinArray, h: number, radiantFilm: number): number {
  const { conductivity, emissivity } = prepared.geometry;
  return finEfficiency(
    h + emissivity * radiantFilm,
    conductivity,
    prepared.efficiencyThickness,
    prepared.correctedHeight,
  );
}

function radiationOf(prepared: PreparedFinArray, eta: number, etaOuter: number, radiant: number): number {
  const { exchange } = prepared;
  const outside = prepared.outerArea * etaOuter + prepared.tipArea * eta + prepared.backArea;
  return (
    (prepared.channelCount * (exchange.fins * eta + exchange.base) + prepared.geometry.emissivity * outside) *
    radiant
  );
}

/**
 * Heat of a sink lying level, fins up or down, W. Channels by Jones and Smith (half of it with the fins down: an
 * engineering assumption, no published formula could be confirmed); outer faces as vertical plates as high as fins and
 * plate; an exposed back faces the other way. Fins on both sides: one side up, one down.
 */
function levelHeat(
  prepared: PreparedFinArray,
  state: State,
  conditions: FinConditions,
  up: boolean,
): MountedHeat {
  const { geometry } = prepared;
  const size = Math.abs(state.rise);
  const rayleigh = state.film.rayleighFactor * size * prepared.gap * prepared.gap * prepared.gap;
  const free = (jonesSmith(rayleigh) * state.film.conductivity * conditions.filmFactor) / prepared.gap;
  // A plate cooler than its air turns the picture over.
  const facesFree = up === state.rise >= 0;
  const share = geometry.bothSides ? (1 + downShare) / 2 : facesFree ? 1 : downShare;
  const h = free * share;
  const side =
    verticalPlateFilm(state.film, size, geometry.finHeight + geometry.baseThickness) * conditions.filmFactor;
  const level = horizontalLength(geometry.width, geometry.length);
  const back = horizontalPlateFilm(state.film, size, level, !facesFree) * conditions.filmFactor;
  const eta = channelEfficiency(prepared, h, state.radiantFilm);
  const etaOuter = outerEfficiency(prepared, side, state.radiantFilm);
  const convection =
    (h * (prepared.channelFinArea * eta + prepared.channelBaseArea) +
      side * prepared.outerArea * etaOuter +
      back * prepared.backArea) *
    state.rise;
  const radiation = radiationOf(prepared, eta, etaOuter, state.radiant);
  return { total: convection + radiation, convection, radiation, filmCoefficient: h, finEfficiency: eta };
}

/**
 * Heat of level fins on an upright plate, W: air cannot run along the channels, so that only the block around the fins
 * counts, W L + 2 (H + tb)(W + L), as a vertical plate of height W. A cautious stand-in; radiation as always.
 */
function crosswiseHeat(prepared: PreparedFinArray, state: State, conditions: FinConditions): MountedHeat {
  const { width, length, finHeight, baseThickness, bothSides } = prepared.geometry;
  const sides = bothSides ? 2 : 1;
  const h = verticalPlateFilm(state.film, Math.abs(state.rise), width) * conditions.filmFactor;
  const envelope = sides * width * length + 2 * (sides * finHeight + baseThickness) * (width + length);
  const convection = h * (envelope + prepared.backArea) * state.rise;
  const eta = channelEfficiency(prepared, h, state.radiantFilm);
  const etaOuter = outerEfficiency(prepared, h, state.radiantFilm);
  const radiation = radiationOf(prepared, eta, etaOuter, state.radiant);
  return { total: convection + radiation, convection, radiation, filmCoefficient: h, finEfficiency: eta };
}

/**
 * Heat of a finned sink that is not mounted upright, W.
 *
 * Crosswise fins never beat upright ones: the caller takes the smaller of this and the upright heat.
 *
 * @param mounting crosswise, fins up or fins down; upright and tilted sinks are `finArrayHeat`
 * Source: Jones and Smith (1970) for level fins; the rest own choice, cautious. Uncertainty: `mountingUncertainty`.
 */
export function mountedFinHeat(
  prepared: PreparedFinArray,
  mounting: { readonly kind: 'crosswise' | 'finsUp' | 'finsDown' },
  plate: number,
  air: number,
  surroundings: number,
  conditions: FinConditions,
): MountedHeat {
  const state = stateAt(plate, air, surroundings, conditions.pressure);
  if (mounting.kind === 'crosswise') return crosswiseHeat(prepared, state, conditions);
  return levelHeat(prepared, state, conditions, mounting.kind === 'finsUp');
}
