import type { SinkInput } from '../../../shared/design/schema.ts';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { standardPressure } from './constants.ts';
import type { FanPoint } from './fan.ts';
import { type FanOnSink, withFan } from './fanLaws.ts';
import { defaultChannelFactor, type FinConditions, finGap, prepareFinArray } from './finArray.ts';
import { massCheck } from './massCheck.ts';
import { emissivityOf, metalOf } from './materials.ts';
import { risingRoot } from './monotoneRoot.ts';
import { gravityShare, largestTilt, type Mounting } from './orientation.ts';
import { type PinGeometry, pinGap } from './pins.ts';
import { finLaws, type HeatAt, panelLaws, pinLaws, type SinkHeat, type SinkLaws } from './sinkLaws.ts';
import { tunnelLaws } from './tunnel.ts';

/** A sink as it is measured with a caliper, SI. */
export interface SinkDescription {
  readonly shape: SinkInput['shape'];
  /** Across the fins; level side of a panel or of pins. */
  readonly width: number;
  /** Along the fins; upright side of a panel or of pins. */
  readonly length: number;
  readonly baseThickness: number;
  readonly finCount: number;
  readonly finHeight: number;
  /** Mean over the height. */
  readonly finThickness: number;
  /** Thickness at the fin tip if the fins are tapered. */
  readonly tipThickness?: number;
  readonly alloy: SinkInput['alloy'];
  /** W/(m K), where another than the usual one of the alloy is meant. */
  readonly conductivity?: number;
  readonly finish: SinkInput['finish'];
  /** Used with the finish "own". */
  readonly emissivity: number;
  readonly backExposed: boolean;
  /** Free part of an exposed back; all of it if absent. */
  readonly backShare?: number;
  /** Weighed, kg. */
  readonly mass: number | null;
  /** Upright if absent. */
  readonly mounting?: Mounting;
  /** A fan that blows along the fins. */
  readonly fan?: FanOnSink;
  /** Needed for pins. */
  readonly pins?: Pick<PinGeometry, 'section' | 'pinThickness' | 'pinHeight' | 'columns' | 'rows'>;
}

export interface SinkOptions {
  /** Pa; sea level if absent. */
  readonly pressure?: number;
  /** Factor on all film coefficients, 1 before a measurement. */
  readonly filmFactor?: number;
  /** Factor on the upright channels of a fin array. */
  readonly channelFactor?: number;
}

/** A sink ready for use: every shape answers the same questions. Temperatures in K, heat in W. */
export interface Sink {
  readonly shape: SinkDescription['shape'];
  readonly conductivity: number;
  /** Of the metal, kg/m³. */
  readonly density: number;
  readonly emissivity: number;
  /** Plate area W L, m². */
  readonly plateArea: number;
  /** Surface in free air, m². */
  readonly surfaceArea: number;
  /** Between fins or pins, m; null for a panel. */
  readonly gap: number | null;
  /** Mass of fins or pins alone from the drawing, kg. */
  readonly finMass: number;
  /** Mass from the drawing, kg. */
  readonly drawnMass: number;
  /** Weighed, or from the drawing, kg. */
  readonly mass: number;
  /** m cp, J/K. */
  readonly heatCapacity: number;
  /** Heat given off to air and surroundings of one temperature. */
  readonly heat: HeatAt;
  /** Smooth laws of which `heat` is the smallest; for tables. */
  readonly branches: readonly HeatAt[];
  readonly heatDetail: (plate: number, air: number, surroundings?: number) => SinkHeat;
  /** Plate temperature at which the sink gives off this heat; the air temperature for no heat. */
  readonly steadyPlate: (heat: number, air: number) => number;
  /** Standard deviation of ln(film coefficient) at this state. */
  readonly filmUncertainty: (plate: number, air: number) => number;
  /** Where fan and sink agree in air of a temperature, K; absent without a fan. */
  readonly blown?: (air: number) => FanPoint;
  /** Doubts that depend on the state. */
  readonly notesAt: (plate: number, air: number) => readonly Note[];
}

/** Own choice: for gaps too tight (Elenbaas number below 5) and rises too small (below 10 K) for the correlations. */
const wideFilmUncertainty = 0.25;
const smallestElenbaas = 5;
const smallestRise = 10;

/** Film temperatures at which the air properties were compared with printed tables, K. */
const checkedAir = { lowest: 250, highest: 450 } as const;

/** Rise up to which plate temperatures are searched, K; only to keep the search finite. */
const widestRise = 1e5;

/**
 * Makes a sink of any shape ready: geometry, radiation exchange, mass and heat capacity once, then heat at any plate
 * and air temperature.
 *
 * @param description dimensions in m, finish and metal, weighed mass in kg or null
 * @returns failure `finsDoNotFit` or `pinsDoNotFit` when they take more than the plate (tapered fins at their root),
 *   `pinsMissing` without their dimensions
 */
export function prepareSink(description: SinkDescription, options: SinkOptions = {}): Outcome<Sink> {
  const mounting = description.mounting ?? { kind: 'upright' };
  const conditions: FinConditions = {
    pressure: options.pressure ?? standardPressure,
    filmFactor: options.filmFactor ?? 1,
    channelFactor: options.channelFactor ?? defaultChannelFactor,
    gravityShare: gravityShare(mounting),
  };
  const laws = lawsOf(description, mounting, conditions);
  if (!laws.ok) return laws;
  const sink = assemble(description, laws.value);
  const weighed = description.mass === null ? [] : massCheck(description.mass, sink.drawnMass).notes;
  return success(sink, [...laws.value.notes, ...tiltNotes(mounting), ...weighed]);
}

function lawsOf(
  description: SinkDescription,
  mounting: Mounting,
  conditions: FinConditions,
): Outcome<SinkLaws> {
  const { shape } = description;
  const emissivity = emissivityOf(description.finish, description.alloy, description.emissivity);
  const conductivity = conductivityOf(description);
  if (shape === 'panel') return success(panelLaws({ ...description, emissivity }, mounting, conditions));
  if (shape === 'pins') return pinsOf(description, { emissivity, conductivity }, mounting, conditions);
  const taper = taperOf(description);
  if (finGap({ ...description, finThickness: rootOf(description, taper) }) <= 0) {
    return finsDoNotFit(description, rootOf(description, taper));
  }
  const bothSides = shape === 'finsBothSides';
  const geometry = { ...description, ...taper, emissivity, conductivity, bothSides };
  const prepared = prepareFinArray(geometry);
  if (shape === 'tunnel') return success(tunnelLaws(prepared, mounting, description.fan, conditions));
  const still = finLaws(prepared, mounting, conditions);
  return success(description.fan ? withFan(still, prepared, description.fan, conditions) : still);
}

function conductivityOf({ alloy, conductivity }: SinkDescription): number {
  return conductivity ?? metalOf(alloy).conductivity;
}

/** The tip as entered, kept between a knife edge and twice the mean, beyond which the root would be gone. */
function taperOf({ tipThickness, finThickness }: SinkDescription): { tipThickness?: number } {
  if (tipThickness === undefined) return {};
  return { tipThickness: Math.min(Math.max(tipThickness, 0), 1.9 * finThickness) };
}

/** Thickness at the root: as much more than the mean as the tip is less. */
function rootOf({ finThickness }: SinkDescription, { tipThickness }: { tipThickness?: number }): number {
  return tipThickness === undefined ? finThickness : Math.max(finThickness, 2 * finThickness - tipThickness);
}

function pinsOf(
  description: SinkDescription,
  material: { emissivity: number; conductivity: number },
  mounting: Mounting,
  conditions: FinConditions,
): Outcome<SinkLaws> {
  const { pins, width, length } = description;
  if (!pins) return failure('pinsMissing', 'Pins need their thickness, height and number.');
  const tight = Math.min(
    pinGap(width, pins.columns, pins.pinThickness),
    pinGap(length, pins.rows, pins.pinThickness),
  );
  if (tight <= 0) {
    return failure(
      'pinsDoNotFit',
      `The pins do not fit: ${pins.columns} by ${pins.rows} pins of ${millimetres(pins.pinThickness)} mm touch each other.`,
      { columns: pins.columns, rows: pins.rows, pinThickness: pins.pinThickness },
    );
  }
  return success(pinLaws({ ...description, ...pins, ...material }, mounting, conditions));
}

function millimetres(length: number): number {
  return Number((length * 1000).toPrecision(4));
}

function finsDoNotFit({ finCount, width }: SinkDescription, root: number): Outcome<SinkLaws> {
  return failure(
    'finsDoNotFit',
    `The fins do not fit: ${finCount} fins of ${millimetres(root)} mm take ` +
      `${millimetres(finCount * root)} mm of a width of ${millimetres(width)} mm; no gap is left.`,
    { finCount, finThickness: root, width },
  );
}

function assemble(description: SinkDescription, laws: SinkLaws): Sink {
  const metal = metalOf(description.alloy);
  const finMass = metal.density * laws.finVolume;
  const drawnMass = finMass + metal.density * laws.plateArea * description.baseThickness;
  const mass = description.mass ?? drawnMass;
  const notesAt = (plate: number, air: number) => stateNotes(laws.detail(plate, air, air), plate, air);
  return {
    shape: description.shape,
    conductivity: conductivityOf(description),
    density: metal.density,
    emissivity: emissivityOf(description.finish, description.alloy, description.emissivity),
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
      notesAt(plate, air).length > 0 ? Math.max(wideFilmUncertainty, laws.uncertainty) : laws.uncertainty,
    notesAt,
    ...(laws.blown ? { blown: laws.blown } : {}),
  };
}

function tiltNotes(mounting: Mounting): readonly Note[] {
  if (mounting.kind !== 'tilted' || Math.abs(mounting.tilt) <= largestTilt) return [];
  return [
    note(
      'outside validity',
      'tiltTooLarge',
      'Leaning more than 60° from upright is outside the rule used; 60° is taken.',
      { tilt: mounting.tilt },
    ),
  ];
}

/** Doubts about a state; each widens the uncertainty. */
function stateNotes(heat: SinkHeat, plate: number, air: number): readonly Note[] {
  const notes: Note[] = [];
  const rise = plate - air;
  const film = (plate + air) / 2;
  if (film < checkedAir.lowest || film > checkedAir.highest) {
    notes.push(
      note(
        'outside validity',
        'airRange',
        'The air at the plate is outside the range in which its properties were checked, -23 to 177 °C.',
        { film },
      ),
    );
  }
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
