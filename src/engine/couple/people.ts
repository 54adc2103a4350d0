import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import type { Caution, State } from '../../../shared/solution.ts';
import { cautions } from '../hazard/cautions.ts';
import { type ExposureDistance, exposureDistance, exposureSentence } from '../hazard/exposureDistance.ts';
import { pessimisticTouch, timeToBurn, touchLevel, touchLimit } from '../hazard/touch.ts';
import { writeQuantity } from '../quantity/write.ts';
import { fuseType } from '../supply/fuse.ts';
import type { PeopleJudgement } from './verdicts.ts';

/** Below this a sink is held without harm for ten minutes, K (ISO 13732-1, 48 °C). */
export const coolEnough = 321.15;

export interface PeopleFigures {
  readonly exposure: Outcome<ExposureDistance>;
  /** Pessimistic, K; null when no service can be computed. */
  readonly touchTemperature: number | null;
  readonly touchThreshold: number | null;
  readonly burnTime: number | null;
  readonly judgement: PeopleJudgement;
}

/** What the design means for people. hottestMetal: highest plate temperature of the services at the planned duty, K. */
export function judgePeople(design: Design, hottestMetal: number | null): PeopleFigures {
  const { antenna, amplifier, limits, surroundings } = design;
  const exposure = exposureDistance({ ...antenna, pep: amplifier.pep });
  const threshold = touchLimit(limits.touchedBy);
  const touch = hottestMetal === null ? null : pessimisticTouch(hottestMetal, surroundings.ambient);
  return {
    exposure,
    touchTemperature: touch,
    touchThreshold: threshold,
    burnTime: touch === null ? null : timeToBurn('metal', touch),
    judgement: {
      state: touchState(hottestMetal, touch, threshold),
      touch: touchSentence(touch, threshold),
      distance: exposure.ok ? exposureSentence(exposure.value) : exposure.reason.sentence,
    },
  };
}

function touchState(nominal: number | null, pessimistic: number | null, threshold: number | null): State {
  if (nominal === null || pessimistic === null || threshold === null) return 'fine';
  if (pessimistic <= threshold) return 'fine';
  return nominal <= threshold ? 'close' : 'over';
}

function touchSentence(touch: number | null, threshold: number | null): string {
  if (touch === null) return '';
  const { words } = touchLevel(touch);
  if (threshold === null) return `The metal ${words}: keep it guarded.`;
  const limit = writeQuantity(threshold, 'temperature', '°C');
  return touch <= threshold
    ? `The metal ${words}, pessimistic edge; the limit you chose is ${limit}.`
    : `The metal ${words}, pessimistic edge; the limit you chose is ${limit}: guard it or cool it.`;
}

export interface CautionInputs {
  readonly faultCurrent: number | null;
  readonly fuseRating: number | null;
  readonly wireTemperature: number | null;
  readonly people: PeopleFigures;
  readonly coolingTime: number | null;
  readonly junctionPeak: number | null;
  readonly railVoltage: number;
}

/** The ordered list of cautions of a design. */
export function cautionsOf(design: Design, inputs: CautionInputs): readonly Caution[] {
  const { source, wiring, device, amplifier, converter, limits } = design;
  return cautions({
    source: source.kind,
    openVoltage: source.openVoltage,
    faultCurrent: inputs.faultCurrent,
    breakingCapacity: fuseType(wiring.fuse).breakingCapacity,
    fuseDistance: wiring.fuseDistance,
    fuseRating: inputs.fuseRating,
    reverseProtected: wiring.seriesDrop > 0,
    wireTemperature: inputs.wireTemperature,
    insulationLimit: wiring.insulationLimit,
    touchTemperature: inputs.people.touchTemperature,
    touchedBy: limits.touchedBy,
    coolingTime: inputs.coolingTime,
    junctionPeak: inputs.junctionPeak,
    maximumJunction: device.maximumJunction,
    pep: amplifier.pep,
    swr: 1,
    exposure: inputs.people.exposure,
    railVoltage: inputs.railVoltage,
    fromConverter: converter.kind === 'module',
    railCapacitance: 0,
    package: device.package,
  });
}
