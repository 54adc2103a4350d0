import type { Design } from '../../../shared/design/schema.ts';
import { fuseKinds } from '../../../shared/design/supplyChoices.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import {
  type BurnRow,
  type Caution,
  type ContactLevel,
  type ExposureRow,
  type Label,
  type Service,
  type State,
  services,
} from '../../../shared/solution.ts';
import { bandBottomEdge } from '../hazard/amateurBands.ts';
import type { CautionFigures } from '../hazard/cautionFigures.ts';
import { cautions } from '../hazard/cautions.ts';
import { exposureClose, lineImpedance } from '../hazard/cautionsRadio.ts';
import { contactLevel } from '../hazard/contactCurrent.ts';
import { contactTableAt } from '../hazard/contactTable.ts';
import { type ExposureDistance, exposureDistance, exposureSentence } from '../hazard/exposureDistance.ts';
import { exposureTable } from '../hazard/exposureTable.ts';
import { labelsOf } from '../hazard/labels.ts';
import { burnTable, pessimisticTouch, timeToBurn, touchLevel, touchLimit } from '../hazard/touch.ts';
import { writeQuantity } from '../quantity/write.ts';
import { fuseType } from '../supply/fuse.ts';
import { worst } from './limits.ts';
import type { PeopleJudgement } from './verdicts.ts';

/** Below this a sink is held without harm for ten minutes, K (ISO 13732-1, 48 °C). */
export const coolEnough = 321.15;

/** What a hand finds. */
export interface TouchFigures {
  /** Pessimistic, K; null when no service can be computed. */
  readonly temperature: number | null;
  /** For the contact chosen, K; null when nobody can reach it. */
  readonly threshold: number | null;
  /** s; null below the threshold of the longest contact. */
  readonly burnTime: number | null;
}

export interface PeopleFigures {
  readonly exposure: Outcome<ExposureDistance>;
  readonly bands: readonly ExposureRow[];
  readonly contacts: readonly ContactLevel[];
  readonly burns: readonly BurnRow[];
  readonly touch: TouchFigures;
  readonly judgement: PeopleJudgement;
}

/**
 * hottestMetal: highest plate temperature of the services at the planned duty, K. edge: pessimistic edge of its band, K;
 * the usual distance from the nominal figure counts where it is hotter.
 */
export function touchOf(design: Design, hottestMetal: number | null, edge = 0): TouchFigures {
  const { limits, surroundings } = design;
  const temperature =
    hottestMetal === null ? null : Math.max(edge, pessimisticTouch(hottestMetal, surroundings.ambient));
  return {
    temperature,
    threshold: touchLimit(limits.touchedBy, limits.surface),
    burnTime: temperature === null ? null : timeToBurn(limits.surface, temperature),
  };
}

/** What the design means for people. */
export function judgePeople(design: Design, hottestMetal: number | null, edge = 0): PeopleFigures {
  const { antenna, amplifier } = design;
  const input = { ...antenna, pep: amplifier.pep };
  const exposure = exposureDistance(input);
  const touch = touchOf(design, hottestMetal, edge);
  return {
    exposure,
    bands: exposureTable(input),
    contacts: contactTableAt(bandBottomEdge(antenna.band), lineImpedance),
    burns: burnTable(touch.temperature),
    touch,
    judgement: {
      state: worst([touchState(hottestMetal, touch), exposureState(exposure, antenna.nearestPerson)]),
      touch: touchSentence(design, touch),
      distance: exposure.ok
        ? exposureSentence(exposure.value, antenna.nearestPerson)
        : exposure.reason.sentence,
    },
  };
}

function touchState(nominal: number | null, { temperature, threshold }: TouchFigures): State {
  // What is not known cannot be judged and must not read as if it were in order.
  if (nominal === null || temperature === null) return 'over';
  if (threshold === null || temperature <= threshold) return 'fine';
  return nominal <= threshold ? 'close' : 'over';
}

function exposureState(exposure: Outcome<ExposureDistance>, nearest: number | null): State {
  if (!exposure.ok) return 'over';
  if (nearest === null) return 'fine';
  const { distance } = exposure.value;
  if (nearest < distance) return 'over';
  return nearest < exposureClose * distance ? 'close' : 'fine';
}

function touchSentence(design: Design, { temperature, threshold }: TouchFigures): string {
  if (temperature === null) return 'Touch cannot be judged until the heat can be worked out.';
  const { surface } = design.limits;
  const { words } = touchLevel(temperature, surface);
  const what = surface === 'metal' ? 'The metal' : 'The cover';
  if (threshold === null) return `${what} ${words}: keep it guarded.`;
  const limit = writeQuantity(threshold, 'temperature', '°C');
  const stated = `${what} ${words}, pessimistic edge; the limit you chose is ${limit}`;
  return temperature <= threshold ? `${stated}.` : `${stated}: guard it or cool it.`;
}

/** The hottest junction of all services at the planned duty, K, null when none can be computed; and whose it is. */
export interface HottestJunction {
  readonly junctionPeak: number | null;
  readonly hottestService: string;
}

/** From the values of a solution and the names of its services. */
export function hottestJunction(
  values: Readonly<Record<string, number>>,
  names: Readonly<Record<Service, { readonly name: string }>>,
): HottestJunction {
  let hottest: HottestJunction = { junctionPeak: null, hottestService: '' };
  for (const service of services) {
    const peak = values[`${service}.junctionPeak`];
    if (peak === undefined || peak <= (hottest.junctionPeak ?? 0)) continue;
    hottest = { junctionPeak: peak, hottestService: names[service].name };
  }
  return hottest;
}

/** What the rest of the solution knows and cautions speak of. */
export interface PeopleInputs extends HottestJunction {
  readonly faultCurrent: number | null;
  readonly fuseRating: number | null;
  readonly wireTemperature: number | null;
  readonly inputCurrent: number | null;
  readonly coolingTime: number | null;
  /** At the pessimistic edge of its band; null while there is none. */
  readonly junctionEdge: number | null;
  /** At the peak of the envelope, V; null when there is no such point. */
  readonly railVoltage: number | null;
  readonly sinkMass: number | null;
}

/** The rail with nothing drawn from it, V: the highest it stands at in order. */
export function railAtRest({ converter, source }: Design): number {
  return converter.kind === 'none' ? source.openVoltage : converter.outputVoltage;
}

/** Everything cautions and labels are made from. */
export function cautionFigures(design: Design, people: PeopleFigures, inputs: PeopleInputs): CautionFigures {
  const { source, wiring, device, amplifier, converter, limits, antenna, hazards, sink } = design;
  const finger = contactLevel(bandBottomEdge(antenna.band));
  const chosen = people.bands.find((row) => row.chosen);
  return {
    source: source.kind,
    openVoltage: source.openVoltage,
    faultCurrent: inputs.faultCurrent,
    breakingCapacity: fuseType(wiring.fuse).breakingCapacity,
    fuseDistance: wiring.fuseDistance,
    fuseRating: inputs.fuseRating,
    fuseName: fuseKinds[wiring.fuse],
    reverseProtected: wiring.path.some((piece) => piece.kind === 'diode' || piece.kind === 'transistor'),
    wireTemperature: inputs.wireTemperature,
    insulationLimit: wiring.insulationLimit,
    inputCurrent: inputs.inputCurrent,
    touchTemperature: people.touch.temperature,
    touchedBy: limits.touchedBy,
    surface: limits.surface,
    coolingTime: inputs.coolingTime,
    junctionPeak: inputs.junctionPeak,
    junctionEdge: inputs.junctionEdge,
    hottestService: inputs.hottestService,
    maximumJunction: device.maximumJunction,
    pep: amplifier.pep,
    swr: amplifier.swr,
    fingerLevel: finger.ok ? finger.value : null,
    exposure: people.exposure,
    nearestPerson: antenna.nearestPerson,
    exemption: antenna.limitSet === 'fcc' ? (chosen?.exemption ?? null) : null,
    railVoltage: Math.max(railAtRest(design), inputs.railVoltage ?? 0),
    fromConverter: converter.kind !== 'none',
    greatestRail: hazards.greatestRail,
    railCapacitance: hazards.railCapacitance,
    bleederTime: hazards.bleederTime,
    package: device.package,
    pad: device.pad,
    deviceCount: device.count,
    finned: sink.shape !== 'panel',
    sinkMass: inputs.sinkMass,
    fan: sink.fan !== 'none' || sink.shape === 'tunnel',
  };
}

/** The ordered list of cautions of a design, and the labels that go on its box. */
export function warn(figures: CautionFigures): {
  readonly cautions: readonly Caution[];
  readonly labels: readonly Label[];
} {
  return { cautions: cautions(figures), labels: labelsOf(figures) };
}
