import type { Doubt } from '../../../shared/design/doubtSchema.ts';
import { caliperDoubt, guessDoubt, rulerDoubt } from '../../../shared/design/instruments.ts';
import type { Design, LoggedSink, SinkInput } from '../../../shared/design/schema.ts';
import { drawnUncertainty, weighedUncertainty } from '../heat/benchModel.ts';
import { interfaceResistance, pressedShare } from '../heat/interface.ts';
import { conductivityRange, emissivityOf, emissivityRange, metalOf } from '../heat/materials.ts';
import { ninetyPercent } from '../numerics/normalQuantile.ts';
import type { SinkKnowledge } from './benchKnowledge.ts';
import { efficiencyAdvice } from './loadDoubts.ts';
import type { LoadPlace, LoadResponse } from './loadResponse.ts';

/** 90 % half-widths where the design names none, as shares of the value. Own choice. */
const dataSheetDoubt = 0.15;
const measuredPadDoubt = 0.15;
const ownEmissivityDoubt = 0.1;
/** Films of both sides of a wall and its radiation together; what vents carry off is a guess. */
const closedCaseDoubt = 0.25;
const ventDoubt = 0.5;

/** A sample keeps every length above this share of its nominal value. */
const leastShare = 0.2;

/** One possible truth: what a sample puts in place of the nominal figures. */
export interface Draft {
  /** Changed fields of the sink. */
  readonly sink: { [field: string]: number | string };
  /** Factors on film coefficients, heat capacity, conductivity, what the case sheds, junction to case and pad. */
  film: number;
  capacity: number;
  conductivity: number;
  caseCooling: number;
  junctionToCase: number;
  pad: number;
  readonly load: { -readonly [Part in keyof LoadPlace]: number };
}

export function nominalDraft(): Draft {
  return {
    sink: {},
    film: 1,
    capacity: 1,
    conductivity: 1,
    caseCooling: 1,
    junctionToCase: 1,
    pad: 1,
    load: { efficiency: 0, converter: 0, speech: 0 },
  };
}

/** A figure nobody knows exactly. */
export interface Unknown {
  readonly key: string;
  readonly label: string;
  /** What would make it better known. */
  readonly advice: string;
  /** Path of its field, if it has one. */
  readonly path: string | null;
  /** Puts its value at a standard normal place into a draft. */
  readonly draw: (place: number, draft: Draft) => void;
}

/** Value at a place when 5 and 95 % lie at low and high and the median is given: two halves of log-normals. */
function between(low: number, median: number, high: number, place: number): number {
  const edge = place < 0 ? median / Math.max(low, 1e-9) : high / median;
  return median * edge ** (place / ninetyPercent);
}

const lengthNames: Readonly<Record<string, string>> = {
  width: 'width of the sink',
  length: 'length of the sink',
  baseThickness: 'plate thickness',
  finHeight: 'fin height',
  finThickness: 'fin thickness, and with it the gap',
  finRoot: 'fin thickness at the root',
  finTip: 'fin thickness at the tip',
  pinThickness: 'pin thickness',
  pinHeight: 'pin height',
};

type Length =
  | 'width'
  | 'length'
  | 'baseThickness'
  | 'finHeight'
  | 'finThickness'
  | 'finRoot'
  | 'finTip'
  | 'pinThickness'
  | 'pinHeight';

/** Lengths that mean something in a shape. */
function lengthsOf({ shape, tapered }: SinkInput): readonly Length[] {
  const plate = ['width', 'length', 'baseThickness'] as const;
  if (shape === 'panel') return plate;
  if (shape === 'pins') return [...plate, 'pinThickness', 'pinHeight'];
  return tapered ? [...plate, 'finHeight', 'finRoot', 'finTip'] : [...plate, 'finHeight', 'finThickness'];
}

const thin: readonly Length[] = ['baseThickness', 'finThickness', 'finRoot', 'finTip', 'pinThickness'];

/** The instrument a length is taken to be measured with when the design does not say: thin things with a caliper. */
export function usualInstrument(field: string): 'caliper' | 'ruler' {
  return (thin as readonly string[]).includes(field) ? 'caliper' : 'ruler';
}

/** 90 % half-width of a length, m. */
function lengthDoubt(doubt: Doubt, value: number): number {
  if (typeof doubt === 'number') return doubt;
  if (doubt === 'caliper') return caliperDoubt;
  return doubt === 'ruler' ? rulerDoubt : guessDoubt * value;
}

function lengthUnknown(design: Design, field: Length): Unknown {
  const path = `sink.${field}`;
  const value = design.sink[field];
  const doubt = design.doubts[path] ?? usualInstrument(field);
  const half = lengthDoubt(doubt, value);
  const again = doubt === 'caliper' ? 'again, in several places' : 'again, with a caliper';
  return {
    key: path,
    label: lengthNames[field]!,
    advice: `Measure the ${lengthNames[field]!.replace(', and with it the gap', ' and the gap')} ${again}.`,
    path,
    draw: (place, { sink }) => {
      sink[field] = Math.max(leastShare * value, value + (half * place) / ninetyPercent);
    },
  };
}

function emissivityUnknown({ sink }: Design): Unknown {
  const median = emissivityOf(sink.finish, sink.alloy, sink.emissivity);
  const range =
    sink.finish === 'own'
      ? { low: median * (1 - ownEmissivityDoubt), high: median * (1 + ownEmissivityDoubt) }
      : emissivityRange(sink.finish, sink.alloy, sink.emissivity);
  return {
    key: 'emissivity',
    label: 'emissivity of the finish',
    advice:
      sink.finish === 'unsure'
        ? 'Find out the finish: bare, anodised or painted.'
        : 'Run the bench test: it takes the finish in.',
    path: 'sink.finish',
    draw: (place, draft) => {
      draft.sink.finish = 'own';
      draft.sink.emissivity = Math.min(1, between(range.low, median, range.high, place));
    },
  };
}

function conductivityUnknown({ sink }: Design): Unknown {
  const median = metalOf(sink.alloy).conductivity;
  const range = conductivityRange(sink.alloy);
  return {
    key: 'conductivity',
    label: 'conductivity of the metal',
    advice: 'Find out the alloy; a thicker plate, or parts further apart, make it matter less.',
    path: 'sink.alloy',
    draw: (place, draft) => {
      draft.conductivity = between(range.low, median, range.high, place) / median;
    },
  };
}

/** What the case sheds at a given warmth of its air. */
function caseUnknown({ surroundings, doubts }: Design): Unknown {
  const vented = surroundings.caseVents === 'vented';
  const share = vented
    ? shareOf(doubts['surroundings.ventArea'], surroundings.ventArea, ventDoubt)
    : closedCaseDoubt;
  return {
    key: 'caseCooling',
    label: vented ? 'what the vents carry off' : 'how well the case cools its air',
    advice: 'Put a thermometer into the closed case while you transmit.',
    path: vented ? 'surroundings.ventArea' : 'surroundings.caseFinish',
    draw: (place, draft) => {
      draft.caseCooling = (1 + share) ** (place / ninetyPercent);
    },
  };
}

/** Share of the value that a doubt of a figure other than a length stands for. */
function shareOf(doubt: Doubt | undefined, value: number, usual: number): number {
  if (doubt === 'guess') return guessDoubt;
  return typeof doubt === 'number' && value > 0 ? doubt / value : usual;
}

function capacityUnknown(design: Design, knowledge: SinkKnowledge): Unknown {
  const { mass } = design.sink;
  const usual = mass === null ? drawnUncertainty : weighedUncertainty;
  const stated = design.doubts['sink.mass'];
  const deviation =
    knowledge.capacityUncertainty ??
    (mass === null || stated === undefined
      ? usual
      : Math.log1p(shareOf(stated, mass, usual * ninetyPercent)) / ninetyPercent);
  return {
    key: 'heatCapacity',
    label: 'heat capacity of the sink',
    advice: mass === null ? 'Weigh the sink.' : 'Log a warm-up or a cool-down on the bench.',
    path: 'sink.mass',
    draw: (place, draft) => {
      draft.capacity = Math.exp(deviation * place);
    },
  };
}

function filmUnknown(deviation: number, measured: boolean): Unknown {
  return {
    key: 'film',
    label: 'how well the air cools (film coefficient)',
    advice: measured ? 'Log another bench run, near the working temperature.' : 'Run the bench test.',
    path: null,
    draw: (place, draft) => {
      draft.film = Math.exp(deviation * place);
    },
  };
}

function junctionUnknown({ device, doubts }: Design): Unknown {
  const share = shareOf(doubts['device.junctionToCase'], device.junctionToCase, dataSheetDoubt);
  return {
    key: 'device.junctionToCase',
    label: 'junction to case',
    advice: 'Look junction to case up in the data sheet; take the greatest value, at a hot case.',
    path: 'device.junctionToCase',
    draw: (place, draft) => {
      draft.junctionToCase = (1 + share) ** (place / ninetyPercent);
    },
  };
}

function padUnknown({ device, doubts }: Design): Unknown {
  const share = shareOf(doubts['device.padResistance'], device.padResistance, measuredPadDoubt);
  const area = device.contactLength * device.contactWidth * pressedShare(device.package);
  const range =
    device.pad === 'measured'
      ? { low: 1 / (1 + share), typical: 1, high: 1 + share }
      : interfaceResistance(device.pad, area);
  return {
    key: 'pad',
    label: 'joint of case and plate',
    advice: 'Look at the joint: what lies in it, how thick it is, and how evenly it is pressed.',
    path: 'device.pad',
    draw: (place, draft) => {
      draft.pad = between(range.low, range.typical, range.high, place) / range.typical;
    },
  };
}

function efficiencyUnknown(design: Design, response: LoadResponse): Unknown {
  const { efficiency } = design.amplifier;
  const usual = response.doubts.efficiency;
  const stated = shareOf(design.doubts['amplifier.efficiency'], efficiency, usual / efficiency) * efficiency;
  const factor = usual > 0 ? stated / usual : 0;
  return {
    key: 'amplifier.efficiency',
    label: 'efficiency of the final',
    advice: efficiencyAdvice(design),
    path: 'amplifier.efficiency',
    draw: (place, { load }) => {
      load.efficiency = factor * place;
    },
  };
}

function converterUnknown({ converter }: Design): Unknown {
  return {
    key: 'converter',
    label: converter.kind === 'designed' ? 'losses of the converter' : 'efficiency of the converter',
    advice: 'Measure current and voltage on both sides of the converter at full power.',
    path: null,
    draw: (place, { load }) => {
      load.converter = place;
    },
  };
}

const speechUnknown: Unknown = {
  key: 'speech',
  label: 'how speech spreads over its amplitudes',
  advice: 'Measure the mean supply current while you speak.',
  path: 'service.averageToPeak',
  draw: (place, { load }) => {
    load.speech = place;
  },
};

/**
 * Everything uncertain in a design, each with its spread (90 % ranges; log-normal except lengths, which are normal).
 *
 * Once bench runs have corrected the sink, its lengths and finish are no unknowns of their own: the runs measured what
 * the sink sheds with the lengths as they are, and the correction takes up whatever the drawing has wrong. What was
 * changed since then stays in doubt.
 *
 * @param filmDeviation standard deviation of ln(film coefficient)
 */
export function unknownsOf(
  design: Design,
  response: LoadResponse,
  knowledge: SinkKnowledge,
  filmDeviation: number,
): readonly Unknown[] {
  const measured = knowledge.uncertainty !== null;
  const inDoubt = (field: keyof LoggedSink) => !measured || knowledge.changed.includes(field);
  const finish = inDoubt('finish') || inDoubt('emissivity');
  return [
    filmUnknown(filmDeviation, measured),
    efficiencyUnknown(design, response),
    junctionUnknown(design),
    padUnknown(design),
    capacityUnknown(design, knowledge),
    ...(response.doubts.speechHeat > 0 ? [speechUnknown] : []),
    ...(response.hasConverter ? [converterUnknown(design)] : []),
    conductivityUnknown(design),
    caseUnknown(design),
    ...(finish ? [emissivityUnknown(design)] : []),
    ...lengthsOf(design.sink)
      .filter(inDoubt)
      .map((field) => lengthUnknown(design, field)),
  ];
}
