import type { AirProperties } from './air.ts';

/** 1 + (0.492/Pr)^(9/16), the Prandtl function shared by both forms; by roots, which are quicker than a power. */
function prandtlTerm(prandtl: number): number {
  const root = Math.sqrt(0.492 / prandtl);
  return 1 + root * Math.sqrt(Math.sqrt(Math.sqrt(root)));
}

/**
 * Mean Nusselt number of an isothermal vertical plate, all Rayleigh numbers:
 * Nu = {0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}².
 *
 * @param rayleigh Ra on the height of the plate; stated for 0.1 to 1e12. Below, it tends to 0.68, as the plate alone in
 *   still air would not; harmless, because radiation carries the heat there.
 *
 * Scatter of such plate correlations is about 15 to 20 % (from memory). Against the laminar form it
 * reads -6, -2, +5 and +17 % at Ra = 1e5, 1e6, 1e7 and 1e8 (own computation), inside the uncertainty carried on films.
 *
 * Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975), as in ASHRAE Handbook Fundamentals, chapter 4, eq. T9.3.
 */
export function churchillChu(rayleigh: number, prandtl: number): number {
  const term = 0.825 + (0.387 * Math.sqrt(Math.cbrt(rayleigh))) / prandtlTerm(prandtl) ** (8 / 27);
  return term * term;
}

/**
 * Mean Nusselt number of an isothermal vertical plate, laminar form, a little closer below Ra = 1e9:
 * Nu = 0.68 + 0.670 Ra^(1/4)/[1 + (0.492/Pr)^(9/16)]^(4/9).
 *
 * @param rayleigh Ra on the height of the plate, up to 1e9.
 *
 * Source: Churchill and Chu (1975), as in ASHRAE Handbook Fundamentals, chapter 4, eq. T9.2.
 */
export function churchillChuLaminar(rayleigh: number, prandtl: number): number {
  return 0.68 + (0.67 * Math.sqrt(Math.sqrt(rayleigh))) / prandtlTerm(prandtl) ** (4 / 9);
}

/**
 * Film coefficient of a vertical face, W/(m² K), from the form for all Rayleigh numbers.
 *
 * @param air properties at the film temperature
 * @param rise temperature difference between face and air, K, without sign
 * @param height of the face, m
 */
export function verticalPlateFilm(air: AirProperties, rise: number, height: number): number {
  const rayleigh = air.rayleighFactor * rise * height * height * height;
  return (churchillChu(rayleigh, air.prandtl) * air.conductivity) / height;
}
