import type { Design } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import type { RatingCurve, Service, Sweep, WarmUp } from '../../../shared/solution.ts';
import { ladderRise, ladderStep } from '../heat/deviceLadder.ts';
import type { Coupled } from './coupled.ts';
import { heatSegments } from './cycleHeat.ts';
import { type Prepared, prepare } from './prepare.ts';
import { type CycleGuess, type CycleState, cycleAt } from './serviceCycle.ts';

/**
 * Junction temperature against duty for one service, each point the periodic steady state within its cycle.
 *
 * points: number of shares from 0 to 1, at least 2. Each point starts from its neighbour's state.
 */
export function sweep(design: Design, service: Service, points = 101): Outcome<Sweep> {
  return sweepPrepared(prepare(design), service, points);
}

export function sweepPrepared(prepared: Prepared, service: Service, points: number): Outcome<Sweep> {
  if (!prepared.coupled.ok) return prepared.coupled;
  const coupled = prepared.coupled.value;
  const count = Math.max(2, Math.round(points));
  const states: CycleState[] = [];
  let guess: CycleGuess | undefined;
  for (let i = 0; i < count; i += 1) {
    const state = cycleAt(coupled, service, i / (count - 1), guess);
    if (!state.ok) {
      // The curve ends where there is no steady state any more (runaway).
      if (states.length > 1) break;
      return state;
    }
    states.push(state.value);
    guess = state.value.guess;
  }
  return success({
    service,
    share: states.map((state) => state.share),
    junctionPeak: states.map((state) => state.junctionPeak),
    junctionMean: states.map((state) => state.junctionMean),
    platePeak: states.map((state) => state.platePeak),
  });
}

/** Overs shown in the warm-up. */
const warmUpCycles = 12;
/** Ends of the pieces into which each part of a cycle is cut: close together at first, where the device answers. */
const pieceEnds = [0.001, 0.005, 0.02, 0.06, 0.15, 0.35, 0.65, 1];

/** Temperatures from cold through the first overs of a service at the planned duty. */
export function warmUp(design: Design, service: Service): Outcome<WarmUp> {
  const { coupled } = prepare(design);
  if (!coupled.ok) return coupled;
  const settled = cycleAt(coupled.value, service, design.service.transmitShare);
  if (!settled.ok) return settled;
  return success(warmUpFrom(coupled.value, service, settled.value));
}

/** Slots drawn one by one in each over; of longer rows those before count with their mean. */
const slotsShown = 30;

function warmUpFrom(coupled: Coupled, service: Service, settled: CycleState): WarmUp {
  const { path, store, design } = coupled;
  const pieces = heatSegments(coupled, settled.share, settled.load, slotsShown).flatMap((part) =>
    pieceEnds.map((end, i) => ({
      ...part,
      segment: { ...part.segment, duration: part.segment.duration * (end - (pieceEnds[i - 1] ?? 0)) },
    })),
  );
  const row = Array.from({ length: warmUpCycles }, () => pieces).flat();
  const plate = store.warmUp(row.map((piece) => piece.segment));
  const state = new Float64Array(path.stages.length);
  const time = [0];
  const junction = [design.surroundings.ambient];
  let now = 0;
  row.forEach((piece, i) => {
    ladderStep(path.stages, state, piece.heat, piece.segment.duration);
    now += piece.segment.duration;
    time.push(now);
    junction.push(plate[i]! + piece.local + ladderRise(state) + piece.ripple(0));
  });
  return { service, time, junction, plate: [design.surroundings.ambient, ...plate] };
}

/** Rises of the rating curve, K: from a warm hand to the hottest that makes sense. */
const lowestRise = 5;
const highestRise = 100;
const ratingPoints = 39;

/** Sink resistance against heat in air of the design's room temperature. */
export function ratingCurve(design: Design): Outcome<RatingCurve> {
  const { path } = prepare(design);
  if (!path.ok) return path;
  const ambient = design.surroundings.ambient;
  const rise = Array.from(
    { length: ratingPoints },
    (_, i) => lowestRise + ((highestRise - lowestRise) * i) / (ratingPoints - 1),
  );
  const heat = rise.map((value) => path.value.sink.heat(ambient + value, ambient));
  return success({ heat, rise, resistance: rise.map((value, i) => value / heat[i]!) });
}
