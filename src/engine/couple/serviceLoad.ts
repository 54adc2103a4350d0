import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Note, type Outcome, success } from '../../../shared/outcome.ts';
import type { Service } from '../../../shared/solution.ts';
import { classAEnd } from '../amplifier/linearStage.ts';
import { type KeyingPattern, keyingPattern } from '../signal/keying.ts';
import { speechEnvelope } from '../signal/speechEnvelope.ts';
import { type AveragePower, averagePoints, type Feed, type PowerPoint, powerPoint } from './feed.ts';
import type { Final } from './final.ts';

/** What one over of a service takes and gives, at one junction temperature. */
export interface ServiceLoad {
  /** Averages over the over. */
  readonly over: AveragePower;
  /** Average RF power asked for, over PEP. */
  readonly averageRatio: number;
  /** Device heat with the key down and up, W; equal in a service without elements. */
  readonly keyDownHeat: number;
  readonly keyUpHeat: number;
}

/** The electrical side of a design, ready to be asked at any junction temperature. */
export interface Loads {
  readonly design: Design;
  readonly feed: Feed;
  readonly final: Final;
  readonly pattern: KeyingPattern;
  readonly notes: readonly Note[];
}

export function prepareLoads(design: Design, feed: Feed, final: Final): Outcome<Loads> {
  const pattern = keyingPattern(design.service.keyingSpeed);
  if (!pattern.ok) return pattern;
  return success({ design, feed, final, pattern: pattern.value, notes: feed.notes });
}

/** The instant at envelope amplitude r while transmitting. */
export function transmitPoint(
  loads: Loads,
  amplitude: number,
  junction: number,
  bias = true,
): Outcome<PowerPoint> {
  const { design, feed, final } = loads;
  return powerPoint(
    feed,
    final,
    design.amplifier.outputLoss,
    amplitude,
    junction,
    design.boards.transmitPower,
    bias,
  );
}

/** While listening: boards in receive, bias only if the design keeps it on. */
export function receivePoint(loads: Loads, junction: number): Outcome<PowerPoint> {
  const { design, feed, final } = loads;
  return powerPoint(
    feed,
    final,
    design.amplifier.outputLoss,
    0,
    junction,
    design.boards.receivePower,
    design.amplifier.biasInReceive,
  );
}

const refusedForSsb = (className: string) =>
  failure(
    'notLinear',
    `Class ${className} cannot carry SSB: its output does not follow the envelope. Use class A, AB or B for voice.`,
  );

/** Averages of one over of a service at a junction temperature. */
export function serviceLoad(loads: Loads, service: Service, junction: number): Outcome<ServiceLoad> {
  if (service === 'ssb') return speechLoad(loads, junction);
  if (service === 'cw') return keyedLoad(loads, junction);
  return carrierLoad(loads, junction);
}

function carrierLoad(loads: Loads, junction: number): Outcome<ServiceLoad> {
  const point = transmitPoint(loads, 1, junction);
  if (!point.ok) return point;
  const heat = point.value.deviceHeat;
  return success(
    { over: averagePoints([point.value], [1]), averageRatio: 1, keyDownHeat: heat, keyUpHeat: heat },
    point.notes,
  );
}

function keyedLoad(loads: Loads, junction: number): Outcome<ServiceLoad> {
  const down = transmitPoint(loads, 1, junction);
  if (!down.ok) return down;
  const up = transmitPoint(loads, 0, junction, !loads.design.amplifier.biasKeyed);
  if (!up.ok) return up;
  const keyed = loads.pattern.keyedShare;
  return success(
    {
      over: averagePoints([down.value, up.value], [keyed, 1 - keyed]),
      averageRatio: keyed,
      keyDownHeat: down.value.deviceHeat,
      keyUpHeat: up.value.deviceHeat,
    },
    down.notes,
  );
}

function speechLoad(loads: Loads, junction: number): Outcome<ServiceLoad> {
  const { design, final } = loads;
  if (!final.followsEnvelope || !final.linear) return refusedForSsb(design.amplifier.class);
  const knee = classAEnd(final.linear, final.powerAtPep);
  const envelope = speechEnvelope(design.service.averageToPeak, 1, knee > 0 && knee < 1 ? [knee] : []);
  if (!envelope.ok) return envelope;
  const { amplitude, weight } = envelope.value;
  const points: PowerPoint[] = [];
  for (let i = 0; i < amplitude.length; i += 1) {
    const point = transmitPoint(loads, amplitude[i]!, junction);
    if (!point.ok) return point;
    points.push(point.value);
  }
  const over = averagePoints(points, Array.from(weight));
  return success({
    over,
    averageRatio: envelope.value.averageToPeak,
    keyDownHeat: over.deviceHeat,
    keyUpHeat: over.deviceHeat,
  });
}
