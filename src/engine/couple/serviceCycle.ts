import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import type { HeatNode, Service } from '../../../shared/solution.ts';
import { type HottestPoint, hottestOf } from '../amplifier/linearStage.ts';
import { ladderImpedance, ladderPeriodic, ladderResistance, type Segment } from '../heat/deviceLadder.ts';
import type { DutyPoint } from './duty.ts';
import type { PowerPoint } from './feed.ts';
import type { Final } from './final.ts';
import { converterRises, type HeatPath, localRise } from './heatPath.ts';
import { isMixed, tabulatedLoads } from './loadTable.ts';
import { type Loads, receivePoint, type ServiceLoad, serviceLoad } from './serviceLoad.ts';
import type { Store, StoreRises, StoreSegment } from './store.ts';

/** A held vowel: how long the envelope can stay at the hottest amplitude, s. Own choice, cautious. */
const vowelTime = 0.3;
/** Junction temperatures are settled to this, K, before the heat of a temperature-dependent final is believed. */
const settleTolerance = 1e-5;
const mostRounds = 80;
/** A junction this hot has run away, K: silicon is no semiconductor any more. */
const runawayTemperature = 900;

/** A design ready to be asked for any service at any duty. */
export interface Coupled {
  readonly design: Design;
  readonly loads: Loads;
  readonly path: HeatPath;
  readonly store: Store;
  readonly receive: PowerPoint;
  /** Hottest amplitude of a final that follows its envelope, at its PEP rail and a junction temperature; null for the others. */
  hottest(junction: number): HottestPoint | null;
  /** Load of a service at a junction temperature, kept when it does not depend on it. */
  load(service: Service, junction: number): Outcome<ServiceLoad>;
}

export function couple(
  design: Design,
  loads: Loads,
  path: HeatPath,
  store: Store,
  railAtPep: number,
): Outcome<Coupled> {
  const receive = receivePoint(loads, design.surroundings.ambient);
  if (!receive.ok) return receive;
  const kept = new Map<Service, Outcome<ServiceLoad>>();
  const table = tabulatedLoads(loads);
  const { final } = loads;
  return success({
    design,
    loads,
    path,
    store,
    receive: receive.value,
    hottest: (junction) => hottestAmplitude(final, railAtPep, junction),
    load(service, junction) {
      if (final.feelsTemperature) return table(service, junction);
      const known = kept.get(service) ?? serviceLoad(loads, service, junction);
      kept.set(service, known);
      return known;
    },
  });
}

function hottestAmplitude(final: Final, rail: number, junction: number): HottestPoint | null {
  if (!final.followsEnvelope) return null;
  return hottestOf((r) => {
    const point = final.at(r, rail, junction);
    return rail * point.railCurrent - point.rfPower + final.drivePower * r * r;
  });
}

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

/** Heat of the converter that goes into the amplifier's sink, W. */
function converterIntoPlate({ loads }: Coupled, part: HeatParts): number {
  return loads.feed.heatToSink * part.converterHeat;
}

/** What the cycle's two parts put into plate and case, W. */
function segmentOf(coupled: Coupled, duration: number, part: HeatParts): StoreSegment {
  const { feed } = coupled.loads;
  const toSink = coupled.design.amplifier.networkHeatToSink;
  const converterToSink = converterIntoPlate(coupled, part);
  const converterToCase = feed.heatToCase * part.converterHeat;
  return {
    duration,
    plate: part.deviceHeat + toSink * part.networkHeat + converterToSink,
    caseAir: (1 - toSink) * part.networkHeat + converterToCase + part.boards,
  };
}

type HeatParts = Pick<PowerPoint, 'deviceHeat' | 'networkHeat' | 'converterHeat' | 'boards'>;

/** Ripples already worked out: the duty does not change them. */
const knownRipples = new WeakMap<ServiceLoad, number>();

/** Rise of the junction within the over above what the over's mean heat gives, K. */
function rippleOf(coupled: Coupled, load: ServiceLoad): number {
  const known = knownRipples.get(load);
  if (known !== undefined) return known;
  if (isMixed(load)) {
    return load.parts.reduce((sum, [part, weight]) => sum + weight * rippleOf(coupled, part), 0);
  }
  const found = findRipple(coupled, load);
  knownRipples.set(load, found);
  return found;
}

function findRipple(coupled: Coupled, load: ServiceLoad): number {
  const { path } = coupled;
  const { spoken, segments } = load.signal;
  const mean = load.over.deviceHeat / path.deviceCount;
  if (spoken) {
    const most = (coupled.hottest(load.junction)?.heat ?? load.over.deviceHeat) / path.deviceCount;
    return Math.max(0, most - mean) * ladderImpedance(path.stages, vowelTime);
  }
  if (segments === null) return 0;
  const elements = segments.map(({ on, duration }) => ({
    duration,
    power: (on ? load.keyDownHeat : load.keyUpHeat) / path.deviceCount,
  }));
  // The plate under the device follows the elements too, in its own time.
  const stages = [...path.stages, { resistance: path.spreading, timeConstant: path.spreadingTime }];
  const device = ladderPeriodic(stages, elements).highest - mean * ladderResistance(stages);
  return Math.max(0, device) + plateRipple(elements, path.deviceCount / path.sink.heatCapacity);
}

/**
 * How far the plate swings above its course under the mean heat while a pattern repeats, K: the highest of
 * ∫(P - mean) dt/C over its own mean. Long slots only: dots and dashes move a sink by hundredths of a kelvin. What the
 * sink sheds meanwhile is left out; that is small while the pattern is short against the sink's time constant.
 *
 * perJoule: rise of the plate per joule into each device, K/J.
 */
function plateRipple(elements: readonly Segment[], perJoule: number): number {
  let period = 0;
  let energy = 0;
  for (const { duration, power } of elements) {
    period += duration;
    energy += power * duration;
  }
  let surplus = 0;
  let highest = 0;
  let area = 0;
  for (const { duration, power } of elements) {
    const step = (power - energy / period) * duration;
    area += (surplus + step / 2) * duration;
    surplus += step;
    highest = Math.max(highest, surplus);
  }
  return period > 0 ? (highest - area / period) * perJoule : 0;
}

/** One part of the cycle as the heat path meets it: into the stores, into one device, and the ripple on top. */
export interface HeatSegment {
  readonly segment: StoreSegment;
  /** Into one device, W. */
  readonly heat: number;
  /** Of the converter into the plate at its place, W. */
  readonly converterHeat: number;
  /** Plate under the hottest device over the plate's mean, K. */
  readonly local: number;
  /** K */
  readonly ripple: number;
}

/** The over and the rest of a cycle; a part of no duration is left out. */
export function heatSegments(coupled: Coupled, share: number, load: ServiceLoad): readonly HeatSegment[] {
  const { design, path, receive } = coupled;
  const cycle = design.service.cycle;
  const part = (duration: number, from: HeatParts, ripple: number): HeatSegment => {
    const heat = from.deviceHeat / path.deviceCount;
    const converterHeat = converterIntoPlate(coupled, from);
    return {
      segment: segmentOf(coupled, duration, from),
      heat,
      converterHeat,
      local: localRise(path, heat, converterHeat),
      ripple,
    };
  };
  return [
    part(share * cycle, load.over, rippleOf(coupled, load)),
    part((1 - share) * cycle, receive, 0),
  ].filter((each) => each.segment.duration > 0);
}

/** Whether every part of the design gets at least as much heat while transmitting as while listening. */
export function heatsMoreThanReceive(coupled: Coupled, load: ServiceLoad): boolean {
  const over = segmentOf(coupled, 1, load.over);
  const rest = segmentOf(coupled, 1, coupled.receive);
  return (
    load.over.deviceHeat >= coupled.receive.deviceHeat &&
    over.plate >= rest.plate &&
    over.caseAir >= rest.caseAir
  );
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
    const junction = plate.ends[i]! + part.local + device.ends[i]! + part.ripple;
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
    ripple: peak.ripple,
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
      !coupled.loads.final.feelsTemperature || Math.abs(state.junctionPeak - junction) < settleTolerance;
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
  const ripple = rippleOf(coupled, load.value);
  const local = localRise(path, perDevice, converterIntoPlate(coupled, load.value.over));
  const added = (time: number) => local + perDevice * ladderImpedance(path.stages, time) + ripple;
  return success(store.timeToLimit(segment, limit, added));
}
