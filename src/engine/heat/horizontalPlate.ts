import type { AirProperties } from './air.ts';

/** Where 0.15 Ra^(1/3) overtakes 0.54 Ra^(1/4). */
const turbulentFrom = (0.54 / 0.15) ** 12;

/** 0.96·200^(1/6): value at which the form for small plates ends. */
const smallEnd = 0.96 * 200 ** (1 / 6);

/** 0.59·(2.2e4)^(1/4): value at which the form for middle plates ends. */
const middleEnd = 0.59 * 2.2e4 ** (1 / 4);

/**
 * Mean Nusselt number of a horizontal face that warms the air above it (hot face up, or cold face down).
 *
 * Nu = 0.96 Ra^(1/6) to 200; 0.59 Ra^(1/4) to 2.2e4; 0.54 Ra^(1/4); 0.15 Ra^(1/3) from the crossing at 4.7e6.
 * The printed pieces do not meet. They are joined so that Nu never falls when Ra rises: where the next piece starts
 * lower, Nu stays until it catches up; where it starts higher, the change is at their crossing (own choice; the printed
 * limits are 1 to 200, 200 to 1e4, 2.2e4 to 8e6 and 8e6 to 1.5e9).
 *
 * @param rayleigh Ra on area over perimeter.
 *
 * Source: ASHRAE Handbook Fundamentals, chapter 4, table 9, eq. T9.5 to T9.8 (Lloyd and Moran 1974; Goldstein 1973).
 */
export function horizontalFaceUp(rayleigh: number): number {
  if (rayleigh <= 200) return 0.96 * Math.sqrt(Math.cbrt(rayleigh));
  if (rayleigh <= 2.2e4) return Math.max(smallEnd, 0.59 * Math.sqrt(Math.sqrt(rayleigh)));
  if (rayleigh <= turbulentFrom) return Math.max(middleEnd, 0.54 * Math.sqrt(Math.sqrt(rayleigh)));
  return 0.15 * Math.cbrt(rayleigh);
}

/**
 * Mean Nusselt number of a horizontal face whose warm air cannot leave upwards (hot face down, or cold face up):
 * Nu = 0.27 Ra^(1/4).
 *
 * @param rayleigh Ra on area over perimeter; stated for 1e5 to 1e10, used below as an extension.
 *
 * Source: ASHRAE Handbook Fundamentals, chapter 4, table 9, eq. T9.9.
 */
export function horizontalFaceDown(rayleigh: number): number {
  return 0.27 * Math.sqrt(Math.sqrt(rayleigh));
}

/** Characteristic length of a horizontal rectangle, m: area over perimeter (Goldstein 1973). */
export function horizontalLength(width: number, length: number): number {
  return (width * length) / (2 * (width + length));
}

/**
 * Film coefficient of a horizontal face, W/(m² K).
 *
 * @param air properties at the film temperature
 * @param rise difference between face and air, K, without sign
 * @param characteristicLength area over perimeter, m
 * @param freeAir true when the air moved by the face can leave it (hot face up, cold face down)
 */
export function horizontalPlateFilm(
  air: AirProperties,
  rise: number,
  characteristicLength: number,
  freeAir: boolean,
): number {
  const rayleigh =
    air.rayleighFactor * rise * characteristicLength * characteristicLength * characteristicLength;
  const nusselt = freeAir ? horizontalFaceUp(rayleigh) : horizontalFaceDown(rayleigh);
  return (nusselt * air.conductivity) / characteristicLength;
}
