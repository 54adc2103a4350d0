import { type Note, note } from '../../../shared/outcome.ts';
import type { FanPoint } from './fan.ts';
import {
  type ChannelForm,
  defaultChannelFactor,
  type FinArrayHeat,
  type FinConditions,
  finArrayHeat,
  type PreparedFinArray,
} from './finArray.ts';
import { type Mounting, mountedFinHeat, mountingUncertainty } from './orientation.ts';
import { levelPanelHeat, type PanelGeometry, panelArea, panelHeat } from './panel.ts';
import { type PinGeometry, pinHeat, pinUncertainty, preparePins } from './pins.ts';

/** Heat given off and its parts, W and W/(m² K). The figures of the channels are null where no air rises along them. */
export interface SinkHeat {
  readonly total: number;
  readonly convection: number;
  readonly radiation: number;
  readonly filmCoefficient: number;
  readonly channel: FinArrayHeat | null;
}

/** A heat law in air and surroundings of one temperature, W; temperatures in K. */
export type HeatAt = (plate: number, air: number) => number;

/** What a shape knows of itself once it is prepared. */
export interface SinkLaws {
  readonly plateArea: number;
  readonly surfaceArea: number;
  /** m; null for a panel. */
  readonly gap: number | null;
  /** Fins or pins, m³. */
  readonly finVolume: number;
  readonly heat: HeatAt;
  readonly detail: (plate: number, air: number, surroundings: number) => SinkHeat;
  /** Smooth laws of which `heat` is the smallest. */
  readonly branches: readonly HeatAt[];
  /** Standard deviation of ln(film coefficient) where nothing else widens it. */
  readonly uncertainty: number;
  readonly notes: readonly Note[];
  /** Where fan and sink agree in air of a temperature, K; absent without a fan. */
  readonly blown?: (air: number) => FanPoint;
}

/** Own choice: plate-correlation scatter of 15 to 20 % together with the spread between channel models. */
export const usualFilmUncertainty = 0.15;

const mountingSentences = {
  crosswise:
    'With level fins the air cannot run between them; only the outside of the block is counted, which is cautious.',
  finsUp: 'The correlation for fins on a level plate is good to about 25 %.',
  finsDown: 'No published formula was found for fins that hang down; half of the fins-up value is taken.',
} as const;

/** Upright or tilted panel, or a level one with its face up or down. */
export function panelLaws(geometry: PanelGeometry, mounting: Mounting, conditions: FinConditions): SinkLaws {
  const level = mounting.kind === 'finsUp' || mounting.kind === 'finsDown';
  const turned =
    mounting.kind === 'crosswise'
      ? { ...geometry, width: geometry.length, length: geometry.width }
      : geometry;
  const detail = (plate: number, air: number, surroundings: number) =>
    level
      ? levelPanelHeat(turned, mounting.kind === 'finsUp', plate, air, surroundings, conditions)
      : panelHeat(turned, plate, air, surroundings, conditions);
  const heat = (plate: number, air: number) => detail(plate, air, air).total;
  return {
    heat,
    plateArea: geometry.width * geometry.length,
    surfaceArea: panelArea(turned),
    gap: null,
    finVolume: 0,
    detail: (plate, air, surroundings) => ({ ...detail(plate, air, surroundings), channel: null }),
    branches: [heat],
    uncertainty: usualFilmUncertainty,
    notes: [],
  };
}

/** Fins on one side or both, in any mounting. */
export function finLaws(prepared: PreparedFinArray, mounting: Mounting, conditions: FinConditions): SinkLaws {
  const { finCount, finThickness, finHeight, width, length, bothSides } = prepared.geometry;
  const sides = bothSides ? 2 : 1;
  const geometry = {
    plateArea: width * length,
    surfaceArea:
      prepared.channelBaseArea +
      prepared.channelCount * 2 * finHeight * length +
      prepared.outerArea +
      prepared.tipArea +
      prepared.backArea,
    gap: prepared.gap,
    finVolume: sides * finCount * finThickness * finHeight * length,
  };
  if (mounting.kind === 'upright' || mounting.kind === 'tilted') {
    return { ...geometry, ...uprightLaws(prepared, conditions) };
  }
  return { ...geometry, ...mountedLaws(prepared, { kind: mounting.kind }, conditions) };
}

type LawsWithoutGeometry = Omit<SinkLaws, 'plateArea' | 'surfaceArea' | 'gap' | 'finVolume'>;

function uprightLaws(prepared: PreparedFinArray, conditions: FinConditions): LawsWithoutGeometry {
  const branch =
    (form: ChannelForm): HeatAt =>
    (plate, air) =>
      finArrayHeat(prepared, plate, air, air, conditions, form).total;
  return {
    heat: branch('smaller'),
    detail: (plate, air, surroundings) => {
      const channel = finArrayHeat(prepared, plate, air, surroundings, conditions);
      return { ...channel, channel };
    },
    branches: [branch('openChannel'), branch('parallelPlates')],
    uncertainty: usualFilmUncertainty,
    notes: channelFactorNotes(conditions),
  };
}

/** Level or crosswise fins; the factor on upright channels does not apply to them. */
function mountedLaws(
  prepared: PreparedFinArray,
  mounting: { readonly kind: 'crosswise' | 'finsUp' | 'finsDown' },
  conditions: FinConditions,
): LawsWithoutGeometry {
  const own: HeatAt = (plate, air) => mountedFinHeat(prepared, mounting, plate, air, air, conditions).total;
  const branches =
    mounting.kind === 'crosswise' ? [own, ...uprightLaws(prepared, conditions).branches] : [own];
  const heat: HeatAt = (plate, air) => {
    let least = Number.POSITIVE_INFINITY;
    for (const branch of branches) least = Math.min(least, branch(plate, air));
    return least;
  };
  return {
    heat,
    detail: (plate, air, surroundings) => {
      const mounted = mountedFinHeat(prepared, mounting, plate, air, surroundings, conditions);
      if (mounting.kind !== 'crosswise') return { ...mounted, channel: null };
      const upright = finArrayHeat(prepared, plate, air, surroundings, conditions);
      return upright.total < mounted.total ? { ...upright, channel: upright } : { ...mounted, channel: null };
    },
    branches,
    uncertainty: mountingUncertainty[mounting.kind],
    notes: [note('assumed', mounting.kind, mountingSentences[mounting.kind])],
  };
}

/**
 * What pins on a level plate convect over the same field upright. Standing: the cautious end of the catalogue ratios for
 * level plate-fin sinks, 1/1.33 (Cengel and Ghajar 2015, table 3-6); hanging: half of that, as for fins. Own choice.
 */
const levelPins = { finsUp: 0.75, finsDown: 0.375 } as const;
/** Standard deviation of ln(film coefficient) for them (own choice). */
const levelPinUncertainty = 0.4;

const levelPinNote = note(
  'assumed',
  'pinsLevel',
  'Pins on a level plate are taken to cool as a share of the same field upright; a guess, so run the bench test.',
);

/** Pins in any mounting: round about alike, so that a plate on its side only swaps its columns and rows. */
export function pinLaws(geometry: PinGeometry, mounting: Mounting, conditions: FinConditions): SinkLaws {
  if (mounting.kind === 'crosswise') {
    const { width, length, columns, rows } = geometry;
    return uprightPins(
      { ...geometry, width: length, length: width, columns: rows, rows: columns },
      conditions,
    );
  }
  if (mounting.kind !== 'finsUp' && mounting.kind !== 'finsDown') return uprightPins(geometry, conditions);
  const filmFactor = conditions.filmFactor * levelPins[mounting.kind];
  const laws = uprightPins(geometry, { ...conditions, filmFactor });
  return { ...laws, uncertainty: levelPinUncertainty, notes: [...laws.notes, levelPinNote] };
}

function uprightPins(geometry: PinGeometry, conditions: FinConditions): SinkLaws {
  const prepared = preparePins(geometry);
  const heat: HeatAt = (plate, air) => pinHeat(prepared, plate, air, air, conditions).total;
  const plateArea = geometry.width * geometry.length;
  return {
    heat,
    plateArea,
    surfaceArea: prepared.pinArea + prepared.baseArea + prepared.edgeArea + prepared.backArea,
    gap: prepared.gap,
    finVolume: (plateArea - prepared.baseArea) * geometry.pinHeight,
    detail: (plate, air, surroundings) => ({
      ...pinHeat(prepared, plate, air, surroundings, conditions),
      channel: null,
    }),
    branches: [heat],
    uncertainty: pinUncertainty,
    notes: [
      note(
        'assumed',
        'pinField',
        'Pins are computed from single pins and from the air that can rise between them; this was not checked against measured pin sinks.',
      ),
    ],
  };
}

function channelFactorNotes(conditions: FinConditions): readonly Note[] {
  if (conditions.channelFactor !== defaultChannelFactor || conditions.filmFactor !== 1) return [];
  return [
    note(
      'assumed',
      'channelFactor',
      `The air between the fins is taken to cool ${Math.round((1 - defaultChannelFactor) * 100)} % less than the ` +
        'published correlations say; a measurement on your sink replaces this.',
      { channelFactor: conditions.channelFactor },
    ),
  ];
}
