import type { Band, BandCurve, BandOptions, Edges, UnknownShare } from '../../../shared/band.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { type Service, services } from '../../../shared/solution.ts';
import { ninetyPercent } from '../numerics/normalQuantile.ts';
import { type BandSampler, bandSampler, type Sample } from './bandSampler.ts';
import { bandPeople, bandStates, bandVerdicts } from './bandVerdicts.ts';
import type { Coupled } from './coupled.ts';
import type { DutyLimit } from './duty.ts';
import { ratingRise } from './heatPath.ts';
import { type Prepared, prepare } from './prepare.ts';
import { type DutyCourse, dutyCourse, sampleDuty } from './sampleDuty.ts';
import { type CycleState, cycleAt, holdTimeOf } from './serviceCycle.ts';
import { dutyLimits, solve } from './solve.ts';

/** Samples when nothing else is asked for: a power of two, at which the sequence fills the space evenly. */
export const usualSamples = 512;
const usualSeed = 1;
/**
 * How much is drawn: samples, those of which whole curves and hold times are computed as well, and after how many the
 * caller is heard. A sink inside the case costs twenty times as much a sample, so it gets fewer.
 */
const openEffort = { samples: usualSamples, curves: 64, holds: Number.POSITIVE_INFINITY, chunk: 16 };
const insideEffort = { samples: 128, curves: 32, holds: 64, chunk: 2 };

/** Shares of the duty curve, close together where it rises steeply; points of the rating curve. */
const dutyShares = [0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 1] as const;
const ratingPoints = 12;
/** Rises between which the rating curve is given, K; as the curve itself. */
const ratingRises = { lowest: 5, highest: 100 } as const;
/** What a sample without a steady state counts as, K: silicon is none any more. */
const runawayTemperature = 900;
/** Unknowns with less of the variance are not worth a line. */
const leastShare = 0.01;

const percentiles = { low: 0.05, high: 0.95 } as const;

/** Samples of every figure by its key. Infinity stands for no limit. */
class Columns {
  readonly values = new Map<string, number[]>();

  put(key: string, value: number): void {
    const known = this.values.get(key);
    if (known) known.push(value);
    else this.values.set(key, [value]);
  }
}

function percentile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const low = sorted[Math.floor(place)]!;
  const high = sorted[Math.ceil(place)]!;
  return low === high ? low : low + (place - Math.floor(place)) * (high - low);
}

/** 5th and 95th percentile, widened to hold the nominal figure where that lies outside. */
function edgesOf(values: readonly number[], nominal: number | undefined): Edges {
  const sorted = Float64Array.from(values).sort();
  const low = percentile(sorted, percentiles.low);
  const high = percentile(sorted, percentiles.high);
  return {
    low: Math.min(low, nominal ?? low),
    high: Number.isFinite(high) ? Math.max(high, nominal ?? high) : null,
  };
}

function putService(columns: Columns, service: Service, state: CycleState | null, limit: number): void {
  const put = (key: string, value: number) => columns.put(`${service}.${key}`, value);
  const junction = Math.min(state?.junctionPeak ?? runawayTemperature, runawayTemperature);
  put('junctionPeak', junction);
  put('junctionMargin', limit - junction);
  if (state) {
    put('junctionMean', state.junctionMean);
    put('platePeak', state.platePeak);
    put('plateMean', state.plateMean);
    put('deviceHeatOver', state.load.over.deviceHeat);
    put('deviceHeatCycle', state.deviceHeatCycle);
    put('plateHeat', state.plateHeat);
    if (state.plateHeat > 0) put('sinkResistance', (state.plateMean - state.sinkAir) / state.plateHeat);
  }
}

function putHold(columns: Columns, service: Service, coupled: Coupled, limit: number): void {
  const hold = holdTimeOf(coupled, service, limit);
  if (hold.ok) columns.put(`${service}.holdTime`, hold.value ?? Number.POSITIVE_INFINITY);
}

function metalOf(state: CycleState): number {
  return state.nodes.find((node) => node.key === 'plateUnderDevice')?.peak ?? state.platePeak;
}

/** Air inside the case, K: that at the fins of a sink inside. */
function caseAirOf(sample: Sample, state: CycleState): number {
  return sample.design.sink.placement === 'inside' ? state.sinkAir : sample.caseAir(state.caseHeat);
}

/** One sample asked everything. */
function measure(
  columns: Columns,
  sampler: BandSampler,
  coupled: Sample,
  limits: readonly DutyLimit[],
  courses: Courses,
  withHold: boolean,
): void {
  const { design, nominal } = sampler;
  let metal = 0;
  for (const service of services) {
    const start = nominal[service];
    const course = courses[service];
    if (!start || !course) continue;
    const state = cycleAt(coupled, service, design.service.transmitShare, start.guess);
    putService(columns, service, state.ok ? state.value : null, limits[0]!.limit);
    if (withHold) putHold(columns, service, coupled, limits[0]!.limit);
    if (state.ok) {
      metal = Math.max(metal, metalOf(state.value));
      columns.put(`${service}.caseAir`, caseAirOf(coupled, state.value));
    }
    const duty = sampleDuty(coupled, service, limits, course, state.ok ? state.value : null);
    if (duty !== null) columns.put(`${service}.safeDuty`, duty);
  }
  if (metal > 0) columns.put('metal', metal);
  const { sink, padResistance, spreading } = coupled.path;
  const ambient = design.surroundings.ambient;
  const heat = sink.heat(ambient + ratingRise, ambient);
  columns.put('ratingHeat', heat);
  columns.put('ratingResistance', ratingRise / heat);
  columns.put('sinkHeatCapacity', sink.heatCapacity);
  columns.put('padResistance', padResistance);
  columns.put('spreadingResistance', spreading);
}

/** Duty curves of one sample, a row a service. */
function measureDuty(columns: Columns, sampler: BandSampler, coupled: Coupled): void {
  for (const service of services) {
    let guess = sampler.nominal[service]?.guess;
    if (!guess) continue;
    for (const [i, share] of dutyShares.entries()) {
      const state = cycleAt(coupled, service, share, guess);
      if (state.ok) guess = state.value.guess;
      columns.put(
        `${service} ${i}`,
        state.ok ? Math.min(state.value.junctionPeak, runawayTemperature) : runawayTemperature,
      );
    }
  }
}

function ratingHeats({ path, design }: Coupled): readonly number[] {
  const { ambient } = design.surroundings;
  return Array.from({ length: ratingPoints }, (_, i) => {
    const rise = ratingRises.lowest + ((ratingRises.highest - ratingRises.lowest) * i) / (ratingPoints - 1);
    return path.sink.heat(ambient + rise, ambient);
  });
}

function curveOf(columns: Columns, key: (i: number) => string, x: readonly number[]): BandCurve | null {
  if (!columns.values.has(key(0))) return null;
  const edges = x.map((_, i) => edgesOf(columns.values.get(key(i))!, undefined));
  return { x, low: edges.map((edge) => edge.low), high: edges.map((edge) => edge.high ?? edge.low) };
}

/** Squared correlation of each unknown with a temperature: its first-order share of the variance. */
function rankingOf(
  sampler: BandSampler,
  places: readonly Float64Array[],
  figure: readonly number[],
): readonly UnknownShare[] {
  const count = figure.length;
  const mean = figure.reduce((sum, value) => sum + value, 0) / count;
  const variance = figure.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count;
  if (!(variance > 0)) return [];
  const ranked = sampler.unknowns.map((unknown, i) => {
    let along = 0;
    let square = 0;
    let centre = 0;
    for (const row of places) centre += row[i]! / count;
    for (let n = 0; n < count; n++) {
      const z = places[n]![i]! - centre;
      along += z * (figure[n]! - mean);
      square += z * z;
    }
    const slope = along / square;
    return {
      key: unknown.key,
      label: unknown.label,
      advice: unknown.advice,
      path: unknown.path,
      share: Math.min(1, (slope * slope * square) / (count * variance)),
      effect: slope * ninetyPercent,
    };
  });
  return ranked.filter(({ share }) => share >= leastShare).sort((a, b) => b.share - a.share);
}

/** Edges a service's verdict speaks of, and all others that have a nominal value of the same key. */
function allEdges(columns: Columns, nominal: Readonly<Record<string, number>>): Record<string, Edges> {
  const edges: Record<string, Edges> = {};
  for (const [key, values] of columns.values) {
    if (key.includes(' ')) continue;
    edges[key] = edgesOf(values, nominal[key]);
  }
  return edges;
}

/**
 * The 90 % band of a design's results, in steps: yields the share done, returns the band.
 *
 * Every unknown (see `unknownsOf`) is drawn from a seeded quasi-random sequence; each sample is a possible truth that is
 * asked for its junction temperatures, safe duties, hold times, metal temperature and rating. Edges are 5th and 95th
 * percentiles. Room air carries no doubt: it is the warmest day the builder chose.
 *
 * @returns the design's own failure where it has no heat path or load
 */
export function* bandSteps(design: Design, options: BandOptions = {}): Generator<number, Outcome<Band>> {
  const effort = design.sink.placement === 'inside' ? insideEffort : openEffort;
  const samples = Math.max(16, Math.round(options.samples ?? effort.samples));
  const seed = options.seed ?? usualSeed;
  const prepared = prepare(design);
  const made = bandSampler(prepared, seed);
  if (!made.ok) return made;
  const sampler = made.value;
  const limits = dutyLimits(prepared);
  const columns = new Columns();
  const places: Float64Array[] = [];
  const base = prepared.coupled.ok ? prepared.coupled.value : null;
  const courses = base ? coursesOf(base, sampler, limits) : {};
  const heats = base ? ratingHeats(base) : [];
  for (let n = 0; n < samples; n++) {
    const row = new Float64Array(sampler.unknowns.length);
    const coupled = sampler.draw(n, row);
    places.push(row);
    measure(columns, sampler, coupled, limits, courses, n < effort.holds);
    heats.forEach((heat, i) => {
      columns.put(`rating ${i}`, coupled.path.table.rise(heat) / heat);
    });
    if (n < effort.curves) measureDuty(columns, sampler, coupled);
    if (n % effort.chunk === effort.chunk - 1) yield (n + 1) / samples;
  }
  return success(assemble(prepared, sampler, columns, places, heats, { samples, seed }));
}

type Courses = Readonly<Partial<Record<Service, DutyCourse>>>;

function coursesOf(base: Coupled, { nominal }: BandSampler, limits: readonly DutyLimit[]): Courses {
  const courses: Partial<Record<Service, DutyCourse>> = {};
  for (const service of services) {
    const planned = nominal[service];
    if (planned) courses[service] = dutyCourse(base, service, limits, planned);
  }
  return courses;
}

function assemble(
  prepared: Prepared,
  sampler: BandSampler,
  columns: Columns,
  places: readonly Float64Array[],
  heats: readonly number[],
  run: { readonly samples: number; readonly seed: number },
): Band {
  const { design } = prepared;
  const solution = solve(design);
  const edges = allEdges(columns, solution.values);
  const ranking: Partial<Record<Service, readonly UnknownShare[]>> = {};
  const duty: Partial<Record<Service, BandCurve>> = {};
  const runaway: Partial<Record<Service, number>> = {};
  for (const service of services) {
    const junction = columns.values.get(`${service}.junctionPeak`);
    if (!junction) continue;
    ranking[service] = rankingOf(sampler, places, junction);
    runaway[service] = junction.filter((value) => value >= runawayTemperature).length / junction.length;
    const curve = curveOf(columns, (i) => `${service} ${i}`, dutyShares);
    if (curve) duty[service] = curve;
  }
  const metal = columns.values.get('metal');
  const states = bandStates(prepared, solution, edges);
  return {
    ...run,
    edges,
    states,
    verdicts: bandVerdicts(prepared, solution, edges, states, runaway),
    people: bandPeople(prepared, solution, edges),
    ranking,
    metalRanking: metal?.length === places.length ? rankingOf(sampler, places, metal) : [],
    duty,
    rating: curveOf(columns, (i) => `rating ${i}`, heats),
    runaway,
    measured: sampler.knowledge.uncertainty !== null,
  };
}

/** The band in one go; see `bandSteps`. Fails with `cancelled` when told to stop. */
export function band(design: Design, options: BandOptions = {}): Outcome<Band> {
  const steps = bandSteps(design, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    options.onProgress?.(step.value);
    if (options.cancelled?.()) return failure('cancelled', 'The band was not finished.');
  }
}
