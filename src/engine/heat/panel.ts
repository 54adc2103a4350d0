import { airProperties } from './air.ts';
import { radiantHeat } from './constants.ts';
import type { FinConditions } from './finArray.ts';
import { horizontalLength, horizontalPlateFilm } from './horizontalPlate.ts';
import { verticalPlateFilm } from './verticalPlate.ts';

/** A flat vertical panel without fins, SI. */
export interface PanelGeometry {
  /** Horizontal side. */
  readonly width: number;
  /** Vertical side, along which the air rises. */
  readonly length: number;
  readonly baseThickness: number;
  readonly emissivity: number;
  readonly backExposed: boolean;
  /** Part of an exposed back that is not covered; all of it if absent. */
  readonly backShare?: number;
}

export interface PanelHeat {
  readonly total: number;
  readonly convection: number;
  readonly radiation: number;
  /** W/(m² K) */
  readonly filmCoefficient: number;
  /** Rayleigh number on the height. */
  readonly rayleigh: number;
}

/** Free part of the back, 0 to 1. */
function backShareOf({ backExposed, backShare }: PanelGeometry): number {
  return backExposed ? (backShare ?? 1) : 0;
}

/** Surface in free air, m²: the face, the free part of the back and the two upright edges. */
export function panelArea(geometry: PanelGeometry): number {
  const faces = 1 + backShareOf(geometry);
  return (faces * geometry.width + 2 * geometry.baseThickness) * geometry.length;
}

/**
 * Heat given off by a vertical panel of uniform temperature, W: A [h ΔT + ε σ (T⁴ - T_sur⁴)], h by Churchill and Chu.
 * The level edges are left out (cautious). A large thin panel is not uniform; the plate series adds that.
 *
 * @param plate mean temperature of the panel, K
 * @param air K
 * @param surroundings of the walls in view, K
 * @param conditions pressure and film factor; the channel factor has no meaning here
 */
export function panelHeat(
  geometry: PanelGeometry,
  plate: number,
  air: number,
  surroundings: number,
  conditions: FinConditions,
): PanelHeat {
  const rise = plate - air;
  const size = Math.abs(rise);
  const film = airProperties((plate + air) / 2, conditions.pressure, conditions.gravityShare);
  const filmCoefficient = verticalPlateFilm(film, size, geometry.length) * conditions.filmFactor;
  const area = panelArea(geometry);
  const convection = area * filmCoefficient * rise;
  const radiation = area * geometry.emissivity * radiantHeat(plate, surroundings);
  return {
    total: convection + radiation,
    convection,
    radiation,
    filmCoefficient,
    rayleigh: film.rayleighFactor * size * geometry.length * geometry.length * geometry.length,
  };
}

/**
 * Heat given off by a level panel, W: the free face up or down, an exposed back the other way.
 *
 * @param faceUp the free face (the back, if exposed, then looks down)
 */
export function levelPanelHeat(
  geometry: PanelGeometry,
  faceUp: boolean,
  plate: number,
  air: number,
  surroundings: number,
  conditions: FinConditions,
): PanelHeat {
  const rise = plate - air;
  const size = Math.abs(rise);
  const film = airProperties((plate + air) / 2, conditions.pressure);
  const level = horizontalLength(geometry.width, geometry.length);
  const filmOf = (free: boolean) => horizontalPlateFilm(film, size, level, free) * conditions.filmFactor;
  // A panel cooler than its air turns the picture over.
  const facesFree = faceUp === rise >= 0;
  const filmCoefficient = filmOf(facesFree);
  const area = geometry.width * geometry.length;
  const back = backShareOf(geometry) * area * filmOf(!facesFree);
  const convection = (area * filmCoefficient + back) * rise;
  const faces = 1 + backShareOf(geometry);
  const radiation = faces * area * geometry.emissivity * radiantHeat(plate, surroundings);
  return {
    total: convection + radiation,
    convection,
    radiation,
    filmCoefficient,
    rayleigh: film.rayleighFactor * size * level * level * level,
  };
}
