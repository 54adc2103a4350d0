import type { Design } from '../../../shared/design/schema.ts';
import { type Note, type Outcome, success } from '../../../shared/outcome.ts';
import type { Service } from '../../../shared/solution.ts';
import { type AveragePower, averagePoints, type Feed, type PowerPoint, powerPoint } from './feed.ts';
import type { Final } from './final.ts';
import { averageRatioOf, needsLinear, refusedForClass, type Signal, signalOf } from './serviceSignal.ts';
import { serviceWords } from './serviceWords.ts';

/** What one over of a service takes and gives, at one junction temperature. */
export interface ServiceLoad {
  /** Averages over the over. */
  readonly over: AveragePower;
  /** Average RF power asked for, over PEP. */
  readonly averageRatio: number;
  /** Device heat with the key down and up, W; equal in a service without elements. */
  readonly keyDownHeat: number;
  readonly keyUpHeat: number;
  readonly signal: Signal;
  /** Junction temperature it was worked out for, K. */
  readonly junction: number;
}

/** The electrical side of a design, ready to be asked at any junction temperature. */
export interface Loads {
  readonly design: Design;
  readonly feed: Feed;
  readonly final: Final;
  readonly notes: readonly Note[];
}

export function prepareLoads(design: Design, feed: Feed, final: Final): Outcome<Loads> {
  return success({ design, feed, final, notes: feed.notes });
}

/** The instant at envelope amplitude r while transmitting. */
export function transmitPoint(
  loads: Loads,
  amplitude: number,
  junction: number,
  bias = true,
): Outcome<PowerPoint> {
  const { design, feed, final } = loads;
  return powerPoint(feed, final, amplitude, junction, design.boards.transmitPower, bias);
}

/** While listening: boards in receive, bias only if the design keeps it on. */
export function receivePoint(loads: Loads, junction: number): Outcome<PowerPoint> {
  const { design, feed, final } = loads;
  return powerPoint(feed, final, 0, junction, design.boards.receivePower, design.amplifier.biasInReceive);
}

/** Averages of one over of a service at a junction temperature. */
export function serviceLoad(loads: Loads, service: Service, junction: number): Outcome<ServiceLoad> {
  const { design, final } = loads;
  if (!final.followsEnvelope && needsLinear(design, service)) {
    return refusedForClass(design.amplifier.class, serviceWords(design)[service].name);
  }
  const signal = signalOf(design, service, final.breaks(junction));
  return signal.ok ? loadOfSignal(loads, signal.value, junction) : signal;
}

function loadOfSignal(loads: Loads, signal: Signal, junction: number): Outcome<ServiceLoad> {
  const { amplitude, weight } = signal.envelope;
  const points: PowerPoint[] = [];
  let notes: readonly Note[] = [];
  const weights: number[] = [];
  for (let i = 0; i < amplitude.length; i += 1) {
    const point = transmitPoint(loads, amplitude[i]!, junction);
    if (!point.ok) return point;
    points.push(point.value);
    notes = point.notes;
    weights.push(signal.keyedShare * weight[i]!);
  }
  if (signal.segments === null) {
    const over = averagePoints(points, weights);
    const heat = over.deviceHeat;
    return success(
      { over, averageRatio: averageRatioOf(signal), keyDownHeat: heat, keyUpHeat: heat, signal, junction },
      notes,
    );
  }
  const up = keyUpPoint(loads, signal, junction);
  if (!up.ok) return up;
  return success(
    {
      over: averagePoints([...points, up.value], [...weights, 1 - signal.keyedShare]),
      averageRatio: averageRatioOf(signal),
      keyDownHeat: points.at(-1)!.deviceHeat,
      keyUpHeat: up.value.deviceHeat,
      signal,
      junction,
    },
    notes,
  );
}

function keyUpPoint(loads: Loads, signal: Signal, junction: number): Outcome<PowerPoint> {
  if (signal.keyUp === 'receive') return receivePoint(loads, junction);
  return transmitPoint(loads, 0, junction, signal.keyUp === 'bias');
}
