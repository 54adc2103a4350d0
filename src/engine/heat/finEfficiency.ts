import { integrate } from '../numerics/gaussLegendre.ts';

/** tanh(x)/x without the hole at 0. */
function tanhOver(x: number): number {
  return x < 1e-4 ? 1 - (x * x) / 3 : Math.tanh(x) / x;
}

/**
 * Efficiency of a straight fin of rectangular profile cooled on both faces:
 * m = (2h/(k t))^(1/2), Hc = H + t/2, η = tanh(m Hc)/(m Hc).
 *
 * @param film mean film coefficient on the faces, convection and radiation, W/(m² K)
 * @param conductivity of the fin, W/(m K)
 * @param thickness m
 * @param correctedHeight Hc, the height with half the thickness for the tip, m
 *
 * One-dimensional, good to about 1 % when h t/k < 0.2. Source: Cengel and Ghajar, Heat and Mass Transfer, 5th ed.
 * (2015), chapter 3, table 3-3 and the text after table 3-5.
 */
export function finEfficiency(
  film: number,
  conductivity: number,
  thickness: number,
  correctedHeight: number,
): number {
  return tanhOver(Math.sqrt((2 * film) / (conductivity * thickness)) * correctedHeight);
}

/**
 * Thickness of the rectangular fin that has the efficiency of a tapered one, m: t_root/(3 J), with
 * J = ∫(1 - v)²/(1 - (1 - r) v) dv over 0 … 1 and r the tip over the root thickness. Exact to first order in (m H)²; the
 * efficiency is within 0.2 % above 0.9 and within 2 % at 0.7 (tested against the exact triangular fin).
 *
 * Source: own derivation from the conduction equation of a fin of straight taper.
 */
export function taperedThickness(rootThickness: number, tipThickness: number): number {
  const taper = 1 - tipThickness / rootThickness;
  const share = integrate((v) => (1 - v) ** 2 / (1 - taper * v), 0, 1, 24);
  return rootThickness / (3 * share);
}
