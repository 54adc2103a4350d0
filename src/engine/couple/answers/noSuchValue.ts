import type { FoundValue, Target } from '../../../../shared/answers.ts';
import { fieldsOf, leafAt, withValue } from '../../../../shared/design/leaves.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { failure, type Outcome } from '../../../../shared/outcome.ts';
import { type Solution, services } from '../../../../shared/solution.ts';
import { writeQuantity } from '../../quantity/write.ts';
import type { Doubt } from './edge.ts';
import type { Excess, Gauge } from './gauge.ts';
import { judge } from './standing.ts';
import type { Candidate, Unknown } from './unknown.ts';

/** Changes of the quantity below this share say that the unknown does nothing. */
const noInfluence = 1e-9;
/** Nearer by less than this share of what is left is not worth another value: the band is no better known (own choice). */
const worthwhile = 0.02;

/** One point of the first look. */
export interface Look {
  readonly value: Candidate;
  readonly excess: number | null;
}

/** One unknown, one target. */
export interface Search {
  readonly design: Design;
  readonly unknown: Unknown;
  readonly gauge: Gauge;
  readonly target: Target;
  readonly excess: Excess;
  readonly doubt: Doubt;
}

export function excessesOf(looks: readonly Look[]): readonly number[] {
  return looks.flatMap(({ excess }) => (excess === null ? [] : [excess]));
}

/** Whether the unknown changes the quantity at all. */
export function influences(looks: readonly Look[]): boolean {
  const all = excessesOf(looks);
  if (all.length < looks.length && all.length > 0) return true;
  const size = Math.max(...all.map(Math.abs), 1e-30);
  return all.length > 1 && Math.max(...all) - Math.min(...all) > noInfluence * size;
}

/** The quantity has no figure for any value. */
export function nothingComputed({ design, unknown, gauge }: Search): Outcome<never> {
  const reason = judge(design).solution.reasons[0]?.sentence ?? 'The design has no such figure.';
  return failure(
    'notComputed',
    `“${gauge.label}” cannot be computed for any value of “${unknown.label}”. ${reason}`,
  );
}

/** Names what else holds the unknown, if a choice of the same part of the design frees it. */
export function fixedByAnother(search: Search): Outcome<never> {
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

/** The quantity goes from one side of the target to the other without passing it. */
export function jumpedOver({ unknown, gauge, target }: Search, edge: FoundValue): Outcome<never> {
  return failure(
    'jump',
    `“${gauge.label}” jumps past ${gauge.write(target.value)} at ${edge.words} of “${unknown.label}”: it is ${edge.reachedWords} there. No value gives just the target.`,
  );
}

/** A value looked at with the quantity there. */
interface Seen {
  readonly value: Candidate;
  readonly reached: number | null;
}

/** The looked-at value that comes nearest; the present one unless another is worth changing to. */
function nearestOf({ design, unknown, target }: Search, seen: readonly Seen[]) {
  const distance = ({ reached }: Seen) =>
    reached === null ? Number.POSITIVE_INFINITY : Math.abs(reached - target.value);
  const best = seen.reduce((before, one) => (distance(one) < distance(before) ? one : before));
  const now = leafAt(design, unknown.path);
  const present = seen.find(({ value }) => value === now);
  const stays = present !== undefined && distance(present) <= distance(best) * (1 + worthwhile);
  const all = seen.flatMap(({ reached }) => (reached === null ? [] : [reached]));
  const span = Math.max(...all) - Math.min(...all);
  return { nearest: stays ? present : best, stays, hardly: span <= worthwhile * distance(best) };
}

/** No value in the range does it: how near it comes, and what holds it. */
export function outOfReach(search: Search, looks: readonly Look[]): Outcome<never> {
  const { unknown, gauge, target } = search;
  const known = looks.filter((look): look is { value: Candidate; excess: number } => look.excess !== null);
  const seen = known.map(({ value }) => ({ value, reached: gauge.value(unknown.put(value)) }));
  const { nearest, stays, hardly } = nearestOf(search, seen);
  const range = `${unknown.write(unknown.candidates[0]!)} to ${unknown.write(unknown.candidates.at(-1)!)}`;
  const side = known.every((look) => look.excess > 0)
    ? ' Every value gives better than that.'
    : known.every((look) => look.excess < 0)
      ? ` Even that is not enough.${hardly ? hardlyMatters(unknown) : ''}${whyOf(search, unknown.put(nearest.value), hardly)}`
      : '';
  return failure(
    'outOfReach',
    `No value of “${unknown.label}” from ${range} gives ${gauge.write(target.value)} for “${gauge.label}”.${nearWords(search, nearest, stays)}${side}`,
  );
}

function nearWords({ unknown, gauge }: Search, { value, reached }: Seen, stays: boolean): string {
  if (reached === null) return '';
  return stays
    ? ` None comes notably nearer than the present ${unknown.writeRoughly(value)}, which gives ${gauge.write(reached)}.`
    : ` The nearest is ${gauge.write(reached)}, at ${unknown.writeRoughly(value)}.`;
}

function hardlyMatters({ label }: Unknown): string {
  return ` “${label}” hardly matters here; something else limits.`;
}

/** What governs at the nearest value; `closely` with the step of the heat path that takes most. */
function whyOf({ gauge }: Search, design: Design, closely: boolean): string {
  const { solution } = judge(design);
  const service = services.find((name) => gauge.quantity.startsWith(`${name}.`));
  const result = service ? solution.services[service] : undefined;
  if (result && !result.ok) return ` ${result.reason.sentence}`;
  if (service && result?.ok && result.value.governing.key !== 'none') {
    return ` ${result.value.governing.sentence}${closely ? greatestStep(solution.heatPath[service]) : ''}`;
  }
  const finding = solution.findings.supply[0];
  return finding ? ` ${finding.sentence}` : '';
}

/** "Of 130 K from junction to air 80 K lie between “junction” and “case”." */
function greatestStep(path: Solution['heatPath']['ssb']): string {
  const steps = path
    .slice(1)
    .map((node, i) => ({ from: path[i]!, to: node, rise: path[i]!.peak - node.peak }));
  const greatest = steps.reduce((best, step) => (step.rise > best.rise ? step : best), steps[0]!);
  if (!(greatest?.rise > 0)) return '';
  const kelvins = (value: number) => writeQuantity(value, 'temperatureDifference', 'K', 2);
  const whole = path[0]!.peak - path.at(-1)!.peak;
  return ` Of ${kelvins(whole)} from junction to air ${kelvins(greatest.rise)} lie between “${greatest.from.label}” and “${greatest.to.label}”.`;
}
