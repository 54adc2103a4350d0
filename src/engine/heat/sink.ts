import type { SinkInput } from '../../../shared/design/schema.ts';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { standardPressure } from './constants.ts';
import {
  type ChannelForm,
  defaultChannelFactor,
  type FinArrayHeat,
  type FinConditions,
  type FinGeometry,
  finArrayHeat,
  finGap,
  type PreparedFinArray,
  prepareFinArray,
} from './finArray.ts';
import { emissivityOf, metalOf } from './materials.ts';
import { risingRoot } from './monotoneRoot.ts';
import { type PanelGeometry, panelArea, panelHeat } from './panel.ts';

/** What of the design describes the sink itself. */
export type SinkDescription = Omit<SinkInput, 'placement'>;

export interface SinkOptions {
  /** Pa; sea level if absent. */
  readonly pressure?: number;
  /** Factor on all film coefficients, 1 before a measurement. */
  readonly filmFactor?: number;
  /** Factor on the channels of a fin array. */
  readonly channelFactor?: number;
}

/** Heat given off and its parts, W and W/(m² K). Fields of the channels are null for a panel. */
export interface SinkHeat {
  readonly total: number;
  readonly convection: number;
  readonly radiation: number;
  readonly filmCoefficient: number;
  readonly channel: FinArrayHeat | null;
}

/** A sink ready for use: every shape answers the same questions. Temperatures in K, heat in W. */
export interface Sink {
  readonly shape: SinkInput['shape'];
  readonly conductivity: number;
  readonly emissivity: number;
  /** Plate area W L, m². */
  readonly plateArea: number;
  /** Surface in free air, m². */
  readonly surfaceArea: number;
  /** m; null for a panel. */
  readonly gap: number | null;
  /** Mass of the fins alone from the drawing, kg. */
  readonly finMass: number;
  /** Mass from the drawing, kg. */
  readonly drawnMass: number;
  /** Weighed, or from the drawing, kg. */
  readonly mass: number;
  /** m cp, J/K. */
  readonly heatCapacity: number;
  /** Heat given off to air and surroundings of one temperature. */
  readonly heat: (plate: number, air: number) => number;
  /** Smooth laws of which `heat` is the smallest; for tables. */
  readonly branches: readonly ((plate: number, air: number) => number)[];
  readonly heatDetail: (plate: number, air: number, surroundings?: number) => SinkHeat;
  /** Plate temperature at which the sink gives off this heat; the air temperature for no heat. */
  readonly steadyPlate: (heat: number, air: number) => number;
  /** Standard deviation of ln(film coefficient) at this state. */
  readonly filmUncertainty: (plate: number, air: number) => number;
  /** Doubts that depend on the state. */
  readonly notesAt: (plate: number, air: number) => readonly Note[];
}

/** Own choice: plate-correlation scatter of 15 to 20 % together with the spread between channel models. */
export const usualFilmUncertainty = 0.15;
/** Own choice: for gaps too tight (Elenbaas number below 5) and rises too small (below 10 K) for the correlations. */
export const wideFilmUncertainty = 0.25;
const smallestElenbaas = 5;
const smallestRise = 10;

/** Rise up to which plate temperatures are searched, K; only to keep the search finite. */
const widestRise = 1e5;

interface Laws {
  readonly plateArea: number;
  readonly surfaceArea: number;
  readonly gap: number | null;
  readonly finVolume: number;
  readonly heat: (plate: number, air: number) => number;
  readonly detail: (plate: number, air: number, surroundings: number) => SinkHeat;
  readonly branches: readonly ((plate: number, air: number) => number)[];
  readonly notes: readonly Note[];
}

/**
 * Makes a sink of any shape ready: geometry, radiation exchange, mass and heat capacity once, then heat at any plate
 * and air temperature.
 *
 * @param description dimensions in m, finish and metal, weighed mass in kg or null
 * @returns failure `finsDoNotFit` when the fins take more than the width
 */
export function prepareSink(description: SinkDescription, options: SinkOptions = {}): Outcome<Sink> {
  const conditions: FinConditions = {
    pressure: options.pressure ?? standardPressure,
    filmFactor: options.filmFactor ?? 1,
    channelFactor: options.channelFactor ?? defaultChannelFactor,
  };
  const emissivity = emissivityOf(description.finish, description.alloy, description.emissivity);
  if (description.shape === 'panel') {
    return finish(description, panelLaws({ ...description, emissivity }, conditions), emissivity);
  }
  const geometry: FinGeometry = {
    ...description,
    emissivity,
    conductivity: metalOf(description.alloy).conductivity,
  };
  if (finGap(geometry) <= 0) return finsDoNotFit(geometry);
  return finish(description, finLaws(prepareFinArray(geometry), conditions), emissivity);
}

function finsDoNotFit(geometry: FinGeometry): Outcome<Sink> {
  const millimetres = (length: number) => Number((length * 1000).toPrecision(4));
  return failure(
    'finsDoNotFit',
    `The fins do not fit: ${geometry.finCount} fins of ${millimetres(geometry.finThickness)} mm take ` +
      `${millimetres(geometry.finCount * geometry.finThickness)} mm, more than the width of ${millimetres(geometry.width)} mm.`,
    { finCount: geometry.finCount, finThickness: geometry.finThickness, width: geometry.width },
  );
}

function panelLaws(geometry: PanelGeometry, conditions: FinConditions): Laws {
  const heat = (plate: number, air: number) => panelHeat(geometry, plate, air, air, conditions).total;
  return {
    heat,
    plateArea: geometry.width * geometry.length,
    surfaceArea: panelArea(geometry),
    gap: null,
    finVolume: 0,
    detail: (plate, air, surroundings) => ({
      ...panelHeat(geometry, plate, air, surroundings, conditions),
      channel: null,
    }),
    branches: [heat],
    notes: [],
  };
}

function finLaws(prepared: PreparedFinArray, conditions: FinConditions): Laws {
  const { finCount, finThickness, finHeight, length } = prepared.geometry;
  const branch = (form: ChannelForm) => (plate: number, air: number) =>
    finArrayHeat(prepared, plate, air, air, conditions, form).total;
  return {
    plateArea: prepared.geometry.width * length,
    surfaceArea:
      prepared.channelBaseArea +
      (finCount - 1) * 2 * finHeight * length +
      prepared.outerArea +
      prepared.tipArea +
      prepared.backArea,
    gap: prepared.gap,
    finVolume: finCount * finThickness * finHeight * length,
    heat: branch('smaller'),
    detail: (plate, air, surroundings) => {
      const channel = finArrayHeat(prepared, plate, air, surroundings, conditions);
      return { ...channel, channel };
    },
    branches: [branch('openChannel'), branch('parallelPlates')],
    notes: channelFactorNotes(conditions),
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

function finish(description: SinkDescription, laws: Laws, emissivity: number): Outcome<Sink> {
  const metal = metalOf(description.alloy);
  const finMass = metal.density * laws.finVolume;
  const drawnMass = finMass + metal.density * laws.plateArea * description.baseThickness;
  const mass = description.mass ?? drawnMass;
  const notesAt = (plate: number, air: number) => stateNotes(laws.detail(plate, air, air), plate - air);
  return success<Sink>(
    {
      shape: description.shape,
      conductivity: metal.conductivity,
      emissivity,
      plateArea: laws.plateArea,
      surfaceArea: laws.surfaceArea,
      gap: laws.gap,
      finMass,
      drawnMass,
      mass,
      heatCapacity: mass * metal.specificHeat,
      heat: laws.heat,
      branches: laws.branches,
      heatDetail: (plate, air, surroundings = air) => laws.detail(plate, air, surroundings),
      steadyPlate: (watts, air) =>
        risingRoot((plate) => laws.heat(plate, air) - watts, air, 20, 1e-9, widestRise),
      filmUncertainty: (plate, air) =>
        notesAt(plate, air).some((n) => n.key === 'gapTooTight' || n.key === 'riseSmall')
          ? wideFilmUncertainty
          : usualFilmUncertainty,
      notesAt,
    },
    laws.notes,
  );
}

function stateNotes(heat: SinkHeat, rise: number): readonly Note[] {
  const notes: Note[] = [];
  const elenbaas = heat.channel?.elenbaas;
  if (elenbaas !== undefined && elenbaas < smallestElenbaas) {
    notes.push(
      note(
        'outside validity',
        'gapTooTight',
        'The gap between the fins is so tight that air hardly rises in it; the result is less certain here.',
        { elenbaas },
      ),
    );
  }
  if (rise < smallestRise) {
    notes.push(
      note(
        'outside validity',
        'riseSmall',
        'The plate is less than 10 K above the air, where draughts outweigh its own rising air; the result is less certain here.',
        { rise },
      ),
    );
  }
  return notes;
}
