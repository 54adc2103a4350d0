import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import type { HeatNode, Service } from '../../../shared/solution.ts';
import { ladderImpedance, ladderPeriodic, ladderResistance } from '../heat/deviceLadder.ts';
import type { Coupled } from './coupled.ts';
import { converterIntoPlate, type HeatSegment, heatSegments, rippleOf, segmentOf } from './cycleHeat.ts';
import type { DutyPoint } from './duty.ts';
import { converterRises, localRise } from './heatPath.ts';
import type { ServiceLoad } from './serviceLoad.ts';
import type { StoreRises, StoreSegment } from './store.ts';

const mostRounds = 80;
/** A junction this hot has run away, K: silicon is no semiconductor any more. */
const runawayTemperature = 900;

/** A service at one duty in its periodic steady state. Temperatures K, heat W. */
export interface CycleState extends DutyPoint {
  readonly share: number;
  readonly junctionMean: number;
  readonly plateMean: number;
  readonly sinkAir: number;
  readonly ripple: number;
  /** Plate under the hottest device over the plate's mean, mean of the cycle. */
  readonly localMean: number;
  /** When the junction is hottest: mean plate, heat into one device, heat of the converter into the plate. */
  readonly plateAtPeak: number;
  readonly heatAtPeak: number;
  readonly converterHeatAtPeak: number;
  /** Plate under the parts of the converter over the plate's mean then, in their order. */
  readonly converterRises: readonly number[];
  readonly deviceHeatCycle: number;
  readonly plateHeat: number;
  readonly caseHeat: number;
  readonly converterHeatToSink: number;
  readonly load: ServiceLoad;
  readonly nodes: readonly HeatNode[];
  readonly iterations: number;
  readonly guess: CycleGuess;
}

/** Where to start the search for a neighbouring state. */
export interface CycleGuess {
  readonly store: StoreRises;
  /** K */
  readonly junction: number;
}

function cycleWith(coupled: Coupled, share: number, load: ServiceLoad, guess?: StoreRises): CycleState {
  const { path, store, receive } = coupled;
  const parts = heatSegments(coupled, share, load);
  const plate = store.periodic(
    parts.map((part) => part.segment),
    guess,
  );
  const device = ladderPeriodic(
    path.stages,
    parts.map((part) => ({ duration: part.segment.duration, power: part.heat })),
  );
  let hottest = 0;
  let junctionPeak = -Infinity;
  parts.forEach((part, i) => {
    if (part.standsIn) return;
    const under = plate.ends[i]! + part.local;
    const junction = under + device.ends[i]! + part.ripple(climbOf(coupled, part, plate.ends[i]!, plate.air));
    if (junction <= junctionPeak) return;
    junctionPeak = junction;
    hottest = i;
  });
  const meanOf = (overPart: number, restPart: number) => share * overPart + (1 - share) * restPart;
  const deviceHeatCycle = meanOf(load.over.deviceHeat, receive.deviceHeat);
  const perDevice = deviceHeatCycle / path.deviceCount;
  const peak = parts[hottest]!;
  const converterHeatToSink = meanOf(
    converterIntoPlate(coupled, load.over),
    converterIntoPlate(coupled, receive),
  );
  const localMean = localRise(path, perDevice, converterHeatToSink);
  const underMean = plate.mean + localMean;
  const underPeak = plate.ends[hottest]! + peak.local;
  const junctionMean = underMean + perDevice * ladderResistance(path.stages);
  return {
    share,
    junctionPeak,
    junctionMean,
    platePeak: plate.highest,
    plateMean: plate.mean,
    sinkAir: plate.air,
    ripple:
      peak.ripple(climbOf(coupled, peak, plate.ends[hottest]!, plate.air)) + aboveMean(coupled, load, peak),
    localMean,
    plateAtPeak: plate.ends[hottest]!,
    heatAtPeak: peak.heat,
    converterHeatAtPeak: peak.converterHeat,
    converterRises: converterRises(path, peak.heat, peak.converterHeat),
    deviceHeatCycle,
    plateHeat: cycleMean(parts, (segment) => segment.plate),
    caseHeat: cycleMean(parts, (segment) => segment.caseAir),
    converterHeatToSink,
    load,
    nodes: [
      { key: 'junction', label: 'junction', mean: junctionMean, peak: junctionPeak },
      {
        key: 'case',
        label: 'case',
        mean: underMean + perDevice * path.padResistance,
        peak: underPeak + peak.heat * path.padResistance,
      },
      { key: 'plateUnderDevice', label: 'plate under the device', mean: underMean, peak: underPeak },
      { key: 'plate', label: 'plate, mean', mean: plate.mean, peak: plate.highest },
      { key: 'air', label: 'air at the fins', mean: plate.air, peak: plate.air },
    ],
    iterations: plate.iterations,
    guess: { store: plate.guess, junction: junctionPeak },
  };
}

/** How fast the plate climbs at the end of a part, K/s. */
function climbOf({ path }: Coupled, { segment }: HeatSegment, plate: number, air: number): number {
  return Math.max(0, segment.plate - path.table.heat(plate - air)) / path.sink.heatCapacity;
}

/** How much more than the over's mean heat warms the device and the plate under it in the hottest part of slots, K. */
function aboveMean({ path }: Coupled, load: ServiceLoad, { heat }: HeatSegment): number {
  const more = heat - load.over.deviceHeat / path.deviceCount;
  return Math.max(0, more) * (ladderResistance(path.stages) + path.spreading);
}

function cycleMean(parts: readonly HeatSegment[], power: (segment: StoreSegment) => number): number {
  let energy = 0;
  let time = 0;
  for (const { segment } of parts) {
    energy += power(segment) * segment.duration;
    time += segment.duration;
  }
  return energy / time;
}

const runaway = (temperature: number): Outcome<never> =>
  failure(
    'runaway',
    'The heat grows faster with temperature than the sink can shed it: there is no steady state. Lower the power or the duty, use a larger sink, or a device with less on-resistance.',
    { temperature },
  );

/** A junction temperature that was tried, and the one its heat leads to, K. */
interface Tried {
  readonly junction: number;
  readonly answer: number;
}

/** Slopes of the answer above this are taken for a runaway in the making: plain steps show it. */
const steepest = 0.98;

/**
 * Where to try next: along the chord through the last two tries. The answer bends upwards, so a chord from below falls
 * short of the balance and cannot leap over it.
 */
function nextJunction(tried: Tried, before: Tried | undefined): number {
  const span = before ? tried.junction - before.junction : 0;
  if (!before || Math.abs(span) < 1e-9) return tried.answer;
  const slope = (tried.answer - before.answer) / span;
  if (!(Math.abs(slope) < steepest)) return tried.answer;
  return tried.junction + (tried.answer - tried.junction) / (1 - slope);
}

/**
 * Periodic steady state of a service at a duty. A temperature-dependent final is settled by repeating heat and
 * temperature until they agree; if they never do, it is a runaway.
 */
export function cycleAt(
  coupled: Coupled,
  service: Service,
  share: number,
  guess?: CycleGuess,
): Outcome<CycleState> {
  let junction = guess?.junction ?? coupled.design.surroundings.ambient;
  let start = guess?.store;
  let iterations = 0;
  let before: Tried | undefined;
  for (let round = 0; round < mostRounds; round += 1) {
    const load = coupled.load(service, junction);
    if (!load.ok) return load;
    const state = cycleWith(coupled, share, load.value, start);
    iterations += state.iterations;
    const done =
      !coupled.loads.final.feelsTemperature ||
      Math.abs(state.junctionPeak - junction) < coupled.settleTolerance;
    if (done) return success({ ...state, iterations });
    if (state.junctionPeak > runawayTemperature) return runaway(state.junctionPeak);
    const tried = { junction, answer: state.junctionPeak };
    junction = nextJunction(tried, before);
    before = tried;
    start = state.guess.store;
  }
  return runaway(junction);
}

/** Unbroken transmission from cold: no bias heat before, everything at room temperature, until `limit`, s; null when never. */
export function holdTimeOf(coupled: Coupled, service: Service, limit: number): Outcome<number | null> {
  const load = coupled.load(service, limit);
  if (!load.ok) return load;
  const { path, store } = coupled;
  const segment = segmentOf(coupled, 0, load.value.over);
  const perDevice = load.value.over.deviceHeat / path.deviceCount;
  const ripple = rippleOf(coupled, load.value, 0);
  const local = localRise(path, perDevice, converterIntoPlate(coupled, load.value.over));
  const added = (time: number) => local + perDevice * ladderImpedance(path.stages, time) + ripple;
  return success(store.timeToLimit(segment, limit, added));
}
