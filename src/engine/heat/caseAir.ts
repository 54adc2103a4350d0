import { airProperties } from './air.ts';
import { type CaseVents, ventHeat } from './caseVents.ts';
import { radiantHeat } from './constants.ts';
import { type HeatTable, tabulateHeat } from './heatTable.ts';
import { horizontalLength, horizontalPlateFilm } from './horizontalPlate.ts';
import { risingRoot } from './monotoneRoot.ts';
import { verticalPlateFilm } from './verticalPlate.ts';

/** A closed metal box standing upright with all sides in free air, outside dimensions, SI. */
export interface ClosedCase {
  /** Left to right. */
  readonly width: number;
  /** Front to back. */
  readonly depth: number;
  /** Bottom to top. */
  readonly height: number;
  /** Of the outside. */
  readonly emissivity: number;
  /** False when the box stands flat on a table: then the bottom gives off nothing. */
  readonly bottomFree: boolean;
  /** Openings, if the case is not closed: a guess, see `ventHeat`. */
  readonly vents?: CaseVents;
}

/** Heat carried off by one side of the walls, W, and its parts. */
export interface WallHeat {
  readonly sides: number;
  readonly top: number;
  readonly bottom: number;
  readonly radiation: number;
  readonly total: number;
}

/** Widest difference searched for wall and inside air, K. */
const widestRise = 1e5;
const temperatureTolerance = 1e-8;

function films(box: ClosedCase, rise: number, filmTemperature: number, pressure: number) {
  const air = airProperties(filmTemperature, pressure);
  const size = Math.abs(rise);
  const level = horizontalLength(box.width, box.depth);
  return {
    side: verticalPlateFilm(air, size, box.height),
    free: horizontalPlateFilm(air, size, level, true),
    held: horizontalPlateFilm(air, size, level, false),
  };
}

/** Convection between the walls and the air on one side of them for a temperature difference, W. */
function wallConvection(box: ClosedCase, warm: number, cool: number, pressure: number): WallHeat {
  const rise = warm - cool;
  const film = films(box, rise, (warm + cool) / 2, pressure);
  const plan = box.width * box.depth;
  const sides = 2 * (box.width + box.depth) * box.height * film.side * rise;
  const top = plan * film.free * rise;
  const bottom = box.bottomFree ? plan * film.held * rise : 0;
  return { sides, top, bottom, radiation: 0, total: sides + top + bottom };
}

/** Surface that radiates outside, m². */
function radiatingArea(box: ClosedCase): number {
  const plan = box.width * box.depth;
  return 2 * (box.width + box.depth) * box.height + plan * (box.bottomFree ? 2 : 1);
}

/**
 * Heat that the outside of a closed box gives off at a wall temperature, W: sides as vertical plates on the height, top
 * hot face up, bottom hot face down, and radiation from all faces in use.
 *
 * Source: plate correlations of ASHRAE Handbook Fundamentals, chapter 4, table 9; assembly is common textbook practice.
 */
export function outerWallHeat(box: ClosedCase, wall: number, ambient: number, pressure: number): WallHeat {
  const convection = wallConvection(box, wall, ambient, pressure);
  const radiation = box.emissivity * radiatingArea(box) * radiantHeat(wall, ambient);
  return { ...convection, radiation, total: convection.total + radiation };
}

/**
 * Heat that the air inside gives to the walls, W: the same relations mirrored (under the cold top air sinks freely,
 * over the bottom it lies still); all heat is taken to go through the air, which is cautious, since parts also radiate
 * to the walls.
 */
export function innerWallHeat(box: ClosedCase, inside: number, wall: number, pressure: number): number {
  return wallConvection(box, inside, wall, pressure).total;
}

/** Wall and inside air of a closed box at one heat. */
export interface CaseState {
  /** K */
  readonly wall: number;
  /** Mean of the air inside, K; allow 20 % more rise at the top, where it collects (own choice). */
  readonly air: number;
}

/** Part by which the rise at the top of the inside air exceeds its mean (engineering judgement, own choice). */
export const stratificationShare = 0.2;

/**
 * Wall and inside air temperature of a closed box for heat released inside, K. No heat gives the ambient.
 *
 * @param heat W, zero or more
 * @param ambient air and surroundings outside, K
 */
export function steadyCaseAir(box: ClosedCase, heat: number, ambient: number, pressure: number): CaseState {
  if (box.vents) {
    const air = risingRoot(
      (temperature) => caseAirHeat(box, temperature, ambient, pressure) - heat,
      ambient,
      20,
      temperatureTolerance,
      widestRise,
    );
    return { wall: wallAt(box, air, ambient, pressure), air };
  }
  const wall = risingRoot(
    (temperature) => outerWallHeat(box, temperature, ambient, pressure).total - heat,
    ambient,
    10,
    temperatureTolerance,
    widestRise,
  );
  const air = risingRoot(
    (temperature) => innerWallHeat(box, temperature, wall, pressure) - heat,
    wall,
    20,
    temperatureTolerance,
    widestRise,
  );
  return { wall, air };
}

/** Wall that takes from the inside air what it gives to the room, K; inside air warmer than the room. */
function wallAt(box: ClosedCase, inside: number, ambient: number, pressure: number): number {
  const rise = inside - ambient;
  if (!(rise > 0)) return ambient;
  return risingRoot(
    (temperature) =>
      outerWallHeat(box, temperature, ambient, pressure).total -
      innerWallHeat(box, inside, temperature, pressure),
    ambient,
    rise / 2,
    temperatureTolerance,
    rise,
  );
}

/**
 * Heat a box gives off through walls and vents when its inside air has a temperature, W; the wall between is solved for. Air cooler than
 * the room takes up as much as equally warmer air gives off (sign reversed).
 */
export function caseAirHeat(
  box: ClosedCase,
  caseAirTemperature: number,
  ambient: number,
  pressure: number,
): number {
  const rise = caseAirTemperature - ambient;
  if (rise === 0) return 0;
  if (rise < 0) return -caseAirHeat(box, ambient - rise, ambient, pressure);
  const wall = wallAt(box, caseAirTemperature, ambient, pressure);
  const vented = box.vents ? ventHeat(box.vents, caseAirTemperature, ambient, pressure) : 0;
  return outerWallHeat(box, wall, ambient, pressure).total + vented;
}

/** Nodes of the table of a case: it costs a root a node, and the plate correlations are no better than 15 %. */
const caseNodes = 24;

/**
 * Heat of a closed box against the rise of its inside air over the room, as a fast table. The pieces of the horizontal
 * plates leave kinks, where the table is good to about 0.1 % (tested).
 */
export function tabulateCase(box: ClosedCase, ambient: number, pressure: number): HeatTable {
  return tabulateHeat([(rise) => caseAirHeat(box, ambient + rise, ambient, pressure)], caseNodes);
}

/**
 * Heat capacity of the inside air and the box, J/K.
 *
 * @param wallThickness of the metal, m
 * @param volumetricHeat of the wall metal, J/(m³ K); aluminium and steel 2.4e6 to 3.4e6
 */
export function caseHeatCapacity(
  box: ClosedCase,
  wallThickness: number,
  volumetricHeat: number,
  ambient: number,
  pressure: number,
): number {
  const air = airProperties(ambient, pressure);
  const plan = box.width * box.depth;
  const walls = 2 * (box.width + box.depth) * box.height + 2 * plan;
  return air.density * air.specificHeat * plan * box.height + walls * wallThickness * volumetricHeat;
}
