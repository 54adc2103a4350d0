import type { AirProperties } from './air.ts';

/** The Elenbaas number, g β ΔT s⁴/(ν α L). */
export function elenbaasNumber(air: AirProperties, rise: number, gap: number, length: number): number {
  const square = gap * gap;
  return (air.rayleighFactor * rise * square * square) / length;
}

/**
 * Mean Nusselt number on the gap between isothermal parallel plates: Nu = (El/24)[1 - exp(-35/El)]^(3/4).
 *
 * @param elenbaas 0.1 to 1e5. Limits: El/24 (developed flow) and 0.60 El^(1/4) (single plates).
 *
 * Source: Elenbaas, Physica 9 (1942), from memory; both limits checked.
 */
export function elenbaas(elenbaas: number): number {
  if (elenbaas <= 0) return 0;
  return (elenbaas / 24) * (-Math.expm1(-35 / elenbaas)) ** 0.75;
}

/**
 * Mean Nusselt number on the gap between isothermal parallel plates: Nu = [576/El² + 2.873/El^(1/2)]^(-1/2).
 * Agrees with Elenbaas within 5 % for 0.1 < El < 1e5.
 *
 * Source: Bar-Cohen and Rohsenow, J. Heat Transfer 106 (1984), as in Cengel and Ghajar, Heat and Mass Transfer, 5th ed.
 * (2015), eq. 9-31.
 */
export function barCohenRohsenow(elenbaas: number): number {
  if (elenbaas <= 0) return 0;
  return elenbaas / Math.sqrt(576 + 2.873 * elenbaas * Math.sqrt(elenbaas));
}

/** Film coefficient between parallel plates by Bar-Cohen and Rohsenow, W/(m² K). */
export function parallelPlateFilm(air: AirProperties, rise: number, gap: number, length: number): number {
  return (barCohenRohsenow(elenbaasNumber(air, rise, gap, length)) * air.conductivity) / gap;
}

/**
 * Gap of greatest heat per plan area between thin isothermal plates, m: s = 2.714 L/Ra_L^(1/4), where Nu = 1.307.
 * With fins of finite thickness, and with radiation, the true optimum is wider: 0.8 to 1.5 times this is all right.
 *
 * @param rayleigh Ra on the plate length
 *
 * Source: Bar-Cohen and Rohsenow (1984), as in Cengel and Ghajar (2015), eq. 9-32.
 */
export function optimumGap(length: number, rayleigh: number): number {
  return (2.714 * length) / rayleigh ** 0.25;
}

/** What Van de Pol and Tierney need of the geometry; constant for a sink. */
export interface ChannelShape {
  readonly length: number;
  /** r = 2 H s/(2 H + s), m. */
  readonly radius: number;
  /** Z, the friction function of the open channel. */
  readonly resistanceFactor: number;
}

/** The 11.8 of the paper is per inch of gap. */
const inch = 0.0254;

/**
 * Geometry of a channel between fins on a base, open at the tips.
 *
 * a = s/H; V = exp(-11.8 s/0.0254 m);
 * Z = 24 [1 - 0.483 exp(-0.17/a)]/{(1 + a/2)[1 + (1 - exp(-0.83 a))(9.14 a^(1/2) V - 0.61)]}³.
 * Limit a → 0: Z = 24, r = s, developed flow between plates.
 *
 * Source: Van de Pol and Tierney, Technical Report AD-775 (1974), from memory; limits checked, and the bracketing
 * chosen by comparison with an own flow simulation.
 */
export function channelShape(gap: number, finHeight: number, length: number): ChannelShape {
  const aspect = gap / finHeight;
  const narrow = Math.exp((-11.8 * gap) / inch);
  const bracket =
    (1 + aspect / 2) * (1 - Math.expm1(-0.83 * aspect) * (9.14 * Math.sqrt(aspect) * narrow - 0.61));
  return {
    length,
    radius: (2 * finHeight * gap) / (2 * finHeight + gap),
    resistanceFactor: (24 * (1 - 0.483 * Math.exp(-0.17 / aspect))) / bracket ** 3,
  };
}

/**
 * Mean Nusselt number of a channel open at the tips, on r: Nu = (Ra/Z){1 - exp[-Z (0.5/Ra)^(3/4)]}.
 *
 * @param rayleigh Ra_r (r/L)
 *
 * Source: Van de Pol and Tierney (1974), from memory. Limits: Ra/Z and 0.595 Ra^(1/4).
 */
export function vanDePolTierney(rayleigh: number, resistanceFactor: number): number {
  if (rayleigh <= 0) return 0;
  const root = Math.sqrt(0.5 / rayleigh);
  return (rayleigh / resistanceFactor) * -Math.expm1(-resistanceFactor * root * Math.sqrt(root));
}

/**
 * Film coefficient on fin faces and base of a channel open at the tips, W/(m² K). All properties at film temperature;
 * the paper takes them at the wall, which lowers the result by 0.1 to 2 % at gaps of 9 to 18 mm and 3 to 9 % at 3 mm.
 */
export function openChannelFilm(air: AirProperties, rise: number, shape: ChannelShape): number {
  const square = shape.radius * shape.radius;
  const rayleigh = (air.rayleighFactor * rise * square * square) / shape.length;
  return (vanDePolTierney(rayleigh, shape.resistanceFactor) * air.conductivity) / shape.radius;
}
