import {
  type Edge,
  type Edit,
  type Effort,
  efforts,
  type Reach,
  type Remedy,
  type RemedyList,
  type VerdictEffect,
  type VerdictKey,
} from '../../../../shared/answers.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import type { Caution, Severity } from '../../../../shared/solution.ts';
import { amplifierRemedies } from './amplifierRemedies.ts';
import { changedSamples, doubtOf, doubtSteps } from './doubt.ts';
import { dutyRemedies } from './dutyRemedies.ts';
import { type Doubt, noDoubt } from './edge.ts';
import { applyEdits, withinRanges } from './edits.ts';
import { strongestAllowed, weakestFitting } from './ladder.ts';
import { mountingRemedies } from './mountingRemedies.ts';
import type { Change, Offer } from './offer.ts';
import { peopleRemedies } from './peopleRemedies.ts';
import { quickMargin } from './quick.ts';
import { sinkRemedies } from './sinkRemedies.ts';
import {
  changeOf,
  compareStandings,
  gainWords,
  isService,
  type Judged,
  judge,
  type Standing,
  verdictKeys,
  worstVerdict,
} from './standing.ts';
import { lastOf, within } from './steps.ts';
import { supplyRemedies } from './supplyRemedies.ts';

/** A junction must get this much cooler before a change is worth a line, K. */
const leastGain = 0.5;
/** Single changes from which pairs are made. */
const pairedChanges = 7;
/** Share of the work that the band of the design itself takes. */
const doubtShare = 0.2;
/** Pairs shown. */
const shownPairs = 6;
/** A margin this small counts as kept, K: the searches end on buildable steps anyway. */
const marginSlack = 1e-9;

/** The job for one verdict: the base, how far it is from fine, and how any design is measured against it. */
interface Job {
  readonly base: Judged;
  readonly verdict: VerdictKey;
  readonly edge: Edge;
  readonly doubt: Doubt;
  /** 0 and more: the verdict is fine; NaN: the design may not be taken. */
  readonly worth: (design: Design, keepsPower: boolean) => number;
  readonly now: number;
}

/** A change chosen from an offer, solved in full. */
interface Chosen {
  readonly offer: Offer;
  readonly change: Change;
  readonly judged: Judged;
}

/**
 * What each place of a rank counts in one number: the state first, then complaints, then the finer figures, each too
 * small to outweigh the one before and large enough to be seen beside it. Currents say nothing that the drop does not.
 */
const rankWeights = {
  supply: [1, 1e-2, 1e-4, 1e-5, 1e-9, 1e-10, 0],
  people: [1, 1e-3, 1e-6, 1e-9],
} as const;

/** How far a judged verdict is from fine, as one number for searches: 0 and more is fine. */
function worthOf(judged: Judged, key: VerdictKey): number {
  const standing = judged.standings[key];
  if (standing.state === 'fine') return 0;
  if (isService(key)) {
    const [, blockers = 0] = standing.rank;
    return Math.min(standing.measure, -marginSlack) + 1000 * Math.min(0, blockers);
  }
  const weights = rankWeights[key];
  return (
    standing.rank.reduce((sum, part, i) => sum + Math.min(0, part) * weights[i]!, 0) + standing.rank[0]! - 3
  );
}

/** Whether the margin of the junction alone decides the verdict, so that the quick measure tells all. */
function junctionDecides({ design, solution, standings }: Judged, key: VerdictKey): boolean {
  if (!isService(key) || design.limits.touchGoverns) return false;
  return solution.services[key].ok && standings[key].rank[1] === 0;
}

function jobOf(base: Judged, verdict: VerdictKey, edge: Edge, doubt: Doubt): Job {
  const limitedNow = base.solution.findings.supply.some((finding) => finding.key === 'railLimitsPower');
  if (isService(verdict) && junctionDecides(base, verdict)) {
    return {
      base,
      verdict,
      edge,
      doubt,
      now: base.standings[verdict].measure,
      worth: (design, keepsPower) => {
        const { margin, limited } = quickMargin(design, verdict, doubt);
        if (keepsPower && limited && !limitedNow) return Number.NaN;
        return margin ?? Number.NEGATIVE_INFINITY;
      },
    };
  }
  return {
    base,
    verdict,
    edge,
    doubt,
    now: worthOf(base, verdict),
    worth: (design, keepsPower) => {
      const judged = judge(design, doubt);
      const limited = judged.solution.findings.supply.some((finding) => finding.key === 'railLimitsPower');
      return keepsPower && limited && !limitedNow ? Number.NaN : worthOf(judged, verdict);
    },
  };
}

function offersFor(base: Judged, verdict: VerdictKey): readonly Offer[] {
  const service = isService(verdict) ? verdict : 'keyDown';
  return [
    ...dutyRemedies(base),
    ...amplifierRemedies(base),
    ...mountingRemedies(service)(base),
    ...sinkRemedies(base),
    ...supplyRemedies(base),
    ...(verdict === 'people' ? peopleRemedies(base) : []),
  ];
}

/** The weakest step of an offer that makes the verdict fine, or the best there is; solved in full. */
function choose(job: Job, offer: Offer, before: Design = job.base.design): Chosen | null {
  const change = search(job, offer, before);
  if (!change) return null;
  const design = applyEdits(before, change.edits);
  const judged = judge(design, job.doubt);
  const sure =
    job.edge === 'nominal' || job.verdict === 'supply' || judged.standings[job.verdict].state !== 'fine';
  return sure ? { offer, change, judged } : chooseSurely(job, offer, before, change);
}

/** The edge moves with the change: what is enough is judged by a band of its own, and searched once more if need be. */
function chooseSurely(job: Job, offer: Offer, before: Design, change: Change): Chosen | null {
  const design = applyEdits(before, change.edits);
  const doubt = doubtOf(design, changedSamples);
  const judged = judge(design, doubt);
  if (judged.standings[job.verdict].state === 'fine') return { offer, change, judged };
  const again = search(jobOf(job.base, job.verdict, job.edge, doubt), offer, before);
  if (!again) return null;
  return { offer, change: again, judged: judge(applyEdits(before, again.edits), doubt) };
}

function search(job: Job, offer: Offer, before: Design): Change | null {
  const keepsPower = offer.keepsPower === true;
  const worth = (step: number) => {
    const { edits } = offer.at(step);
    return withinRanges(edits) ? job.worth(applyEdits(before, edits), keepsPower) : Number.NaN;
  };
  const count = keepsPower
    ? strongestAllowed((step) => !Number.isNaN(worth(step)), offer.count)
    : offer.count;
  const now = before === job.base.design ? job.now : job.worth(before, false);
  const found = weakestFitting(worth, count, now, offer.steady ?? true);
  return found !== null && found.worth > now ? offer.at(found.step) : null;
}

/** Whether everything that could be computed still can. */
function keepsResults(base: Judged, judged: Judged): boolean {
  return verdictKeys.every((key) => {
    if (!isService(key)) return true;
    return judged.solution.services[key].ok || !base.solution.services[key].ok;
  });
}

/** Whether a change is better for the verdict by more than nothing, and ruins nothing. */
function helps(job: Job, judged: Judged): boolean {
  if (!keepsResults(job.base, judged)) return false;
  const before = job.base.standings[job.verdict];
  const after = judged.standings[job.verdict];
  if (compareStandings(before, after) <= 0) return false;
  if (before.state !== after.state) return true;
  if (!isService(job.verdict)) return changeOf(job.verdict, before, after) === 'better';
  return after.measure - before.measure >= leastGain || after.rank[1] !== before.rank[1];
}

function effectsOf(base: Judged, judged: Judged): readonly VerdictEffect[] {
  return verdictKeys.map((key) => {
    const before = base.standings[key];
    const after = judged.standings[key];
    return {
      key,
      name: after.verdict.name,
      before: before.state,
      after: after.state,
      headline: after.verdict.headline,
      change: changeOf(key, before, after),
      gain: gainWords(key, before, after),
    };
  });
}

const severities: readonly Severity[] = ['note', 'caution', 'warning', 'danger'];
const gravity = (caution: Caution | undefined) => (caution ? severities.indexOf(caution.severity) : -1);

function newCautions(base: Judged, judged: Judged): readonly Caution[] {
  return judged.solution.cautions.filter((caution) => {
    const before = base.solution.cautions.find((other) => other.key === caution.key);
    return gravity(caution) > gravity(before);
  });
}

function remedyOf(job: Job, chosen: readonly Chosen[]): Remedy {
  const judged = chosen.at(-1)!.judged;
  const before = job.base.standings[job.verdict];
  const after = judged.standings[job.verdict];
  const titles = chosen.map(({ change }) => change.title);
  return {
    key: chosen.map(({ offer }) => offer.key).join(' + '),
    title: titles.map((title, i) => (i === 0 ? title : lowerFirst(title))).join(', and '),
    effort: hardest(chosen.map(({ offer }) => offer.effort)),
    edits: mergeEdits(chosen.flatMap(({ change }) => change.edits)),
    enough: after.state === 'fine',
    gain: gainOf(before, after),
    gainWords: gainWords(job.verdict, before, after),
    missing: after.missing,
    effects: effectsOf(job.base, judged),
    sideEffects: chosen.flatMap(({ change }) => change.sideEffects ?? []),
    newCautions: newCautions(job.base, judged),
  };
}

/** Gain for ranking; from nothing at all to something is the greatest gain. */
function gainOf(before: Standing, after: Standing): number {
  return after.measure - before.measure;
}

function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

function hardest(all: readonly Effort[]): Effort {
  return efforts[Math.max(...all.map((effort) => efforts.indexOf(effort)))]!;
}

/** The last word on each place. */
function mergeEdits(edits: readonly Edit[]): readonly Edit[] {
  return [...new Map(edits.map((edit) => [edit.path, edit])).values()];
}

/** Enough first, then the least effort, then the greatest gain. */
function ranked(all: readonly Remedy[]): readonly Remedy[] {
  return [...all].sort(
    (a, b) =>
      Number(b.enough) - Number(a.enough) ||
      efforts.indexOf(a.effort) - efforts.indexOf(b.effort) ||
      b.gain - a.gain,
  );
}

const touchesSame = (a: Chosen, b: Chosen) =>
  a.change.edits.some((edit) => b.change.edits.some((other) => other.path === edit.path));

/** Two changes together: the second as far as it must beside all of the first, then the first no further than it must. */
function bothOf(job: Job, first: Chosen, second: Chosen): readonly [Chosen, Chosen] | null {
  const after = choose(job, second.offer, first.judged.design);
  if (!after) return null;
  if (after.judged.standings[job.verdict].state !== 'fine') return [first, after];
  const less = choose(job, first.offer, applyEdits(job.base.design, after.change.edits));
  return less && less.judged.standings[job.verdict].state === 'fine' ? [after, less] : [first, after];
}

/** Pairs of the changes that are not enough alone. */
function pairsOf(job: Job, singles: readonly Chosen[]): readonly Remedy[] {
  const best = singles
    .filter(({ judged }) => judged.standings[job.verdict].state !== 'fine')
    .sort((a, b) => compareStandings(a.judged.standings[job.verdict], b.judged.standings[job.verdict]))
    .slice(0, pairedChanges);
  const found: Remedy[] = [];
  for (let i = 0; i < best.length; i += 1) {
    for (let j = i + 1; j < best.length; j += 1) {
      const first = best[i]!;
      const second = best[j]!;
      if (touchesSame(first, second)) continue;
      const both = bothOf(job, first, second);
      if (both && helps(job, both[1].judged)) found.push(remedyOf(job, both));
    }
  }
  return ranked(found).slice(0, shownPairs);
}

export interface RemedyOptions {
  /** The worst one if not given. */
  readonly verdict?: VerdictKey | undefined;
  /** Which figure counts; nominal if not given. */
  readonly edge?: Edge | undefined;
  /** Pairs are tried even where a single change is enough. */
  readonly pairs?: boolean | undefined;
}

/** Steps to the list of remedies for a verdict: yields the share done. */
export function* remedySteps(design: Design, options: RemedyOptions = {}): Generator<number, RemedyList> {
  const { verdict, edge = 'nominal' } = options;
  const begun = edge === 'pessimistic' ? doubtShare : 0;
  const doubt = begun > 0 ? yield* within(doubtSteps(design), 0, begun) : noDoubt;
  const base = judge(design, doubt);
  const key = verdict ?? worstVerdict(base);
  if (key === null || base.standings[key].state === 'fine') return nothingToDo(base, key ?? 'keyDown', edge);
  const job = jobOf(base, key, edge, doubt);
  const offers = offersFor(base, key);
  const chosen: Chosen[] = [];
  for (const [i, offer] of offers.entries()) {
    const found = choose(job, offer);
    if (found && helps(job, found.judged)) chosen.push(found);
    yield begun + ((1 - begun) * (i + 1)) / (offers.length + 1);
  }
  const remedies = ranked(chosen.map((one) => remedyOf(job, [one])));
  const alone = remedies.some((remedy) => remedy.enough);
  const pairs = alone && options.pairs !== true ? [] : pairsOf(job, chosen);
  return listOf(job, remedies, pairs);
}

/** Which figure decides a verdict. */
function figuresOf(verdict: VerdictKey, edge: Edge): string {
  if (edge === 'nominal') return 'Judged by the nominal figures.';
  if (verdict === 'supply') {
    return 'Judged by the nominal figures: the verdict of the 12\u202fV side has no band.';
  }
  if (verdict === 'people') {
    return 'The metal is judged at its pessimistic edge; distances are nominal figures, since the sheet knows no doubt of them.';
  }
  return 'The junction is judged at the pessimistic edge of its band; what is enough has been judged by a band of its own.';
}

function nothingToDo(base: Judged, verdict: VerdictKey, edge: Edge): RemedyList {
  const { name } = base.standings[verdict].verdict;
  return {
    verdict,
    name,
    state: 'fine',
    edge,
    figures: figuresOf(verdict, edge),
    missing: '',
    reach: 'fits',
    sentence: `${name} is fine as it stands: nothing needs to change for it.`,
    remedies: [],
    pairs: [],
  };
}

function listOf(job: Job, remedies: readonly Remedy[], pairs: readonly Remedy[]): RemedyList {
  const standing = job.base.standings[job.verdict];
  const enough = remedies.filter((remedy) => remedy.enough).length;
  const reach: Reach = enough > 0 ? 'one' : pairs.some((pair) => pair.enough) ? 'pair' : 'nothing';
  return {
    verdict: job.verdict,
    name: standing.verdict.name,
    state: standing.state,
    edge: job.edge,
    figures: figuresOf(job.verdict, job.edge),
    missing: standing.missing,
    reach,
    sentence: sentenceOf(reach, enough, remedies, pairs, standing),
    remedies,
    pairs,
  };
}

function sentenceOf(
  reach: Reach,
  enough: number,
  remedies: readonly Remedy[],
  pairs: readonly Remedy[],
  standing: Standing,
): string {
  const { name } = standing.verdict;
  if (reach === 'one') {
    const of = `${enough} of ${remedies.length} changes`;
    return enough === 1 ? `${of} makes ${name} fine.` : `${of} make ${name} fine, each alone.`;
  }
  if (reach === 'pair') return `No single change makes ${name} fine; two together do.`;
  const best = [...pairs, ...remedies].sort((a, b) => b.gain - a.gain)[0];
  if (!best) return `Nothing here helps ${name}: ${standing.missing}.`;
  return `Nothing here is enough for ${name}. With the best of it (${lowerFirst(best.title)}) this is left: ${best.missing}.`;
}

/**
 * Changes that help a verdict, each solved in full, best first: enough before not enough, then by effort, then by gain.
 * Changes with degrees are taken as weak as they may be. Where no single one is enough, pairs are tried.
 */
export function remedies(design: Design, options: RemedyOptions = {}): RemedyList {
  return lastOf(remedySteps(design, options));
}
