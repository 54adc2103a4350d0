import type { Design } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import type { RatingCurve, Service, Sweep, WarmUp } from '../../../shared/solution.ts';
import { ladderRise, ladderStep } from '../heat/deviceLadder.ts';
import type { Coupled } from './coupled.ts';
import { type HeatSegment, heatSegments } from './cycleHeat.ts';
import { coolEnough } from './people.ts';
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

/** Temperatures from cold through the first overs of a service at the planned duty, and the cool-down after them. */
export function warmUp(design: Design, service: Service): Outcome<WarmUp> {
  const { coupled } = prepare(design);
  if (!coupled.ok) return coupled;
  const settled = cycleAt(coupled.value, service, design.service.transmitShare);
  if (!settled.ok) return settled;
  return success(warmUpFrom(coupled.value, service, settled.value));
}

/** Slots drawn one by one in each over; of longer rows those before count with their mean. */
const slotsShown = 30;

/** A cool-down is drawn this much longer than the plate takes to be touchable, in this many pieces. */
const coolingMargin = 1.2;
const coolingPieces = 40;
/** Longest cool-down that is drawn, s. */
const longestCooling = 4 * 3600;

/** A piece of the curve, and the heat of the device and of what lies on top of the plate's mean in it. */
type Piece = Pick<HeatSegment, 'segment' | 'heat' | 'local' | 'ripple'>;

function piecesOf(part: HeatSegment): Piece[] {
  const { duration } = part.segment;
  return pieceEnds.map((end, i) => ({
    ...part,
    segment: { ...part.segment, duration: duration * (end - (pieceEnds[i - 1] ?? 0)) },
  }));
}

/** Pieces without any heat, together as long as the plate takes from a temperature to a touchable one and a little more. */
function coolingRow({ store, design }: Coupled, from: number, air: number): Piece[] {
  const needed = store.coolingTime(from, coolEnough, air);
  const whole = Math.min(
    Math.max((needed ?? longestCooling) * coolingMargin, design.service.cycle),
    longestCooling,
  );
  const piece: Piece = {
    segment: { duration: whole / coolingPieces, plate: 0, caseAir: 0 },
    heat: 0,
    local: 0,
    ripple: () => 0,
  };
  return Array.from({ length: coolingPieces }, () => piece);
}

/** When a curve that falls from a place on passes a level, s; null where it begins below or does not get there. */
function passing(
  time: readonly number[],
  values: readonly number[],
  from: number,
  level: number,
): number | null {
  if (values[from]! <= level) return null;
  const after = values.findIndex((value, i) => i > from && value <= level);
  if (after < 0) return null;
  const share = (values[after - 1]! - level) / (values[after - 1]! - values[after]!);
  return time[after - 1]! + share * (time[after]! - time[after - 1]!);
}

function warmUpFrom(coupled: Coupled, service: Service, settled: CycleState): WarmUp {
  const { path, store, design } = coupled;
  const parts = heatSegments(coupled, settled.share, settled.load, slotsShown);
  const cycle = parts.flatMap(piecesOf);
  // The last cycle ends with its over: then everything is switched off.
  const over = (settled.share > 0 && settled.share < 1 ? parts.slice(0, -1) : parts).flatMap(piecesOf);
  const run = [...Array.from({ length: warmUpCycles - 1 }, () => cycle).flat(), ...over];
  const hottest = store.warmUp(run.map((piece) => piece.segment)).at(-1)!;
  const row = [...run, ...coolingRow(coupled, hottest, settled.sinkAir)];
  const plate = [design.surroundings.ambient, ...store.warmUp(row.map((piece) => piece.segment))];
  const state = new Float64Array(path.stages.length);
  const time = [0];
  const junction = [design.surroundings.ambient];
  row.forEach((piece, i) => {
    ladderStep(path.stages, state, piece.heat, piece.segment.duration);
    time.push(time[i]! + piece.segment.duration);
    junction.push(plate[i + 1]! + piece.local + ladderRise(state) + piece.ripple(0));
  });
  const touchable = passing(time, plate, run.length, coolEnough);
  return { service, time, junction, plate, switchedOff: time[run.length]!, touchable, coolEnough };
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
