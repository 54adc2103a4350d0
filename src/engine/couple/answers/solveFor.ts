import type { Edge, FoundValue, Target, UnknownAnswer, UnknownQuestion } from '../../../../shared/answers.ts';
import { fieldsOf, leafAt, withValue } from '../../../../shared/design/leaves.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../../shared/outcome.ts';
import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { doubtSteps } from './doubt.ts';
import { tidy } from './edits.ts';
import { type Excess, excessOver, type Gauge, gaugeFor, meets } from './gauge.ts';
import { type Doubt, judge, noDoubt, verdictKeys } from './standing.ts';
import { lastOf, within } from './steps.ts';
import { type Candidate, type Unknown, unknownAt } from './unknown.ts';

/** Search ends when the bracket has shrunk to this share of itself. */
const rootTolerance = 1e-9;
const mostSteps = 60;
/** Changes of the quantity below this share say that the unknown does nothing. */
const noInfluence = 1e-9;
/** Share of the work that the first band and the first search take each. */
const firstShare = 0.2;
/** Searches in which edge and value are brought together. */
const edgeRounds = 3;
/** Values of one unknown that lie this close, as a share, are the same. */
const sameValue = 5e-3;

/** One point of the first look. */
interface Look {
  readonly value: Candidate;
  readonly excess: number | null;
}

interface Search {
  readonly design: Design;
  readonly unknown: Unknown;
  readonly gauge: Gauge;
  readonly target: Target;
  readonly excess: Excess;
  readonly doubt: Doubt;
}

function* lookAll({ unknown, excess }: Search): Generator<number, readonly Look[]> {
  const looks: Look[] = [];
  for (const value of unknown.candidates) {
    looks.push({ value, excess: excess(unknown.put(value)) });
    yield looks.length / (unknown.candidates.length + 1);
  }
  return looks;
}

function excessesOf(looks: readonly Look[]): readonly number[] {
  return looks.flatMap(({ excess }) => (excess === null ? [] : [excess]));
}

function influences(looks: readonly Look[]): boolean {
  const all = excessesOf(looks);
  if (all.length < looks.length && all.length > 0) return true;
  const size = Math.max(...all.map(Math.abs), 1e-30);
  return all.length > 1 && Math.max(...all) - Math.min(...all) > noInfluence * size;
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

function foundAt(search: Search, value: Candidate): FoundValue | null {
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

function* solveOne(search: Search): Generator<number, Outcome<Solved>> {
  const looks = yield* lookAll(search);
  if (excessesOf(looks).length === 0) return nothingComputed(search);
  if (!influences(looks)) return fixedByAnother(search);
  const values = search.unknown.continuous ? rootsOf(search, looks) : optionsOf(search, looks);
  const all = values.flatMap((value) => foundAt(search, value) ?? []);
  const found = all.filter((one) => accepted(search, one));
  if (found.length > 0) return success({ found, looks });
  return all.length > 0 ? jumpedOver(search, all[0]!) : outOfReach(search, looks);
}

function nothingComputed({ design, unknown, gauge }: Search): Outcome<never> {
  const reason = judge(design).solution.reasons[0]?.sentence ?? 'The design has no such figure.';
  return failure(
    'notComputed',
    `“${gauge.label}” cannot be computed for any value of “${unknown.label}”. ${reason}`,
  );
}

/** Names what else holds the unknown, if a choice of the same part of the design frees it. */
function fixedByAnother(search: Search): Outcome<never> {
  const { design, unknown, gauge } = search;
  const holder = holderOf(search);
  if (holder) {
    return failure(
      'fixedByAnother',
      `“${unknown.label}” has no effect while “${holder.label}” is “${holder.now}”. Choose “${holder.instead}” first.`,
    );
  }
  const looked = `${unknown.write(unknown.candidates[0]!)} to ${unknown.write(unknown.candidates.at(-1)!)}`;
  const value = gauge.value(design);
  const now = value === null ? '' : ` It is ${gauge.write(value)}.`;
  return failure('noInfluence', `“${unknown.label}” from ${looked} does not change “${gauge.label}”.${now}`);
}

interface Holder {
  readonly label: string;
  readonly now: string;
  readonly instead: string;
}

function holderOf({ design, unknown, excess }: Search): Holder | null {
  const section = unknown.path.split('.')[0]!;
  const { candidates } = unknown;
  const probes = [candidates[0]!, candidates[Math.floor(candidates.length / 2)]!, candidates.at(-1)!];
  for (const { path, spec } of fieldsOf(design)) {
    if (path === unknown.path || path.split('.')[0] !== section) continue;
    const present = leafAt(design, path);
    for (const { value, words } of alternatives(spec, present)) {
      const freed = withValue(design, path, value);
      const looks = probes.map((probe) => {
        const tried = withValue(freed, unknown.path, probe);
        return { value: probe, excess: excess(tried) };
      });
      const all = excessesOf(looks);
      if (all.length > 1 && influences(looks)) {
        return { label: spec.label, now: wordsOf(spec, present), instead: words };
      }
    }
  }
  return null;
}

type Spec = ReturnType<typeof fieldsOf>[number]['spec'];

function alternatives(spec: Spec, present: unknown): readonly { value: unknown; words: string }[] {
  if (spec.kind === 'flag') return [{ value: !present, words: present ? 'no' : 'yes' }];
  if (spec.kind !== 'choice') return [];
  return Object.entries(spec.options)
    .filter(([key]) => key !== present)
    .map(([value, words]) => ({ value, words }));
}

function wordsOf(spec: Spec, value: unknown): string {
  if (spec.kind === 'choice') return spec.options[String(value)] ?? String(value);
  return value === true ? 'yes' : 'no';
}

function jumpedOver({ unknown, gauge, target }: Search, edge: FoundValue): Outcome<never> {
  return failure(
    'jump',
    `“${gauge.label}” jumps past ${gauge.write(target.value)} at ${edge.words} of “${unknown.label}”: it is ${edge.reachedWords} there. No value gives just the target.`,
  );
}

/** No value in the range does it: how near it comes, and what holds it. */
function outOfReach(search: Search, looks: readonly Look[]): Outcome<never> {
  const { unknown, gauge, target } = search;
  const known = looks.filter((look): look is { value: Candidate; excess: number } => look.excess !== null);
  const seen = known.map((look) => ({ ...look, reached: gauge.value(unknown.put(look.value)) }));
  const distance = (one: (typeof seen)[number]) =>
    one.reached === null ? Number.POSITIVE_INFINITY : Math.abs(one.reached - target.value);
  const nearest = seen.reduce((best, one) => (distance(one) < distance(best) ? one : best));
  const design = unknown.put(nearest.value);
  const { reached } = nearest;
  const range = `${unknown.write(unknown.candidates[0]!)} to ${unknown.write(unknown.candidates.at(-1)!)}`;
  const near =
    reached === null ? '' : ` The nearest is ${gauge.write(reached)}, at ${unknown.write(nearest.value)}.`;
  const side = known.every((look) => look.excess > 0)
    ? ' Every value gives better than that.'
    : known.every((look) => look.excess < 0)
      ? ` Even that is not enough.${whyOf(search, design)}`
      : '';
  return failure(
    'outOfReach',
    `No value of “${unknown.label}” from ${range} gives ${gauge.write(target.value)} for “${gauge.label}”.${near}${side}`,
  );
}

/** What governs at the nearest value. */
function whyOf({ gauge }: Search, design: Design): string {
  const { solution } = judge(design);
  const service = (['ssb', 'cw', 'keyDown'] as const).find((name) => gauge.quantity.startsWith(`${name}.`));
  const result = service ? solution.services[service] : undefined;
  if (result && !result.ok) return ` ${result.reason.sentence}`;
  if (result?.ok && result.value.governing.key !== 'none') return ` ${result.value.governing.sentence}`;
  const finding = solution.findings.supply[0];
  return finding ? ` ${finding.sentence}` : '';
}

function same(a: Candidate, b: Candidate): boolean {
  if (typeof a !== 'number' || typeof b !== 'number') return a === b;
  return Math.abs(a - b) <= sameValue * Math.max(Math.abs(a), Math.abs(b));
}

/** Values that meet all targets at once; contradictory ones are told with what each asks for. */
function common(
  unknown: Unknown,
  all: readonly { readonly gauge: Gauge; readonly target: Target; readonly found: readonly FoundValue[] }[],
): Outcome<readonly FoundValue[]> {
  const [first, ...others] = all;
  const kept = first!.found.filter((one) =>
    others.every((other) => other.found.some((candidate) => same(candidate.value, one.value))),
  );
  if (kept.length > 0) return success(kept);
  const asks = all.map(
    ({ gauge, target, found }) =>
      `${gauge.write(target.value)} of “${gauge.label}” asks for ${found.map((one) => one.words).join(' or ')}`,
  );
  return failure(
    'contradictoryTargets',
    `The targets contradict each other: ${asks.join('; ')}. One value of “${unknown.label}” cannot do both.`,
  );
}

function sentenceOf(unknown: Unknown, gauge: Gauge, found: readonly FoundValue[]): string {
  const gives = `“${gauge.label}”`;
  const first = found[0]!;
  if (found.length === 1)
    return `“${unknown.label}” of ${first.words} gives ${first.reachedWords} for ${gives}.`;
  const values = found.map((one) => one.words);
  if (unknown.continuous) {
    return `There are ${found.length} values: “${unknown.label}” of ${values.join(' and ')} each give ${first.reachedWords} for ${gives}, since it does not rise or fall throughout.`;
  }
  if (unknown.ordered) {
    return `“${unknown.label}” of ${values.join(' and ')}: between or beyond these ${gives} is as asked, since it does not rise or fall throughout.`;
  }
  return `${found.length} choices of “${unknown.label}” do it: ${values.join(', ')}.`;
}

/**
 * Finds the value of one given field at which found quantities meet their targets.
 *
 * The whole range of the field is looked at first, so that several solutions are all found as long as they lie more
 * than a scan step apart; each is then bracketed on the full engine. Whole numbers and choices are looked at one by
 * one, with the target as a bound.
 *
 * edge: which figure of the junctions counts; at the pessimistic edge the search is repeated with the band of the
 * design that was found. Fails with `noSuchField`, `notAnUnknown`, `noSuchQuantity`,
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
  design: Design,
  question: UnknownQuestion,
  edge: Edge = 'nominal',
): Generator<number, Outcome<UnknownAnswer>> {
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
  const all: { gauge: Gauge; target: Target; found: readonly FoundValue[]; looks: readonly Look[] }[] = [];
  for (const target of question.targets) {
    const gauge = gaugeFor(target.quantity, doubt);
    if (!gauge.ok) return gauge;
    const excess = excessOver(gauge.value, target.value, doubt);
    const one = yield* solveOne({
      design,
      unknown: unknown.value,
      gauge: gauge.value,
      target,
      excess,
      doubt,
    });
    if (!one.ok) return one;
    all.push({ gauge: gauge.value, target, ...one.value });
  }
  const kept = common(unknown.value, all);
  if (!kept.ok) return kept;
  const gauges = all.map(({ gauge }) => gauge);
  return success({
    label: unknown.value.label,
    dimension: unknown.value.field?.dimension ?? null,
    edge,
    found: kept.value,
    sentence: sentenceOf(unknown.value, gauges[0]!, kept.value),
    curve: curveOf(unknown.value, gauges[0]!, all[0]!.looks),
  });
}

/** The quantity itself over the range, where the values are numbers. */
function curveOf(unknown: Unknown, gauge: Gauge, looks: readonly Look[]): UnknownAnswer['curve'] {
  if (unknown.field === null) return [];
  return looks.map(({ value, excess }) => ({
    value: Number(value),
    quantity: excess === null ? null : gauge.value(unknown.put(value)),
  }));
}
