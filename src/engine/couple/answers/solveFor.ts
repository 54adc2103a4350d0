import type { Edge, FoundValue, UnknownAnswer, UnknownQuestion } from '../../../../shared/answers.ts';
import { withValue } from '../../../../shared/design/leaves.ts';
import { withLoggedSinks } from '../../../../shared/design/loggedSink.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../../shared/outcome.ts';
import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { doubtSteps } from './doubt.ts';
import { type Doubt, noDoubt } from './edge.ts';
import { tidy } from './edits.ts';
import { excessOver, figureWords, type Gauge, gaugeFor, meets } from './gauge.ts';
import {
  excessesOf,
  fixedByAnother,
  influences,
  jumpedOver,
  type Look,
  nothingComputed,
  outOfReach,
  type Search,
} from './noSuchValue.ts';
import { judge, verdictKeys } from './standing.ts';
import { lastOf, within } from './steps.ts';
import { type Candidate, type Unknown, unknownAt } from './unknown.ts';

/** Search ends when the bracket has shrunk to this share of itself. */
const rootTolerance = 1e-9;
const mostSteps = 60;
/** Share of the work that the first band and the first search take each. */
const firstShare = 0.2;
/** Searches in which edge and value are brought together. */
const edgeRounds = 3;
/** Values of one unknown that lie this close, as a share, are the same. */
const sameValue = 5e-3;

function* lookAll({ unknown, excess }: Search): Generator<number, readonly Look[]> {
  const looks: Look[] = [];
  for (const value of unknown.candidates) {
    looks.push({ value, excess: excess(unknown.put(value)) });
    yield looks.length / (unknown.candidates.length + 1);
  }
  return looks;
}

/** Where the excess changes sign between two neighbouring looks, and exact hits. */
function rootsOf(search: Search, looks: readonly Look[]): readonly number[] {
  const { unknown, excess } = search;
  const roots: number[] = [];
  for (let i = 0; i + 1 < looks.length; i += 1) {
    const a = looks[i]!;
    const b = looks[i + 1]!;
    if (a.excess === null || b.excess === null) continue;
    if (a.excess === 0) roots.push(Number(a.value));
    if (a.excess * b.excess >= 0) continue;
    const low = Number(a.value);
    const high = Number(b.value);
    const root = bracketedRoot((value) => excess(unknown.put(value)) ?? Number.NaN, low, high, {
      tolerance: rootTolerance * (high - low) + 1e-12 * high,
      maxIterations: mostSteps,
    });
    if (root.ok) roots.push(root.value.root);
  }
  const last = looks.at(-1);
  if (last?.excess === 0) roots.push(Number(last.value));
  return roots;
}

/** Whole numbers and sizes in order: the ones on the good side of each crossing; unordered choices: all that do it. */
function optionsOf({ unknown }: Search, looks: readonly Look[]): readonly Candidate[] {
  const fits = (look: Look | undefined) => look !== undefined && look.excess !== null && look.excess >= -1e-9;
  if (!unknown.ordered) return looks.filter(fits).map((look) => look.value);
  return looks
    .filter((look, i) => {
      if (!fits(look)) return false;
      const crossesBelow = i > 0 && !fits(looks[i - 1]);
      const crossesAbove = i + 1 < looks.length && !fits(looks[i + 1]);
      return crossesBelow || crossesAbove;
    })
    .map((look) => look.value);
}

function foundAt(search: Search, value: Candidate, beside: readonly Search[] = []): FoundValue | null {
  const { unknown, gauge, doubt } = search;
  const exact = typeof value === 'number' ? tidy(value) : value;
  const design = unknown.put(exact);
  const judged = judge(design, doubt);
  const reached = gauge.value(design);
  if (reached === null) return null;
  return {
    value: exact,
    words: unknown.write(exact),
    reached,
    reachedWords: gauge.write(reached),
    others: beside.map(({ gauge: other }) => {
      const figure = other.value(design);
      return { label: other.label, words: figure === null ? 'no limit' : other.write(figure) };
    }),
    edit: { path: unknown.path, value: exact },
    verdicts: verdictKeys.map((key) => {
      const { verdict, state } = judged.standings[key];
      return { key, name: verdict.name, state, headline: verdict.headline };
    }),
  };
}

/** For a choice the target is a bound; a number must meet it. */
function accepted(search: Search, found: FoundValue): boolean {
  return !search.unknown.continuous || meets(search.gauge, found.reached, search.target.value);
}

interface Solved {
  readonly found: readonly FoundValue[];
  readonly looks: readonly Look[];
}

interface Solved {
  readonly found: readonly FoundValue[];
  readonly looks: readonly Look[];
}

/** Values for one target; `always` when every value looked at keeps it, so that it asks for none of its own. */
function* solveOne(search: Search): Generator<number, { outcome: Outcome<Solved>; always: boolean }> {
  const looks = yield* lookAll(search);
  const known = excessesOf(looks);
  const always = known.length > 0 && known.every((excess) => excess >= 0);
  return { outcome: valuesOf(search, looks), always };
}

function valuesOf(search: Search, looks: readonly Look[]): Outcome<Solved> {
  if (excessesOf(looks).length === 0) return nothingComputed(search);
  if (!influences(looks)) return fixedByAnother(search);
  const values = search.unknown.continuous ? rootsOf(search, looks) : optionsOf(search, looks);
  const all = values.flatMap((value) => foundAt(search, value) ?? []);
  const found = all.filter((one) => accepted(search, one));
  if (found.length > 0) return success({ found, looks });
  return all.length > 0 ? jumpedOver(search, all[0]!) : outOfReach(search, looks);
}

function same(a: Candidate, b: Candidate): boolean {
  if (typeof a !== 'number' || typeof b !== 'number') return a === b;
  return Math.abs(a - b) <= sameValue * Math.max(Math.abs(a), Math.abs(b));
}

/** One target with what it asks for. */
interface Asked {
  readonly search: Search;
  readonly found: readonly FoundValue[];
  readonly looks: readonly Look[];
}

/** Whether a design keeps a target: meets it or is better. */
function keeps({ gauge, target }: Search, design: Design): boolean {
  const reached = gauge.value(design);
  if (reached === null) return gauge.quantity.endsWith('.holdTime');
  const better = gauge.moreIsBetter ? reached >= target.value : reached <= target.value;
  return better || meets(gauge, reached, target.value);
}

/**
 * Values at which one target is met and all others are kept, each told with all its figures; contradictory targets are
 * told with what each asks for.
 */
function common(all: readonly Asked[]): Outcome<readonly FoundValue[]> {
  const searches = all.map(({ search }) => search);
  const { unknown } = searches[0]!;
  const values = all
    .flatMap(({ found }) => found.map((one) => one.value))
    .filter((value, i, list) => list.findIndex((other) => same(other, value)) === i)
    .filter((value) => searches.every((search) => keeps(search, unknown.put(value))));
  const inOrder = unknown.continuous ? [...values].sort((a, b) => Number(a) - Number(b)) : values;
  const kept = inOrder.flatMap((value) => foundAt(searches[0]!, value, searches.slice(1)) ?? []);
  if (kept.length > 0) return success(kept);
  const asks = all
    .filter(({ found }) => found.length > 0)
    .map(
      ({ search: { gauge, target }, found }) =>
        `${gauge.write(target.value)} of “${gauge.label}” asks for ${found.map((one) => one.words).join(' or ')}`,
    );
  return failure(
    'contradictoryTargets',
    `The targets contradict each other: ${asks.join('; ')}. One value of “${unknown.label}” cannot do both.`,
  );
}

function figuresOf({ reachedWords, others }: FoundValue, gauge: Gauge): string {
  const more = others.map(({ label, words }) => ` and ${words} for “${label}”`);
  return `${reachedWords} for “${gauge.label}”${more.join('')}`;
}

function sentenceOf(unknown: Unknown, gauge: Gauge, found: readonly FoundValue[]): string {
  const gives = `“${gauge.label}”`;
  const first = found[0]!;
  if (found.length === 1) return `“${unknown.label}” of ${first.words} gives ${figuresOf(first, gauge)}.`;
  const values = found.map((one) => one.words);
  if (unknown.continuous) {
    return first.others.length === 0
      ? `There are ${found.length} values: “${unknown.label}” of ${values.join(' and ')} each give ${first.reachedWords} for ${gives}, since it does not rise or fall throughout.`
      : `There are ${found.length} values of “${unknown.label}” that do it: ${values.join(' and ')}.`;
  }
  if (unknown.ordered) {
    return `“${unknown.label}” of ${values.join(' and ')}: between or beyond these ${gives} is as asked, since it does not rise or fall throughout.`;
  }
  return `${found.length} choices of “${unknown.label}” do it: ${values.join(', ')}.`;
}

/**
 * Finds the value of one given field at which a found quantity meets its target. With several targets one is met and
 * the others are kept: met, or better.
 *
 * The whole range of the field is looked at first, so that several solutions are all found as long as they lie more
 * than a scan step apart; each is then bracketed on the full engine. Whole numbers and choices are looked at one by
 * one, with the target as a bound.
 *
 * edge: which figure counts; at the pessimistic edge the search is repeated with the band of the design that was found. Fails with `noSuchField`, `notAnUnknown`, `noSuchQuantity`,
 * `quantityIsGiven`, `notComputed`, `fixedByAnother`, `noInfluence`, `outOfReach`, `jump` or `contradictoryTargets`.
 */
export function solveFor(
  design: Design,
  question: UnknownQuestion,
  edge: Edge = 'nominal',
): Outcome<UnknownAnswer> {
  return lastOf(solveForSteps(design, question, edge));
}

/** Steps to the answer: yields the share done of the search in hand. */
export function* solveForSteps(
  given: Design,
  question: UnknownQuestion,
  edge: Edge = 'nominal',
): Generator<number, Outcome<UnknownAnswer>> {
  const design = withLoggedSinks(given);
  if (edge === 'nominal') return yield* solveAt(design, question, noDoubt, edge);
  const first = yield* within(doubtSteps(design), 0, firstShare);
  let answer = yield* within(solveAt(design, question, first, edge), firstShare, 2 * firstShare);
  for (let round = 0; round < edgeRounds && answer.ok; round += 1) {
    const before = answer.value.found[0]!;
    const begun = 2 * firstShare + ((1 - 2 * firstShare) * round) / edgeRounds;
    const middle = begun + (1 - 2 * firstShare) / (2 * edgeRounds);
    // The edge belongs to the design that is found, not to the one that asks.
    const changed = withValue(design, question.path, before.value);
    const doubt = yield* within(doubtSteps(changed), begun, middle);
    answer = yield* within(solveAt(design, question, doubt, edge), middle, 2 * middle - begun);
    if (answer.ok && same(answer.value.found[0]!.value, before.value)) break;
  }
  return answer;
}

function* solveAt(
  design: Design,
  question: UnknownQuestion,
  doubt: Doubt,
  edge: Edge,
): Generator<number, Outcome<UnknownAnswer>> {
  const unknown = unknownAt(design, question.path);
  if (!unknown.ok) return unknown;
  if (question.targets.length === 0) return failure('noTarget', 'Name what the result should be.');
  const all: Asked[] = [];
  for (const target of question.targets) {
    const gauge = gaugeFor(target.quantity, doubt);
    if (!gauge.ok) return gauge;
    const excess = excessOver(gauge.value, target.value, doubt);
    const search: Search = { design, unknown: unknown.value, gauge: gauge.value, target, excess, doubt };
    const { outcome, always } = yield* solveOne(search);
    if (!outcome.ok && !(always && question.targets.length > 1)) return outcome;
    all.push({ search, ...(outcome.ok ? outcome.value : { found: [], looks: [] }) });
  }
  if (all.every(({ found }) => found.length === 0)) return alwaysKept(all);
  const kept = common(all);
  if (!kept.ok) return kept;
  const { gauge } = all[0]!.search;
  return success({
    label: unknown.value.label,
    dimension: unknown.value.field?.dimension ?? null,
    edge,
    figures: [...new Set(all.map(({ search }) => figureWords(search.gauge.quantity, edge, doubt)))],
    found: kept.value,
    sentence: sentenceOf(unknown.value, gauge, kept.value),
    curve: curveOf(unknown.value, gauge, all[0]!.looks),
  });
}

function alwaysKept(all: readonly Asked[]): Outcome<never> {
  const { unknown } = all[0]!.search;
  return failure('outOfReach', `Every value of “${unknown.label}” keeps all of the targets.`);
}

/** The quantity itself over the range, where the values are numbers. */
function curveOf(unknown: Unknown, gauge: Gauge, looks: readonly Look[]): UnknownAnswer['curve'] {
  if (unknown.field === null) return [];
  return looks.map(({ value, excess }) => ({
    value: Number(value),
    quantity: excess === null ? null : gauge.value(unknown.put(value)),
  }));
}
