import { type AirProperties, airProperties } from './air.ts';
import { gravity, radiantHeat, stefanBoltzmann } from './constants.ts';
import type { FinConditions } from './finArray.ts';
import { verticalPlateFilm } from './verticalPlate.ts';

/** A field of straight pins on one side of an upright plate, SI. */
export interface PinGeometry {
  /** Of the plate, level side. */
  readonly width: number;
  /** Of the plate, upright side. */
  readonly length: number;
  readonly baseThickness: number;
  readonly section: 'round' | 'square';
  /** Diameter or side of the square. */
  readonly pinThickness: number;
  readonly pinHeight: number;
  /** Pins side by side, along the width. */
  readonly columns: number;
  /** Pins above each other, along the length. */
  readonly rows: number;
  readonly conductivity: number;
  readonly emissivity: number;
  readonly backExposed: boolean;
  /** Part of an exposed back that is not covered; all of it if absent. */
  readonly backShare?: number;
}

/** Standard deviation of ln(film coefficient) for pins: no array measurement was at hand (own choice). */
export const pinUncertainty = 0.3;

export interface PreparedPins {
  readonly geometry: PinGeometry;
  readonly count: number;
  /** Level gap between columns of evenly spaced pins, m. */
  readonly gap: number;
  /** Sides of all pins, with half a thickness for the tip, m². */
  readonly pinArea: number;
  /** Plate between the pins, m². */
  readonly baseArea: number;
  readonly edgeArea: number;
  readonly backArea: number;
  /** Permeability of the field for air rising through it, m². */
  readonly permeability: number;
  /** Drag at speed: pressure gradient over ρ u², 1/m. */
  readonly inertia: number;
  /** Exchange area for radiation of field and plate, m². */
  readonly exchange: number;
  /** Perimeter over section of a pin, 1/m. */
  readonly slenderness: number;
}

export interface PinHeat {
  readonly total: number;
  readonly convection: number;
  readonly radiation: number;
  /** Effective, on pins and plate between them, W/(m² K). */
  readonly filmCoefficient: number;
  readonly pinEfficiency: number;
  /** Convection of all pins as if each stood alone, W. */
  readonly alone: number;
  /** Heat that the air rising through the field could carry off at most, W. */
  readonly carried: number;
}

/** Level gap between pins, m; zero or negative when they do not fit. Also needed along the length. */
export function pinGap(side: number, count: number, pinThickness: number): number {
  return side / count - pinThickness;
}

/** Drag coefficient of a cylinder in a row at Reynolds numbers of tens to hundreds (from memory, about 1 to 1.5). */
const dragCoefficient = 1.3;

/**
 * Permeability of a field of parallel cylinders for flow across them, m², by the free-surface cell model:
 * K = d²/(32 φ)[ln(1/φ) + (φ² - 1)/(φ² + 1)], φ the solid share.
 *
 * Source: Happel, AIChE Journal 5 (1959), from memory; limits checked (K → 0 as φ → 1).
 */
export function crossPermeability(diameter: number, solidShare: number): number {
  const square = solidShare * solidShare;
  return ((diameter * diameter) / (32 * solidShare)) * (-Math.log(solidShare) + (square - 1) / (square + 1));
}

/** Geometry of a pin field, once; the caller refuses pins that touch. */
export function preparePins(geometry: PinGeometry): PreparedPins {
  const { width, length, pinThickness: d, pinHeight, columns, rows, section } = geometry;
  const count = columns * rows;
  const perimeter = section === 'round' ? Math.PI * d : 4 * d;
  const sectionArea = section === 'round' ? (Math.PI / 4) * d * d : d * d;
  const solidShare = (count * sectionArea) / (width * length);
  const pitch = width / columns;
  const gap = pinGap(width, columns, d);
  const inside = count * perimeter * pinHeight + width * length;
  const envelope = width * length + 2 * pinHeight * (width + length);
  const escapeFactor = Math.min(1, envelope / inside);
  return {
    geometry,
    count,
    gap,
    pinArea: count * perimeter * (pinHeight + sectionArea / perimeter),
    baseArea: width * length - count * sectionArea,
    edgeArea: 2 * geometry.baseThickness * length,
    backArea: geometry.backExposed ? width * length * (geometry.backShare ?? 1) : 0,
    // A round cylinder of the same section stands for a square pin.
    permeability: crossPermeability(Math.sqrt((4 * sectionArea) / Math.PI), solidShare),
    inertia: ((dragCoefficient * d) / 2) * (count / (width * length)) * (pitch / gap) ** 2,
    exchange: inside / (1 / geometry.emissivity - 1 + 1 / escapeFactor),
    slenderness: perimeter / sectionArea,
  };
}

/**
 * Mean Nusselt number of a long level cylinder in free air:
 * Nu = {0.60 + 0.387 Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}², Ra on the diameter, up to 1e12.
 *
 * Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049, as in Incropera, eq. 9.34 (from memory).
 */
export function levelCylinder(rayleigh: number, prandtl: number): number {
  const term =
    0.6 + (0.387 * Math.sqrt(Math.cbrt(rayleigh))) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27);
  return term * term;
}

/** Speed of air all at plate temperature rising through the field, m/s: ρ g β ΔT = μ u/K + b ρ u². */
function risingSpeed(
  prepared: PreparedPins,
  air: AirProperties,
  rise: number,
  filmTemperature: number,
): number {
  const drive = (gravity * rise) / filmTemperature;
  const linear = air.kinematicViscosity / prepared.permeability;
  const root = Math.sqrt(linear * linear + 4 * prepared.inertia * drive);
  return (2 * drive) / (linear + root);
}

/**
 * Heat given off by a pin field on an upright plate of uniform temperature, W.
 *
 * Two limits, joined as Bar-Cohen and Rohsenow join theirs, (Q1^-2 + Q2^-2)^(-1/2): every pin alone in free air with the
 * plate between them as a plain plate; and the air that can rise through the field against its drag, leaving at plate
 * temperature. Air drawn in from the front, and the draught that pins make for each other, are left out (cautious).
 * Radiation: the field as one grey cavity behind its envelope. Edges and back as plain plates.
 *
 * @returns uncertainty of the film coefficient: `pinUncertainty`
 * Source: own assembly; no published measurement of a pin field was at hand. Parts: Churchill and Chu (1975), Happel (1959).
 */
export function pinHeat(
  prepared: PreparedPins,
  plate: number,
  air: number,
  surroundings: number,
  conditions: FinConditions,
): PinHeat {
  const { geometry } = prepared;
  const { pinThickness, width, length, pinHeight, emissivity, conductivity } = geometry;
  const rise = plate - air;
  const size = Math.abs(rise);
  const filmTemperature = (plate + air) / 2;
  const film = airProperties(filmTemperature, conditions.pressure, conditions.gravityShare);
  const rayleigh = film.rayleighFactor * size * pinThickness * pinThickness * pinThickness;
  const single =
    (levelCylinder(rayleigh, film.prandtl) * film.conductivity * conditions.filmFactor) / pinThickness;
  const flat = verticalPlateFilm(film, size, length) * conditions.filmFactor;

  const radiantFilm =
    stefanBoltzmann * (plate * plate + surroundings * surroundings) * (plate + surroundings);
  const radiating = (prepared.exchange * radiantFilm) / (prepared.pinArea + prepared.baseArea);
  const eta = pinEfficiency(single + radiating, conductivity, prepared.slenderness, pinHeight);

  const alone = (single * prepared.pinArea * eta + flat * prepared.baseArea) * size;
  const speed = risingSpeed(prepared, film, size, filmTemperature) * conditions.filmFactor;
  const carried = film.density * film.specificHeat * speed * width * pinHeight * size;
  const field = size > 0 ? (alone * carried) / Math.hypot(alone, carried) : 0;
  const convection = (field + flat * (prepared.edgeArea + prepared.backArea) * size) * Math.sign(rise);
  const radiation =
    (prepared.exchange * eta + emissivity * (prepared.edgeArea + prepared.backArea)) *
    radiantHeat(plate, surroundings);
  return {
    total: convection + radiation,
    convection,
    radiation,
    filmCoefficient: size > 0 ? field / ((prepared.pinArea * eta + prepared.baseArea) * size) : 0,
    pinEfficiency: eta,
    alone,
    carried,
  };
}

/** tanh(m Hc)/(m Hc) with m² = h P/(k A), Hc = H + A/P. Source: Cengel and Ghajar (2015), table 3-4. */
function pinEfficiency(film: number, conductivity: number, slenderness: number, height: number): number {
  const mH = Math.sqrt((film * slenderness) / conductivity) * (height + 1 / slenderness);
  return mH < 1e-4 ? 1 - (mH * mH) / 3 : Math.tanh(mH) / mH;
}
