import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome, Reason } from '../../../shared/outcome.ts';
import type { Service, ServiceResult, ServiceWords, State, Verdict } from '../../../shared/solution.ts';
import {
  joinUnit,
  writeDegreesUp,
  writeDuration,
  writeKelvins,
  writeNumber,
  writeQuantity,
} from '../quantity/write.ts';
import { reachedWords } from './reachedPower.ts';
import { serviceWords } from './serviceWords.ts';

type Values = Readonly<Record<string, number>>;

/** A name at the beginning of a line. */
const capital = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

const percent = (share: number) => joinUnit(writeNumber(share * 100, 2, true), '%');
const watts = (value: number) => writeQuantity(value, 'power', 'W');
const amperes = (value: number) => writeQuantity(value, 'current', 'A');
const celsius = (value: number) => writeQuantity(value, 'temperature', '°C');

/** Below this a duty is no whole per cent, and yet more than none. */
const wholePercent = 0.01;

/** Whole per cent, rounded down: a duty is never stated higher than it is. */
const duty = (share: number) => joinUnit(String(Math.floor(share * 100 + 1e-6)), '%');

function dutyWords(result: ServiceResult): string {
  if (result.safeDuty >= 0.9999) return 'any duty';
  if (result.safeDuty <= 0) return 'not at any duty';
  if (result.safeDuty < wholePercent) return `under ${duty(wholePercent)} of the time`;
  return `up to ${duty(result.safeDuty)} of the time`;
}

function holdWords(result: ServiceResult): string {
  if (result.service !== 'keyDown' || result.holdTime === null || result.safeDuty <= 0) return '';
  return `, or ${writeDuration(result.holdTime)} from cold`;
}

function junctionWords(service: Service, design: Design, values: Values): string {
  const peak = values[`${service}.junctionPeak`];
  const margin = values[`${service}.junctionMargin`];
  const limit = values.designLimit;
  if (peak === undefined || margin === undefined || limit === undefined) return '';
  const side = margin >= 0 ? 'below' : 'above';
  return (
    `At the planned ${percent(design.service.transmitShare)} the junction reaches ${celsius(peak)}, ` +
    `${writeKelvins(margin)} ${side} its design limit of ${celsius(limit)}.`
  );
}

/** The line of one service. */
export function serviceVerdict(
  service: Service,
  result: Outcome<ServiceResult>,
  design: Design,
  values: Values,
): Verdict {
  const name = capital(serviceWords(design)[service].name);
  if (!result.ok) {
    const headline =
      result.reason.key === 'notLinear' ? `not in class ${design.amplifier.class}` : 'no result';
    return { key: service, name, state: 'over', headline, sentence: result.reason.sentence };
  }
  const found = result.value;
  return {
    key: service,
    name,
    state: found.state,
    headline: `${dutyWords(found)}${holdWords(found)}${reachedWords(design, values.pep)}`,
    sentence: `${junctionWords(service, design, values)} ${found.governing.sentence}`.trim(),
  };
}

export interface SupplyJudgement {
  readonly state: State;
  /** What is wrong, worst first. */
  readonly complaints: readonly string[];
  readonly failure: Reason | null;
  readonly wireSize: string;
  readonly suggestedWire: string | null;
  readonly names: Readonly<Record<Service, ServiceWords>>;
}

/** The line of the 12 V side: currents, fuse, wire, drop. */
export function supplyVerdict(judged: SupplyJudgement, values: Values): Verdict {
  if (judged.failure) {
    return {
      key: 'supply',
      name: '12 V input',
      state: 'over',
      headline: 'the supply cannot do it',
      sentence: judged.failure.sentence,
    };
  }
  const peak = values.inputCurrentPep ?? 0;
  const overs = (['ssb', 'cw', 'keyDown'] as const).flatMap((service) => {
    const current = values[`${service}.inputCurrentMean`];
    return current === undefined ? [] : [{ current, name: judged.names[service].name }];
  });
  const means = overs.map(({ current, name }) => `${amperes(current)} in ${name}`);
  const fuse =
    values.fuseRating === undefined ? 'no fitting fuse' : `fuse ${joinUnit(String(values.fuseRating), 'A')}`;
  const drop = `drop ${writeQuantity(values.pathDropPep ?? 0, 'voltage', 'V', 2)} (${percent(values.pathDropShare ?? 0)})`;
  const wire = judged.wireSize.replace('mm2', 'mm²');
  const suggestion =
    judged.suggestedWire && judged.suggestedWire !== judged.wireSize
      ? ` The thinnest wire that passes everything is ${judged.suggestedWire.replace('mm2', 'mm²')}.`
      : '';
  const complaints = judged.complaints.length > 0 ? ` ${judged.complaints.join(' ')}` : '';
  // A mean above the peak would look like a mistake.
  const cooler = overs.some(({ current }) => amperes(current) !== amperes(peak) && current > peak)
    ? ' The peak is that of devices at their design limit; cooler ones draw a little more.'
    : '';
  const mean = means.length > 0 ? `Mean while transmitting: ${means.join(', ')}. ` : '';
  return {
    key: 'supply',
    name: '12 V input',
    state: judged.state,
    headline: `${amperes(peak)} at the peak, ${fuse}, wire ${wire}, ${drop}`,
    sentence: `${mean}Power from the source at the peak: ${watts((values.sourceVoltage ?? 0) * peak)}.${cooler}${complaints}${suggestion}`,
  };
}

export interface PeopleJudgement {
  readonly state: State;
  readonly touch: string;
  readonly distance: string;
}

/** The line for people: touch and exposure distance. */
export function peopleVerdict(judged: PeopleJudgement, values: Values): Verdict {
  const metal =
    values.touchTemperature === undefined
      ? 'metal temperature unknown'
      : `metal up to ${writeDegreesUp(values.touchTemperature)}`;
  const distance =
    values.exposureDistance === undefined
      ? 'no distance can be given for this antenna'
      : `at least ${writeQuantity(values.exposureDistance, 'length', 'm', 2)} from the antenna`;
  return {
    key: 'people',
    name: 'People',
    state: judged.state,
    headline: `${metal}, ${distance}`,
    sentence: `${judged.touch} ${judged.distance}`.trim(),
  };
}
