import { type AirProperties, airProperties } from './air.ts';
import { type ChannelExchange, channelExchange } from './channelRadiation.ts';
import { stefanBoltzmann } from './constants.ts';
import { finEfficiency, taperedThickness } from './finEfficiency.ts';
import {
  type ChannelShape,
  channelShape,
  elenbaasNumber,
  openChannelFilm,
  parallelPlateFilm,
} from './verticalChannel.ts';
import { verticalPlateFilm } from './verticalPlate.ts';

/** A plate with straight fins on one side or both, SI. Upright: the air rises along the fins. */
export interface FinGeometry {
  /** Of the plate, across the fins, W. */
  readonly width: number;
  /** Along the fins, L. */
  readonly length: number;
  readonly baseThickness: number;
  /** N, both outer fins included; at least 2. */
  readonly finCount: number;
  /** Above the plate, H. */
  readonly finHeight: number;
  /** Mean thickness t. */
  readonly finThickness: number;
  /** Thickness at the tip, if the fins are tapered; the root is as much thicker than the mean as the tip is thinner. */
  readonly tipThickness?: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** Total hemispherical. */
  readonly emissivity: number;
  /** The side without fins also stands in free air. */
  readonly backExposed: boolean;
  /** Part of an exposed back that is not covered, 0 to 1; all of it if absent. */
  readonly backShare?: number;
  /** The same fins on the other side too; then there is no back. */
  readonly bothSides?: boolean;
}

/** Where the sink stands and what is known about it beyond the correlations. */
export interface FinConditions {
  /** Pa */
  readonly pressure: number;
  /** One factor on all film coefficients, from the builder's own measurement; 1 before. */
  readonly filmFactor: number;
  /** Factor on the film coefficient in the channels alone; see `defaultChannelFactor`. */
  readonly channelFactor: number;
  /** Part of gravity along the fins, for a tilted sink; 1 upright. */
  readonly gravityShare?: number;
}

/**
 * The correlations of the channel read high against an own flow simulation of arrays with 6 to 20 mm gaps (0.84 to 0.96,
 * median 0.92), in the direction reported by Starner and McManus (1963, from memory). An assumption, replaced by a
 * measurement on the builder's own sink.
 */
export const defaultChannelFactor = 0.92;

/** Which channel correlation counts: the smaller of the two, or one alone. */
export type ChannelForm = 'smaller' | 'openChannel' | 'parallelPlates';

/** Everything of a fin array that does not depend on temperature. */
export interface PreparedFinArray {
  readonly geometry: FinGeometry;
  /** s = (W - N t)/(N - 1), m; positive. */
  readonly gap: number;
  /** Hc = H + half the tip, m. */
  readonly correctedHeight: number;
  /** Thickness for the efficiency: the mean, or that of the rectangular fin equal to a tapered one, m. */
  readonly efficiencyThickness: number;
  /** Channels, N - 1 a side. */
  readonly channelCount: number;
  readonly shape: ChannelShape;
  readonly exchange: ChannelExchange;
  /** Both faces of all inner channels, (N - 1) 2 Hc L, m². */
  readonly channelFinArea: number;
  /** Plate between the fins, (N - 1) s L, m². */
  readonly channelBaseArea: number;
  /** Outer faces of the two outer fins with the edges of the plate, 2 (H + tb) L for fins on one side, m². */
  readonly outerArea: number;
  /** Tips, N t L, m²; they radiate, their convection is in Hc. */
  readonly tipArea: number;
  /** W L times the free part if the back is exposed, else 0, m². */
  readonly backArea: number;
}

/** The heat given off at one plate temperature and its parts, W, with the figures of the working. */
export interface FinArrayHeat {
  readonly total: number;
  readonly convection: number;
  readonly radiation: number;
  /** In the channels, factors included, W/(m² K). */
  readonly filmCoefficient: number;
  /** On outer fin faces and back, W/(m² K). */
  readonly plateFilm: number;
  /** Of convection and radiation together on the fins of a channel. */
  readonly finEfficiency: number;
  readonly outerEfficiency: number;
  readonly elenbaas: number;
  /** Film coefficient in the channels by the two correlations, W/(m² K); their difference is the model spread. */
  readonly openChannelFilm: number;
  readonly parallelPlateFilm: number;
}

/** Gap between fins, m; zero or negative when the fins do not fit. */
export function finGap(geometry: Pick<FinGeometry, 'width' | 'finCount' | 'finThickness'>): number {
  return (geometry.width - geometry.finCount * geometry.finThickness) / (geometry.finCount - 1);
}

/**
 * Areas, channel geometry and exact radiation exchange of a fin array; once per sink.
 *
 * @param geometry with a positive fin gap (the caller refuses others)
 */
export function prepareFinArray(geometry: FinGeometry): PreparedFinArray {
  const { width, length, baseThickness, finCount, finHeight, finThickness, emissivity } = geometry;
  const gap = finGap(geometry);
  const sides = geometry.bothSides ? 2 : 1;
  const tip = geometry.tipThickness ?? finThickness;
  const correctedHeight = finHeight + tip / 2;
  const channelCount = (finCount - 1) * sides;
  return {
    geometry,
    gap,
    correctedHeight,
    efficiencyThickness: tip === finThickness ? finThickness : taperedThickness(2 * finThickness - tip, tip),
    channelCount,
    shape: channelShape(gap, finHeight, length),
    exchange: channelExchange(gap, finHeight, length, emissivity),
    channelFinArea: channelCount * 2 * correctedHeight * length,
    channelBaseArea: channelCount * gap * length,
    outerArea: 2 * (sides * finHeight + baseThickness) * length,
    tipArea: sides * finCount * tip * length,
    backArea: geometry.backExposed && sides === 1 ? width * length * (geometry.backShare ?? 1) : 0,
  };
}

function channelFilm(
  prepared: PreparedFinArray,
  air: AirProperties,
  rise: number,
  form: ChannelForm,
): { open: number; parallel: number; used: number } {
  const open = form === 'parallelPlates' ? Infinity : openChannelFilm(air, rise, prepared.shape);
  const parallel =
    form === 'openChannel' ? Infinity : parallelPlateFilm(air, rise, prepared.gap, prepared.geometry.length);
  return { open, parallel, used: Math.min(open, parallel) };
}

/**
 * Heat given off by vertical fins on a vertical plate of uniform temperature, W.
 *
 * Q = (N-1)[h_ch (2 Hc L η + s L) ΔT + (AF_fin η + AF_base) h_r0 (T - T_sur)]
 *   + 2 (H + tb) L η_o (h_pl ΔT + ε h_r0 (T - T_sur)) + N t L ε η h_r0 (T - T_sur) + back,
 * h_r0 (T - T_sur) = σ (T⁴ - T_sur⁴). Channels: the smaller of Van de Pol and Tierney and of Bar-Cohen and Rohsenow;
 * outer faces and back: Churchill and Chu; radiation: exact view factors and radiosity; properties at film temperature.
 * A plate cooler than its air takes up heat by the same law, with negative sign.
 *
 * @param plate mean plate temperature, K
 * @param air temperature of the air well away from the sink, K
 * @param surroundings temperature of the walls the sink sees, K; usually the air temperature
 *
 * Uncertainty: ln of the film coefficient about 0.15 (standard deviation, own choice); 0.25 below an Elenbaas number of
 * 5 or a rise of 10 K. Source: assembly of published correlations, own choice; see the parts for their sources.
 */
export function finArrayHeat(
  prepared: PreparedFinArray,
  plate: number,
  air: number,
  surroundings: number,
  conditions: FinConditions,
  form: ChannelForm = 'smaller',
): FinArrayHeat {
  const { geometry, exchange } = prepared;
  const { conductivity, finHeight, length, emissivity } = geometry;
  const { efficiencyThickness } = prepared;
  const rise = plate - air;
  const size = Math.abs(rise);
  const film = airProperties((plate + air) / 2, conditions.pressure, conditions.gravityShare);
  const radiantFilm =
    stefanBoltzmann * (plate * plate + surroundings * surroundings) * (plate + surroundings);
  const radiant = radiantFilm * (plate - surroundings);

  const channel = channelFilm(prepared, film, size, form);
  const factor = conditions.filmFactor * conditions.channelFactor;
  const h = channel.used * factor;
  const plateFilm = verticalPlateFilm(film, size, length) * conditions.filmFactor;

  const finRadiantFilm = (exchange.fins * radiantFilm) / (2 * finHeight * length);
  const eta = finEfficiency(h + finRadiantFilm, conductivity, efficiencyThickness, prepared.correctedHeight);
  const etaOuter = finEfficiency(
    plateFilm + emissivity * radiantFilm,
    conductivity,
    efficiencyThickness,
    prepared.correctedHeight,
  );

  const convection =
    (h * (prepared.channelFinArea * eta + prepared.channelBaseArea) +
      plateFilm * (prepared.outerArea * etaOuter + prepared.backArea)) *
    rise;
  const radiation =
    (prepared.channelCount * (exchange.fins * eta + exchange.base) +
      emissivity * (prepared.outerArea * etaOuter + prepared.tipArea * eta + prepared.backArea)) *
    radiant;
  return {
    total: convection + radiation,
    convection,
    radiation,
    filmCoefficient: h,
    plateFilm,
    finEfficiency: eta,
    outerEfficiency: etaOuter,
    elenbaas: elenbaasNumber(film, size, prepared.gap, length),
    openChannelFilm: channel.open,
    parallelPlateFilm: channel.parallel,
  };
}
