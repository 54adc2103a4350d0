import { ladderImpedance, ladderPeriodic, ladderResistance, type Segment } from '../heat/deviceLadder.ts';
import type { Coupled } from './coupled.ts';
import type { PowerPoint } from './feed.ts';
import { localRise } from './heatPath.ts';
import { isMixed } from './loadTable.ts';
import type { ServiceLoad } from './serviceLoad.ts';
import type { Signal } from './serviceSignal.ts';
import { type SlotPart, slotCourse } from './slotCourse.ts';
import type { StoreSegment } from './store.ts';

/** A held vowel: how long the envelope can stay at the hottest amplitude, s. Own choice, cautious. */
const vowelTime = 0.3;

/** Heat of the converter that goes into the amplifier's sink, W. */
export function converterIntoPlate({ loads }: Coupled, part: HeatParts): number {
  return loads.feed.heatToSink * part.converterHeat;
}

/** What the cycle's two parts put into plate and case, W. */
export function segmentOf(coupled: Coupled, duration: number, part: HeatParts): StoreSegment {
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
export function rippleOf(coupled: Coupled, load: ServiceLoad): number {
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
 * How far the plate climbs above its course under the mean heat within one pattern, K: the highest of ∫(P - mean) dt/C.
 * What the sink sheds meanwhile is left out; that is small while the pattern is short against the sink's time constant.
 * Dots and dashes move a sink by hundredths of a kelvin.
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
  for (const { duration, power } of elements) {
    surplus += (power - energy / period) * duration;
    highest = Math.max(highest, surplus);
  }
  return highest * perJoule;
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

/** Whether the over is made of slots: long enough that the plate follows each, with receiving between them. */
function isSlotted({ segments, keyUp }: Signal): boolean {
  return segments !== null && keyUp === 'receive';
}

/** Heat while a slot sends, from its mean over the slot and what is made while listening. */
function whileSending(mean: HeatParts, rest: HeatParts, keyedShare: number): HeatParts {
  const of = (key: keyof HeatParts) => (mean[key] - (1 - keyedShare) * rest[key]) / keyedShare;
  return {
    deviceHeat: of('deviceHeat'),
    networkHeat: of('networkHeat'),
    converterHeat: of('converterHeat'),
    boards: of('boards'),
  };
}

/**
 * The over and the rest of a cycle; a part of no duration is left out.
 *
 * An over in slots is divided as `slotCourse` says, since the sink follows slots; the elements of a keyed over are
 * short against the sink and stand in the ripple alone.
 *
 * followed: slots followed one by one at the end of the over; those before count with their mean.
 */
export function heatSegments(
  coupled: Coupled,
  share: number,
  load: ServiceLoad,
  followed = slotsFollowed,
): readonly HeatSegment[] {
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
  const over = share * cycle;
  const parts = isSlotted(load.signal)
    ? slotSegments(load, receive, over, followed, part)
    : [part(over, load.over, rippleOf(coupled, load))];
  return [...parts, part(cycle - over, receive, 0)].filter((each) => each.segment.duration > 0);
}

/** Slots followed one by one at the end of an over: the last is the hottest, the one before it warms the device up. */
const slotsFollowed = 2;

function slotSegments(
  load: ServiceLoad,
  receive: HeatParts,
  over: number,
  followed: number,
  part: (duration: number, from: HeatParts, ripple: number) => HeatSegment,
): HeatSegment[] {
  const { segments, keyedShare } = load.signal;
  const slot = segments!.reduce((sum, { duration }) => sum + duration, 0);
  const heatOf: Readonly<Record<SlotPart['kind'], HeatParts>> = {
    sending: whileSending(load.over, receive, keyedShare),
    listening: receive,
    mean: load.over,
  };
  return slotCourse(over, slot, keyedShare, followed).map(({ kind, duration }) =>
    part(duration, heatOf[kind], 0),
  );
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
