import { airProperties } from './air.ts';
import { radiantHeat } from './constants.ts';
import type { FinConditions } from './finArray.ts';
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

/** Surface in free air, m²: one or both faces and the two upright edges. */
export function panelArea(geometry: PanelGeometry): number {
  const faces = geometry.backExposed ? 2 : 1;
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
  const film = airProperties((plate + air) / 2, conditions.pressure);
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
