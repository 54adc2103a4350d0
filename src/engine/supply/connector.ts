import connectorTable from '../../../reference-data/connectors.json';

export type ConnectorClass = keyof typeof connectorTable.classes;

/** Share of its rating at which a connector is run for long. Own choice. */
export const connectorShare = 0.75;
/** Contact resistance of an aged contact over a new one. Own choice between 3 and 5. */
export const agedFactor = 4;
/** Rise of contact temperature with current: (I/I rated)^1.85, from memory. */
const riseExponent = 1.85;
/** Rise at the rating when the maker gives none, K; connectors are commonly rated at it. From memory. */
const usualRatedRise = 30;

export interface ConnectorFigures {
  readonly name: string;
  /** Rated current, A. */
  readonly rating: number;
  /** Contact resistance of one pole, new, Ω: the upper end of its range. */
  readonly resistance: number;
  /** Rise at the rating, K; null if not known. */
  readonly ratedRise: number | null;
  readonly status: string;
}

export function connectorFigures(kind: ConnectorClass): ConnectorFigures {
  return connectorTable.classes[kind];
}

/** Every class, for lists. */
export const connectorClasses = Object.keys(connectorTable.classes) as readonly ConnectorClass[];

export interface ConnectorLoad {
  /** Of all poles in the path together, Ω. */
  readonly resistance: number;
  /** Heat in one pole, W. */
  readonly heatPerPole: number;
  /** Rise of the contact over ambient, K. */
  readonly rise: number;
  /** Long current over 75 % of the rating. */
  readonly loading: number;
  readonly state: 'fine' | 'close' | 'over';
}

/**
 * What a connector does at a current.
 *
 * Heat I² R in each pole; rise = rated rise (I/I rated)^1.85, times the aged factor for an old contact; the wire is its
 * heat sink, so a thinner wire makes it hotter. Fine to 75 % of the rating for long, close to 100 %, over above, and
 * over when the peak passes the rating. poles: contacts in the current path, two for a pair.
 */
export function connectorLoad(
  kind: ConnectorClass,
  poles: number,
  aged: boolean,
  longCurrent: number,
  peakCurrent: number,
): ConnectorLoad {
  const figures = connectorFigures(kind);
  const factor = aged ? agedFactor : 1;
  const each = figures.resistance * factor;
  const share = longCurrent / figures.rating;
  const rise = (figures.ratedRise ?? usualRatedRise) * factor * share ** riseExponent;
  const over = share > 1 || peakCurrent > figures.rating;
  const close = share > connectorShare;
  return {
    resistance: poles * each,
    heatPerPole: longCurrent * longCurrent * each,
    rise,
    loading: share / connectorShare,
    state: over ? 'over' : close ? 'close' : 'fine',
  };
}
