import type { Outcome } from '../../../shared/outcome.ts';
import type { Caution, Severity } from '../../../shared/solution.ts';
import { cautionFrom } from './contactCurrent.ts';
import { type ExposureDistance, exposureSentence } from './exposureDistance.ts';
import { forwardPeakVoltage, matchedCurrent } from './outputVoltage.ts';
import { storedEnergy, storedEnergySeverity } from './storedEnergy.ts';
import { shortSeverity, voltageSeverity } from './supplyCurrent.ts';
import { type TouchedBy, timeToBurn, touchLevel } from './touch.ts';

const zeroCelsius = 273.15;
/** Along the wire, m: 33 CFR 183.455(b). */
const fusePlace = 0.178;
/** Output into which the voltage at the antenna connector is worked out, Ω. */
const lineImpedance = 50;
/** From this power the caution at the output is a danger, W. Own choice. */
const outputDanger = 50;
/** From this distance on the exposure caution is a warning, m: beyond arm's reach and one step. Own choice. */
const exposureWarning = 2;
/** A stop stands this close to the greatest junction temperature, K. */
const junctionMargin = 10;

export type SourceKind = 'leadAcid' | 'lithiumIronPhosphate' | 'mainsSupply' | 'vehicle' | 'other';

/** The figures a design comes to, as far as people are concerned. `null` where there is none. */
export interface CautionFigures {
  readonly source: SourceKind;
  /** V */
  readonly openVoltage: number;
  /** Short across the source behind the fuse place, A. */
  readonly faultCurrent: number | null;
  /** Breaking capacity of the fuse, A. */
  readonly breakingCapacity: number | null;
  /** From the source terminal along the wire, m. */
  readonly fuseDistance: number;
  /** A; null when no rating was found. */
  readonly fuseRating: number | null;
  /** A series diode or the like keeps reversed leads from harming. */
  readonly reverseProtected: boolean;
  /** Of the supply wire, K. */
  readonly wireTemperature: number | null;
  /** Limit of its insulation, K. */
  readonly insulationLimit: number;
  /** Hottest touchable place at the pessimistic edge, K. */
  readonly touchTemperature: number | null;
  readonly touchedBy: TouchedBy;
  /** Time until the sink is below 48 °C after switching off, s. */
  readonly coolingTime: number | null;
  /** Highest junction temperature within the cycle, and the greatest of the data sheet, K. */
  readonly junctionPeak: number | null;
  readonly maximumJunction: number;
  /** Forward peak envelope power at the antenna connector, W. */
  readonly pep: number;
  /** Standing-wave ratio the output is judged at. */
  readonly swr: number;
  readonly exposure: Outcome<ExposureDistance>;
  /** Rail at the devices, V. */
  readonly railVoltage: number;
  readonly fromConverter: boolean;
  /** Capacitance on the rail, F; 0 when not known. */
  readonly railCapacitance: number;
  readonly package: string;
}

const rank: Readonly<Record<Severity, number>> = { danger: 0, warning: 1, caution: 2, note: 3 };

/**
 * The cautions of a design, gravest first; within one severity in the order supply, hot metal, RF burns, exposure,
 * beryllia, then the rest.
 *
 * Each has its computed figure and what to do. Never says that something does no harm to people.
 */
export function cautions(figures: CautionFigures): readonly Caution[] {
  const found: Caution[] = [];
  for (const build of builders) {
    const caution = build(figures);
    if (caution) found.push(caution);
  }
  // The builders stand in the order of importance and the sort keeps it within a severity.
  return found.sort((first, second) => rank[first.severity] - rank[second.severity]);
}

type Builder = (figures: CautionFigures) => Caution | null;

const builders: readonly Builder[] = [
  supplyShort,
  fuseBreaking,
  fuseFar,
  hotWire,
  hotMetal,
  hotJunction,
  outputBurn,
  exposure,
  railVoltage,
  railEnergy,
  beryllia,
  charging,
  reversedLeads,
];

function supplyShort(figures: CautionFigures): Caution | null {
  const { faultCurrent, openVoltage } = figures;
  if (faultCurrent === null) return null;
  const power = openVoltage * faultCurrent;
  return {
    key: 'supplyShort',
    severity: shortSeverity(faultCurrent),
    title: 'A short across the supply',
    sentence: `A short behind the fuse place draws about ${amperes(faultCurrent)} (${watts(power)}) at a voltage that gives no shock and no warning. A ring or strap across it burns before it is off.`,
    action:
      'Take off rings, watches and chains. Insulated tools, covers on the terminals, connect the source last.',
    source: 'batteryShort',
  };
}

function fuseBreaking({ faultCurrent, breakingCapacity }: CautionFigures): Caution | null {
  if (faultCurrent === null || breakingCapacity === null || faultCurrent <= breakingCapacity) return null;
  return {
    key: 'fuseBreakingCapacity',
    severity: 'danger',
    title: 'The fuse cannot break this source',
    sentence: `A short can draw ${amperes(faultCurrent)}; this kind of fuse breaks ${amperes(breakingCapacity)} at most and may burst or go on arcing.`,
    action:
      'Put a bolted fuse with a DC breaking capacity above that at the source, the small fuse after it.',
    source: 'batteryShort',
  };
}

function fuseFar({ fuseDistance, source }: CautionFigures): Caution | null {
  if (fuseDistance <= fusePlace * (1 + 1e-9)) return null;
  return {
    key: 'fusePlace',
    severity: source === 'mainsSupply' ? 'caution' : 'warning',
    title: 'Wire before the fuse',
    sentence: `${Math.round(fuseDistance * 1000)} mm of wire lie before the fuse: if they chafe through, nothing opens.`,
    action: 'Move the fuse within 178 mm of the terminal, both leads where the return has another path.',
    source: 'fusePlace',
  };
}

function hotWire({ wireTemperature, insulationLimit }: CautionFigures): Caution | null {
  if (wireTemperature === null) return null;
  if (wireTemperature > insulationLimit) {
    return {
      key: 'hotWire',
      severity: 'danger',
      title: 'The supply wire gets too hot',
      sentence: `The wire reaches about ${degrees(wireTemperature)}, its insulation bears ${degrees(insulationLimit)}.`,
      action: 'Take a thicker wire from the wire table, or less current.',
      source: 'pvcLimit',
    };
  }
  const level = touchLevel(wireTemperature);
  if (level.severity === null || level.severity === 'note') return null;
  return {
    key: 'hotWire',
    severity: 'note',
    title: 'The supply wire gets warm',
    sentence: `The wire reaches about ${degrees(wireTemperature)} under a long carrier.`,
    action: 'Keep it in free air, not under a carpet or in a coil; a thicker wire stays cooler.',
    source: 'pvcLimit',
  };
}

function hotMetal({ touchTemperature, touchedBy, coolingTime }: CautionFigures): Caution | null {
  if (touchTemperature === null) return null;
  const level = touchLevel(touchTemperature);
  if (level.severity === null) return null;
  const time = timeToBurn('metal', touchTemperature);
  const after = time === null ? '' : ` after about ${span(time, Math.floor)} of contact`;
  const cooling =
    coolingTime === null
      ? ''
      : ` It needs about ${span(coolingTime, Math.ceil)} to cool below 48 °C after switching off.`;
  const guarded = touchedBy === 'nobody';
  return {
    key: 'hotMetal',
    severity: guarded && rank[level.severity] < rank.caution ? 'caution' : level.severity,
    title: `Hot metal: ${level.words}`,
    sentence: `The hottest place a hand can reach may come to ${degrees(touchTemperature)}: bare metal burns${after}.${cooling}`,
    action: guarded
      ? 'Keep the guard on and write “hot surface” beside it.'
      : hotMetalActions[level.severity],
    source: 'touch',
  };
}

const hotMetalActions: Readonly<Record<Severity, string>> = {
  danger: 'Guard it or put it out of reach; a label alone is not enough.',
  warning: 'Guard it, or write “hot surface” on it.',
  caution: 'Do not hold it; keep children away. A larger sink or less duty cools it.',
  note: 'Do not rest a hand on it.',
};

function hotJunction({ junctionPeak, maximumJunction }: CautionFigures): Caution | null {
  if (junctionPeak === null || junctionPeak <= maximumJunction - junctionMargin) return null;
  return {
    key: 'hotJunction',
    severity: 'danger',
    title: 'Stop: the transistors would fail',
    sentence: `The junction would reach ${degrees(junctionPeak)}; the data sheet ends at ${degrees(maximumJunction)}. A part that fails this way can burst.`,
    action: 'Do not key this design. Take less power or duty, or a better sink.',
    source: 'deviceLimit',
  };
}

function outputBurn({ pep, swr }: CautionFigures): Caution | null {
  if (pep < cautionFrom) return null;
  const peak = forwardPeakVoltage(pep, lineImpedance, swr);
  const current = matchedCurrent(pep, lineImpedance);
  const mismatch = swr > 1 ? ` at a standing-wave ratio of ${Number(swr.toPrecision(3))}` : '';
  return {
    key: 'outputBurn',
    severity: pep >= outputDanger ? 'danger' : 'warning',
    title: 'RF burns at the output',
    sentence: `The output carries up to ${volts(peak)} peak${mismatch} and ${Number(current.toPrecision(2))} A; a finger burns, deep under the skin, from 0.017 A on. The end of a wire antenna carries many times that voltage.`,
    action:
      'Power on: touch no antenna, terminal, tank or matching part. Tune into a dummy load rated for the power.',
    source: 'contactCurrent',
  };
}

function exposure({ exposure: found }: CautionFigures): Caution | null {
  if (!found.ok) {
    return {
      key: 'exposure',
      severity: 'warning',
      title: 'People near the antenna',
      sentence: found.reason.sentence,
      action: 'Measure or model the field before people come near; until then low power only.',
      source: 'oet65',
    };
  }
  const { value } = found;
  const who =
    value.limit.tier === 'controlled'
      ? 'This tier is for the licensee and trained members of the household only; for everybody else take the general population.'
      : 'Neighbours and visitors count: fence it, raise it, or use less power.';
  return {
    key: 'exposure',
    severity: value.shown >= exposureWarning ? 'warning' : 'caution',
    title: 'People near the antenna',
    sentence: exposureSentence(value),
    action: `Keep people farther away than that while transmitting. ${who}`,
    source: exposureSources[value.limit.set],
  };
}

const exposureSources: Readonly<Record<ExposureDistance['limit']['set'], string>> = {
  fcc: 'fcc1310',
  icnirp2020: 'icnirp2020',
  icnirp2020Local: 'icnirp2020',
  eu1999: 'eu1999',
};

function railVoltage({ railVoltage: voltage, fromConverter }: CautionFigures): Caution | null {
  const severity = voltageSeverity(voltage);
  if (severity === null) return null;
  const runaway = fromConverter ? ' A converter that loses its regulation goes higher.' : '';
  return {
    key: 'railVoltage',
    severity,
    title: 'Rail voltage',
    sentence: `The rail has ${volts(voltage)} DC; from 60 V it is no longer extra-low voltage.${runaway}`,
    action: fromConverter
      ? 'Cover live parts, fit an over-voltage cut-out, and rate capacitors for the most the converter can give.'
      : 'Cover live parts.',
    source: severity === 'note' ? 'guarding' : 'extraLowVoltage',
  };
}

function railEnergy({ railCapacitance, railVoltage: voltage }: CautionFigures): Caution | null {
  const energy = storedEnergy(railCapacitance, voltage);
  const severity = storedEnergySeverity(energy);
  if (severity === null) return null;
  return {
    key: 'storedEnergy',
    severity,
    title: 'Charged capacitors',
    sentence: `The capacitors on the rail hold ${Number(energy.toPrecision(2))} J after switching off: a tool across them sparks and pits.`,
    action:
      severity === 'warning'
        ? 'Fit a bleeder and wait; never short them with a tool.'
        : 'Discharge them through a resistor before work, not with a tool.',
    source: 'storedEnergy',
  };
}

function beryllia({ package: body }: CautionFigures): Caution | null {
  if (body !== 'flangeCeramic' && body !== 'stud') return null;
  return {
    key: 'beryllia',
    severity: 'warning',
    title: 'This package may contain beryllia',
    sentence:
      'The white ceramic under such a transistor is often beryllia; it cannot be told by eye. Its dust causes lung disease.',
    action:
      'Do not open, file, grind, drill or break it. Mount it flat, torque evenly, do not burn it or put it in the bin.',
    source: 'beryllia',
  };
}

function charging({ source }: CautionFigures): Caution | null {
  if (source === 'leadAcid' || source === 'vehicle') {
    return {
      key: 'hydrogen',
      severity: 'caution',
      title: 'Hydrogen from the battery',
      sentence: 'A lead-acid battery gives off hydrogen while it is charged; 4.1 % of it in air explodes.',
      action:
        'Charge it in moving air, no flame or spark, eye protection on. Make the last connection away from the battery.',
      source: 'hydrogen',
    };
  }
  if (source !== 'lithiumIronPhosphate') return null;
  return {
    key: 'lithium',
    severity: 'caution',
    title: 'Charging lithium cells',
    sentence: 'Lithium cells vent or burn when overcharged, charged below 0 °C, punctured or shorted.',
    action:
      'Use a management board and a charger made for this chemistry; do not leave it charging unattended.',
    source: 'lithium',
  };
}

function reversedLeads({ reverseProtected, fuseRating }: CautionFigures): Caution | null {
  if (reverseProtected) return null;
  const fuse = fuseRating === null ? 'the fuse' : `the ${Number(fuseRating.toPrecision(3))} A fuse`;
  return {
    key: 'reversedLeads',
    severity: 'note',
    title: 'Reversed leads',
    sentence: `Nothing stops a reversed source: its current flows through the converter or the devices until ${fuse} opens.`,
    action: 'Use a plug that fits one way only, or fit a series diode or transistor.',
    source: 'batteryShort',
  };
}

function degrees(temperature: number): string {
  return `${Math.ceil(temperature - zeroCelsius - 1e-9)} °C`;
}

function amperes(current: number): string {
  return `${Number(current.toPrecision(2))} A`;
}

function volts(voltage: number): string {
  return `${Number(voltage.toPrecision(2))} V`;
}

function watts(power: number): string {
  return power >= 1000 ? `${Number((power / 1000).toPrecision(2))} kW` : `${Number(power.toPrecision(2))} W`;
}

/** A time as people say it: rounded down where it runs out, up where one must wait. */
function span(seconds: number, round: (value: number) => number): string {
  if (seconds <= 1) return 'a second or less';
  if (seconds < 90) return `${round(seconds)} s`;
  if (seconds < 5400) return `${round(seconds / 60)} min`;
  return `${round(seconds / 3600)} h`;
}
