import { type AirProperties, airProperties } from './air.ts';
import { type ChannelExchange, channelExchange } from './channelRadiation.ts';
import { stefanBoltzmann } from './constants.ts';
import { finEfficiency } from './finEfficiency.ts';
import {
  type ChannelShape,
  channelShape,
  elenbaasNumber,
  openChannelFilm,
  parallelPlateFilm,
} from './verticalChannel.ts';
import { verticalPlateFilm } from './verticalPlate.ts';

/** A plate with straight fins on one side, SI. Vertical: the air rises along the fins. */
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
  /** W/(m K) */
  readonly conductivity: number;
  /** Total hemispherical. */
  readonly emissivity: number;
  /** The side without fins also stands in free air. */
  readonly backExposed: boolean;
}

/** Where the sink stands and what is known about it beyond the correlations. */
export interface FinConditions {
  /** Pa */
  readonly pressure: number;
  /** One factor on all film coefficients, from the builder's own measurement; 1 before. */
  readonly filmFactor: number;
  /** Factor on the film coefficient in the channels alone; see `defaultChannelFactor`. */
  readonly channelFactor: number;
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
  /** Hc = H + t/2, m. */
  readonly correctedHeight: number;
  readonly shape: ChannelShape;
  readonly exchange: ChannelExchange;
  /** Both faces of all inner channels, (N - 1) 2 Hc L, m². */
  readonly channelFinArea: number;
  /** Plate between the fins, (N - 1) s L, m². */
  readonly channelBaseArea: number;
  /** Outer faces of the two outer fins with the edges of the plate, 2 (H + tb) L, m². */
  readonly outerArea: number;
  /** Tips, N t L, m²; they radiate, their convection is in Hc. */
  readonly tipArea: number;
  /** W L if the back is exposed, else 0, m². */
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
  const correctedHeight = finHeight + finThickness / 2;
  return {
    geometry,
    gap,
    correctedHeight,
    shape: channelShape(gap, finHeight, length),
    exchange: channelExchange(gap, finHeight, length, emissivity),
    channelFinArea: (finCount - 1) * 2 * correctedHeight * length,
    channelBaseArea: (finCount - 1) * gap * length,
    outerArea: 2 * (finHeight + baseThickness) * length,
    tipArea: finCount * finThickness * length,
    backArea: geometry.backExposed ? width * length : 0,
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
  const { conductivity, finThickness, finHeight, length, emissivity } = geometry;
  const rise = plate - air;
  const size = Math.abs(rise);
  const film = airProperties((plate + air) / 2, conditions.pressure);
  const radiantFilm =
    stefanBoltzmann * (plate * plate + surroundings * surroundings) * (plate + surroundings);
  const radiant = radiantFilm * (plate - surroundings);

  const channel = channelFilm(prepared, film, size, form);
  const factor = conditions.filmFactor * conditions.channelFactor;
  const h = channel.used * factor;
  const plateFilm = verticalPlateFilm(film, size, length) * conditions.filmFactor;

  const finRadiantFilm = (exchange.fins * radiantFilm) / (2 * finHeight * length);
  const eta = finEfficiency(h + finRadiantFilm, conductivity, finThickness, prepared.correctedHeight);
  const etaOuter = finEfficiency(
    plateFilm + emissivity * radiantFilm,
    conductivity,
    finThickness,
    prepared.correctedHeight,
  );

  const convection =
    (h * (prepared.channelFinArea * eta + prepared.channelBaseArea) +
      plateFilm * (prepared.outerArea * etaOuter + prepared.backArea)) *
    rise;
  const radiation =
    ((geometry.finCount - 1) * (exchange.fins * eta + exchange.base) +
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
