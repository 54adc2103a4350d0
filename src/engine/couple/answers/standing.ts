import type { VerdictKey } from '../../../../shared/answers.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import {
  type Finding,
  type Service,
  type Solution,
  type State,
  services,
  type Verdict,
} from '../../../../shared/solution.ts';
import { joinUnit, writeKelvins, writeNumber } from '../../quantity/write.ts';
import { bandState } from '../bandVerdicts.ts';
import { junctionLimits, worst } from '../limits.ts';
import { judgePeople } from '../people.ts';
import { solve } from '../solve.ts';
import { peopleVerdict } from '../verdicts.ts';
import { atEdge, type Doubt, metalAtEdge, noDoubt } from './edge.ts';

/**
 * How a verdict stands, so that two designs can be compared: by `rank`, number by number, the first difference decides
 * and more is better.
 */
export interface Standing {
  readonly verdict: Verdict;
  readonly state: State;
  readonly rank: readonly number[];
  /** In the verdict's own measure: kelvins of margin, or complaints less. More is better. */
  readonly measure: number;
  /** What is missing until it is fine, in words; empty when it is fine. */
  readonly missing: string;
}

/** A design solved, with every verdict ready to be compared. */
export interface Judged {
  readonly design: Design;
  readonly solution: Solution;
  readonly standings: Readonly<Record<VerdictKey, Standing>>;
}

export const verdictKeys: readonly VerdictKey[] = ['ssb', 'cw', 'keyDown', 'supply', 'people'];

const stateRank: Readonly<Record<State, number>> = { over: 0, close: 1, fine: 2 };
/** Places of the converter's heat and of the drop in the rank of the supply. */
const heatPlace = 4;
const dropPlace = 5;
/** Stands for a figure that cannot be computed at all: worse than anything that can. */
const nothingAtAll = -1e6;
/** Differences below this are rounding. */
const noticeable = 1e-6;
/** Less than this many kelvins, or this share of the voltage, is not worth a word. */
const tellKelvins = 0.2;
const tellDrop = 5e-4;

const kelvins = (value: number) => writeKelvins(value, true);

function verdictOf(solution: Solution, key: VerdictKey): Verdict {
  return solution.verdicts.find((verdict) => verdict.key === key)!;
}

function serviceStanding(design: Design, solution: Solution, service: Service, doubt: Doubt): Standing {
  const verdict = verdictOf(solution, service);
  const result = solution.services[service];
  const nominal = solution.values[`${service}.junctionPeak`];
  if (!result.ok || nominal === undefined) {
    const missing = result.ok ? verdict.sentence : result.reason.sentence;
    return { verdict, state: 'over', rank: [0, -1, nothingAtAll], measure: nothingAtAll, missing };
  }
  const limits = junctionLimits(design.device, design.limits);
  const peak = atEdge(nominal, design.surroundings.ambient, service, doubt);
  const margin = limits.design - peak;
  const blockers = forbidding(solution);
  const state = worst([result.value.state, bandState(nominal, peak, limits)]);
  return {
    verdict: { ...verdict, state },
    state,
    rank: [stateRank[state], -blockers.length, margin],
    measure: margin,
    missing: state === 'fine' ? '' : missingOfService(margin, blockers, result.value.governing.sentence),
  };
}

function forbidding({ findings }: Solution): readonly Finding[] {
  return [...findings.supply, ...findings.final].filter((finding) => finding.forbids);
}

function missingOfService(margin: number, blockers: readonly Finding[], governing: string): string {
  const heat = margin < 0 ? [`the junction is ${kelvins(margin)} above its design limit`] : [];
  const others = blockers.map((finding) => lowerFirst(withoutStop(finding.sentence)));
  const all = [...heat, ...others];
  return all.length > 0 ? all.join('; ') : lowerFirst(withoutStop(governing));
}

/** Hottest junction of a converter designed from its parts while one of them is beyond its limit, K; otherwise 0. */
function converterHeat({ findings, values }: Solution): number {
  const hot = findings.supply.some(({ key }) => /^converter(Switch|Rectifier)Junction$/.test(key));
  if (!hot) return 0;
  return Math.max(
    ...services.flatMap((service) => [
      values[`${service}.switchJunction`] ?? 0,
      values[`${service}.rectifierJunction`] ?? 0,
    ]),
  );
}

function supplyStanding(design: Design, solution: Solution): Standing {
  const verdict = verdictOf(solution, 'supply');
  const findings = solution.findings.supply;
  const over = findings.filter((finding) => finding.state === 'over').length;
  const close = findings.filter((finding) => finding.state === 'close').length;
  const current = solution.values.inputCurrentPep;
  if (current === undefined) {
    return {
      verdict,
      state: verdict.state,
      rank: [0, nothingAtAll],
      measure: nothingAtAll,
      missing: lowerFirst(withoutStop(verdict.sentence)),
    };
  }
  const drop = solution.values.pathDropShare ?? 0;
  const asked = solution.values.pep ?? 0;
  // Among equal complaints the one with less drop and less power lost is the better supply.
  const lost = Math.max(0, design.amplifier.pep - asked) / design.amplifier.pep;
  return {
    verdict,
    state: verdict.state,
    rank: [stateRank[verdict.state], -over, -close, -lost, -converterHeat(solution), -drop, -current],
    measure: -(over + close),
    missing: findings.map((finding) => lowerFirst(withoutStop(finding.sentence))).join('; '),
  };
}

/** What is said of people, with the metal at its pessimistic edge. */
function peopleAtEdge(design: Design, solution: Solution, doubt: Doubt) {
  const metal = metalAtEdge(design, solution, doubt);
  if (metal === null || doubt.from === null) {
    return { verdict: verdictOf(solution, 'people'), touchTemperature: solution.values.touchTemperature };
  }
  const people = judgePeople(design, metal.nominal, metal.edge);
  const touchTemperature = people.touch.temperature ?? undefined;
  const values = touchTemperature === undefined ? solution.values : { ...solution.values, touchTemperature };
  return { verdict: peopleVerdict(people.judgement, values), touchTemperature };
}

function peopleStanding(design: Design, solution: Solution, doubt: Doubt): Standing {
  const { verdict, touchTemperature } = peopleAtEdge(design, solution, doubt);
  const { touchThreshold, exposureDistance, nearestPerson } = solution.values;
  if (touchTemperature === undefined) {
    return {
      verdict,
      state: verdict.state,
      rank: [0, nothingAtAll],
      measure: nothingAtAll,
      missing: 'nothing can be said of the metal',
    };
  }
  const touch = touchTemperature;
  const distance = exposureDistance ?? 0;
  const burns = touchThreshold !== undefined && touch > touchThreshold;
  const near = nearestPerson !== undefined && nearestPerson < distance;
  return {
    verdict,
    state: verdict.state,
    rank: [stateRank[verdict.state], -Number(burns) - Number(near), -touch, -distance],
    measure: -touch,
    missing: verdict.state === 'fine' ? '' : lowerFirst(withoutStop(verdict.sentence)),
  };
}

/** Solves a design in full and ranks its verdicts. */
export function judge(design: Design, doubt: Doubt = noDoubt): Judged {
  const solution = solve(design);
  return {
    design,
    solution,
    standings: {
      ssb: serviceStanding(design, solution, 'ssb', doubt),
      cw: serviceStanding(design, solution, 'cw', doubt),
      keyDown: serviceStanding(design, solution, 'keyDown', doubt),
      supply: supplyStanding(design, solution),
      people: peopleStanding(design, solution, doubt),
    },
  };
}

/** Positive when `b` stands better than `a`, negative when worse, 0 when alike. */
export function compareStandings(a: Standing, b: Standing): number {
  for (let i = 0; i < Math.max(a.rank.length, b.rank.length); i += 1) {
    const difference = (b.rank[i] ?? 0) - (a.rank[i] ?? 0);
    if (Math.abs(difference) > noticeable) return difference;
  }
  return 0;
}

/** What was gained between two standings of a verdict, in words; empty where it is not worth a word. */
export function gainWords(key: VerdictKey, before: Standing, after: Standing): string {
  const gained = after.measure - before.measure;
  if (before.measure <= nothingAtAll || after.measure <= nothingAtAll) return '';
  if (key === 'supply') return supplyGain(before, after);
  if (Math.abs(gained) < tellKelvins) return '';
  const words = `${kelvins(gained)} ${gained > 0 ? 'cooler' : 'hotter'}`;
  return key === 'people' ? `metal ${words}` : words;
}

function supplyGain(before: Standing, after: Standing): string {
  const faults = after.measure - before.measure;
  if (faults !== 0) {
    const count = Math.abs(faults);
    return `${count} ${count === 1 ? 'fault' : 'faults'} ${faults > 0 ? 'less' : 'more'}`;
  }
  const cooler = (after.rank[heatPlace] ?? 0) - (before.rank[heatPlace] ?? 0);
  if (Math.abs(cooler) >= tellKelvins) {
    return `converter ${kelvins(cooler)} ${cooler > 0 ? 'cooler' : 'hotter'}`;
  }
  const drop = (after.rank[dropPlace] ?? 0) - (before.rank[dropPlace] ?? 0);
  if (Math.abs(drop) < tellDrop) return '';
  const share = joinUnit(writeNumber(Math.abs(drop) * 100, 2, true), '%');
  return `${share} ${drop > 0 ? 'less' : 'more'} drop`;
}

/** How a verdict changes: better or worse only where it would be told. */
export function changeOf(key: VerdictKey, before: Standing, after: Standing): 'better' | 'worse' | 'same' {
  const direction = compareStandings(before, after);
  const told =
    before.state !== after.state || before.rank[1] !== after.rank[1] || gainWords(key, before, after) !== '';
  if (!told || direction === 0) return 'same';
  return direction > 0 ? 'better' : 'worse';
}

/**
 * The verdict to begin with: the worst of supply and services, the supply first since it can forbid them all; people
 * when these are fine. Null when all are.
 */
export function worstVerdict(judged: Judged): VerdictKey | null {
  const order: readonly VerdictKey[] = ['supply', 'keyDown', 'cw', 'ssb'];
  for (const state of ['over', 'close'] as const) {
    const found = order.find((key) => judged.standings[key].state === state && possible(judged, key));
    if (found) return found;
  }
  return judged.standings.people.state === 'fine' ? null : 'people';
}

/** A service that the class of the final refuses is no question of heat or supply. */
function possible(judged: Judged, key: VerdictKey): boolean {
  if (key === 'supply' || key === 'people') return true;
  const result = judged.solution.services[key];
  return result.ok || result.reason.key !== 'notLinear';
}

export function isService(key: VerdictKey): key is Service {
  return (services as readonly string[]).includes(key);
}

function withoutStop(sentence: string): string {
  return sentence.trim().replace(/\.$/, '');
}

function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
