import type { Edges, PeopleAtEdge } from '../../../shared/band.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { type Service, type Solution, type State, services, type Verdict } from '../../../shared/solution.ts';
import { joinUnit, minus, writeDuration, writeKelvins, writeNumber } from '../quantity/write.ts';
import { type JunctionLimits, junctionState, worst } from './limits.ts';
import { cautionFigures, hottestJunction, judgePeople, warn } from './people.ts';
import type { Prepared } from './prepare.ts';
import { reachedWords } from './reachedPower.ts';
import { peopleVerdict } from './verdicts.ts';

type AllEdges = Readonly<Record<string, Edges>>;
type ByService<T> = Readonly<Partial<Record<Service, T>>>;

/** From this share on a duty counts as any. */
const anyDuty = 0.9999;
/** More samples than this without a steady state are said so. */
const tellRunaway = 0.05;

/**
 * State of a junction by its band: fine when fine at the pessimistic edge. Where only the edge is beyond the design
 * limit the word is "close", unless the edge comes to the point where one must stop.
 */
export function bandState(nominal: number, pessimistic: number, limits: JunctionLimits): State {
  if (pessimistic <= limits.design) return 'fine';
  if (nominal <= limits.design && pessimistic <= limits.stop) return 'close';
  return junctionState(pessimistic, limits);
}

/** States of the services with the band. A state that other limits made worse stays. */
export function bandStates(prepared: Prepared, solution: Solution, edges: AllEdges): ByService<State> {
  const states: Partial<Record<Service, State>> = {};
  for (const service of services) {
    const result = solution.services[service];
    const nominal = solution.values[`${service}.junctionPeak`];
    const pessimistic = edges[`${service}.junctionPeak`]?.high;
    if (!result.ok || nominal === undefined || pessimistic === undefined || pessimistic === null) continue;
    states[service] = worst([result.value.state, bandState(nominal, pessimistic, prepared.limits)]);
  }
  return states;
}

const wholeDown = (share: number) => Math.floor(share * 100 + 1e-6);
const per = (whole: number | string) => joinUnit(String(whole), '%');
const celsius = (value: number) => joinUnit(degrees(value), '°C');
const degrees = (value: number) => String(Math.round(value - 273.15)).replace('-', minus);

/** The pessimistic edge first: it is what one can count on. */
function dutyWords(duty: Edges): string {
  if (duty.low >= anyDuty) return 'any duty';
  const from = wholeDown(duty.low);
  const to = wholeDown(duty.high ?? 1);
  if (from === 0) {
    const least = duty.low > 0 ? `under ${per(1)} of the time` : 'not at any duty';
    return to === 0 ? least : `${least}, perhaps up to ${per(to)}`;
  }
  const counted = `up to ${per(from)} of the time`;
  return from === to ? counted : `${counted}, perhaps ${per(to)}`;
}

function holdWords(service: Service, duty: Edges, hold: Edges | undefined): string {
  if (service !== 'keyDown' || hold === undefined || wholeDown(duty.high ?? 1) === 0) return '';
  // A time from cold beside "not at any duty" would say two things at once.
  if (duty.low <= 0) return '';
  if (hold.high === null && !Number.isFinite(hold.low)) return '';
  const low = writeDuration(hold.low);
  const counted = `, or ${low} from cold`;
  if (hold.high === null) return `${counted} and more`;
  const high = writeDuration(hold.high);
  return low === high ? counted : `${counted}, perhaps ${high}`;
}

/** Both edges of a duty in words, for a carrier those of the hold time too. */
export function bandHeadline(service: Service, duty: Edges, hold: Edges | undefined): string {
  return dutyWords(duty) + holdWords(service, duty, hold);
}

function junctionWords(service: Service, design: Design, solution: Solution, junction: Edges): string {
  const nominal = solution.values[`${service}.junctionPeak`];
  const limit = solution.values.designLimit;
  if (nominal === undefined || limit === undefined || junction.high === null) return '';
  const planned = joinUnit(writeNumber(design.service.transmitShare * 100, 2, true), '%');
  const side = junction.high <= limit ? 'below' : 'above';
  return (
    `Junction at the planned ${planned}: ${celsius(nominal)}, ${degrees(junction.low)} to ${celsius(junction.high)}; ` +
    `the pessimistic edge is ${writeKelvins(limit - junction.high)} ${side} the limit of ${celsius(limit)}.`
  );
}

/** The nominal duty, where the headline does not hold it already. */
function nominalDuty(duty: Edges, nominal: number): string {
  if (wholeDown(duty.low) === wholeDown(duty.high ?? 1)) return '';
  return `Nominal ${per(wholeDown(nominal))}.`;
}

function runawayWords(share: number | undefined): string {
  if (share === undefined || share <= tellRunaway) return '';
  return `In ${per(Math.ceil(share * 100))} of the samples the heat runs away: no steady state.`;
}

/** The line of a service with its band; the line as it was where the service has none or something forbids it. */
function serviceLine(
  verdict: Verdict,
  service: Service,
  design: Design,
  solution: Solution,
  edges: AllEdges,
  state: State | undefined,
  runaway: number | undefined,
): Verdict {
  const result = solution.services[service];
  const duty = edges[`${service}.safeDuty`];
  const junction = edges[`${service}.junctionPeak`];
  if (!result.ok || state === undefined || !duty || !junction) return verdict;
  const governing = result.value.governing;
  if (result.value.safeDuty === 0 && !['junction', 'touch', 'none'].includes(governing.key)) return verdict;
  const parts = [
    nominalDuty(duty, result.value.safeDuty),
    junctionWords(service, design, solution, junction),
    runawayWords(runaway),
    governing.key === 'none' && duty.low < anyDuty
      ? 'At the pessimistic edge the junction limit governs.'
      : governing.sentence,
  ];
  return {
    ...verdict,
    state,
    headline:
      bandHeadline(service, duty, edges[`${service}.holdTime`]) + reachedWords(design, solution.values.pep),
    sentence: parts.filter((part) => part !== '').join(' '),
  };
}

function isService(key: Verdict['key']): key is Service {
  return (services as readonly string[]).includes(key);
}

/** Verdicts with the band in them: states at the pessimistic edge, both edges of duty and hold time. */
export function bandVerdicts(
  prepared: Prepared,
  solution: Solution,
  edges: AllEdges,
  states: ByService<State>,
  runaway: ByService<number>,
): readonly Verdict[] {
  const { design } = prepared;
  return solution.verdicts.map((verdict) => {
    const { key } = verdict;
    if (key === 'people') return peopleLine(verdict, design, solution, edges.metal);
    if (!isService(key)) return verdict;
    return serviceLine(verdict, key, design, solution, edges, states[key], runaway[key]);
  });
}

/** Touch at the edge of the band, or at the least distance from the nominal figure, whichever is hotter. */
function peopleLine(verdict: Verdict, design: Design, solution: Solution, metal: Edges | undefined): Verdict {
  const nominal = hottestMetal(solution);
  const edge = metal?.high;
  if (nominal === null || edge === undefined || edge === null) return verdict;
  const people = judgePeople(design, nominal, edge);
  const touchTemperature = people.touch.temperature;
  const values = touchTemperature === null ? solution.values : { ...solution.values, touchTemperature };
  return peopleVerdict(people.judgement, values);
}

/** Cautions, labels and burns with touchable temperature and junction at the edges of their bands. */
export function bandPeople({ design }: Prepared, solution: Solution, edges: AllEdges): PeopleAtEdge | null {
  const nominal = hottestMetal(solution);
  const edge = edges.metal?.high;
  if (nominal === null || edge === undefined || edge === null) return null;
  const people = judgePeople(design, nominal, edge);
  const { values } = solution;
  const pessimistic = services.flatMap((service) => edges[`${service}.junctionPeak`]?.high ?? []);
  const figures = cautionFigures(design, people, {
    faultCurrent: values.faultCurrent ?? null,
    fuseRating: values.fuseRating ?? null,
    wireTemperature: values.wireTemperature ?? null,
    inputCurrent: values.inputCurrentPep ?? null,
    coolingTime: values.coolingTime ?? null,
    ...hottestJunction(values, solution.words),
    junctionEdge: pessimistic.length > 0 ? Math.max(...pessimistic) : null,
    railVoltage: values.railVoltagePep ?? null,
    sinkMass: values.sinkMass ?? null,
  });
  const { temperature, burnTime } = people.touch;
  return {
    ...warn(figures),
    burns: people.burns,
    values: {
      ...(temperature === null ? {} : { touchTemperature: temperature }),
      ...(burnTime === null ? {} : { burnTime }),
    },
  };
}

/** Highest nominal temperature of the plate under a device in any service, K. */
export function hottestMetal({ heatPath }: Solution): number | null {
  const peaks = services.flatMap((service) =>
    heatPath[service].filter(({ key }) => key === 'plateUnderDevice').map(({ peak }) => peak),
  );
  return peaks.length > 0 ? Math.max(...peaks) : null;
}
