import { ladderImpedance, ladderPeriodic, ladderResistance, type Segment } from '../heat/deviceLadder.ts';
import type { Coupled } from './coupled.ts';
import type { PowerPoint } from './feed.ts';
import { type HeatPath, localRise } from './heatPath.ts';
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

/** A hot moment of a pattern. */
interface Crest {
  /** Junction over what the over's mean heat gives, what the plate gains within the pattern included, K. */
  readonly rise: number;
  /** Before the end of the pattern, s. */
  readonly before: number;
}

/** Crests already worked out: the duty does not change them. */
const knownCrests = new WeakMap<ServiceLoad, readonly Crest[]>();

/**
 * Rise of the junction within the over above what the over's mean heat gives, K.
 *
 * climb: of the plate at the end of the over, K/s: a crest before the end finds it that much cooler.
 */
export function rippleOf(coupled: Coupled, load: ServiceLoad, climb: number): number {
  if (isMixed(load)) {
    return load.parts.reduce((sum, [part, weight]) => sum + weight * rippleOf(coupled, part, climb), 0);
  }
  const crests = knownCrests.get(load) ?? crestsOf(coupled, load);
  knownCrests.set(load, crests);
  let highest = 0;
  for (const { rise, before } of crests) highest = Math.max(highest, rise - climb * before);
  return highest;
}

function crestsOf(coupled: Coupled, load: ServiceLoad): readonly Crest[] {
  const { path } = coupled;
  const { spoken, segments } = load.signal;
  const mean = load.over.deviceHeat / path.deviceCount;
  if (spoken) {
    const most = (coupled.hottest(load.junction)?.heat ?? load.over.deviceHeat) / path.deviceCount;
    return [{ rise: Math.max(0, most - mean) * ladderImpedance(path.stages, vowelTime), before: 0 }];
  }
  if (segments === null) return [];
  const elements = segments.map(({ on, duration }) => ({
    duration,
    power: (on ? load.keyDownHeat : load.keyUpHeat) / path.deviceCount,
  }));
  return patternCrests(path, elements);
}

/**
 * Crests of a pattern that repeats: ends of its elements that no later one outdoes, on the device's own time constants,
 * the plate's under it, and the sink's heat capacity. What the sink sheds of the swing within a pattern is left out; that
 * is small while the pattern is short against its time constant.
 */
function patternCrests(path: HeatPath, elements: readonly Segment[]): readonly Crest[] {
  const period = elements.reduce((sum, { duration }) => sum + duration, 0);
  const mean = elements.reduce((sum, { duration, power }) => sum + power * duration, 0) / period;
  const stages = [...path.stages, { resistance: path.spreading, timeConstant: path.spreadingTime }];
  const { ends } = ladderPeriodic(stages, elements);
  const settled = mean * ladderResistance(stages);
  const perJoule = path.deviceCount / path.sink.heatCapacity;
  const crests: Crest[] = [];
  let before = 0;
  // From the end backwards: the surplus there is none, the pattern having brought its mean.
  let surplus = 0;
  for (let i = elements.length - 1; i >= 0; i -= 1) {
    const rise = ends[i]! - settled + surplus * perJoule;
    if (rise > (crests.at(-1)?.rise ?? 0)) crests.push({ rise, before });
    const { duration, power } = elements[i]!;
    before += duration;
    surplus -= (power - mean) * duration;
  }
  return crests;
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
  /** Rise within the part above its mean heat, K, when the plate climbs by so many K/s at its end. */
  readonly ripple: (climb: number) => number;
  /** Its end tells nothing of the device: it stands for slots before. */
  readonly standsIn: boolean;
}

type MakePart = (
  duration: number,
  from: HeatParts,
  ripple?: HeatSegment['ripple'],
  standsIn?: boolean,
) => HeatSegment;

const noRipple = () => 0;

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
  const part: MakePart = (duration, from, ripple = noRipple, standsIn = false) => {
    const heat = from.deviceHeat / path.deviceCount;
    const converterHeat = converterIntoPlate(coupled, from);
    return {
      segment: segmentOf(coupled, duration, from),
      heat,
      converterHeat,
      local: localRise(path, heat, converterHeat),
      ripple,
      standsIn,
    };
  };
  const over = share * cycle;
  const parts = isSlotted(load.signal)
    ? slotSegments(load, receive, over, followed, part)
    : [part(over, load.over, (climb) => rippleOf(coupled, load, climb))];
  return [...parts, part(cycle - over, receive)].filter((each) => each.segment.duration > 0);
}

/** Slots followed one by one at the end of an over: the last is the hottest. */
const slotsFollowed = 1;

function slotSegments(
  load: ServiceLoad,
  receive: HeatParts,
  over: number,
  followed: number,
  part: MakePart,
): HeatSegment[] {
  const { segments, keyedShare } = load.signal;
  const slot = segments!.reduce((sum, { duration }) => sum + duration, 0);
  const heatOf: Readonly<Record<SlotPart['kind'], HeatParts>> = {
    sending: whileSending(load.over, receive, keyedShare),
    listening: receive,
    mean: load.over,
  };
  return slotCourse(over, slot, keyedShare, followed).map(({ kind, duration, standsIn }) =>
    part(duration, heatOf[kind], noRipple, standsIn),
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
