import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import { leastSquares } from '../numerics/leastSquares.ts';
import { nonNegativeLeastSquares } from '../numerics/nonNegative.ts';
import { type FosterStage, ladderImpedance } from './deviceLadder.ts';

/** A point read off the transient thermal impedance plot of a data sheet. */
export interface ImpedancePoint {
  /** s */
  readonly time: number;
  /** K/W, for a single pulse. */
  readonly impedance: number;
}

export interface ImpedanceFit {
  /** Fast ones first. */
  readonly stages: readonly FosterStage[];
  /** Greatest relative difference from a point. */
  readonly worst: number;
}

/** Candidate time constants per decade, and how far they reach beyond the points. */
const perDecade = 8;
const reach = 3;
/** Weight of the steady resistance against one point. */
const totalWeight = 10;
/** More stages than this are no more use. */
const mostStages = 5;
const poorFit = 0.1;

/**
 * Curve-fit stages for a few points of a transient impedance plot: r >= 0 by least squares of relative errors over a grid
 * of time constants, neighbours merged, then both r and τ refined.
 *
 * @param points with rising time and an impedance that never falls, at least two
 * @param resistance steady junction to case, K/W; the stages sum to it within a per cent or so
 * @returns failure `impedancePoints` for points that are not such a curve
 *
 * Source: own procedure. Heat diffusion rises with the square root of time at first; some stages follow that well enough.
 */
export function fitImpedance(points: readonly ImpedancePoint[], resistance: number): Outcome<ImpedanceFit> {
  const fault = faultOf(points, resistance);
  if (fault) return failure('impedancePoints', fault);
  const grid = candidates(points);
  const columns = grid.map((timeConstant) => [
    ...points.map(({ time, impedance }) => -Math.expm1(-time / timeConstant) / impedance),
    totalWeight / resistance,
  ]);
  const shares = nonNegativeLeastSquares(columns, [...points.map(() => 1), totalWeight]);
  const coarse = fewest(merge(grid, shares));
  const stages = refine(coarse, points, resistance);
  const worst = Math.max(
    ...points.map(({ time, impedance }) => Math.abs(ladderImpedance(stages, time) / impedance - 1)),
  );
  return success({ stages, worst }, poorNotes(worst));
}

function faultOf(points: readonly ImpedancePoint[], resistance: number): string | null {
  if (points.length < 2) return 'At least two points of the curve are needed.';
  if (!(resistance > 0)) return 'The steady resistance must be positive.';
  for (let i = 0; i < points.length; i++) {
    const { time, impedance } = points[i]!;
    if (!(time > 0 && impedance > 0)) return 'Times and impedances must be positive.';
    if (impedance > 1.001 * resistance) return 'No point may lie above the steady resistance.';
    if (i > 0 && !(time > points[i - 1]!.time)) return 'The times must rise from point to point.';
    if (i > 0 && impedance < points[i - 1]!.impedance) return 'The impedance may not fall with time.';
  }
  return null;
}

function candidates(points: readonly ImpedancePoint[]): number[] {
  const first = points[0]!.time / reach;
  const last = points.at(-1)!.time * reach;
  const count = Math.ceil(Math.log10(last / first) * perDecade) + 1;
  return Array.from({ length: count }, (_, i) => first * (last / first) ** (i / (count - 1)));
}

/** Neighbouring candidates that both carry something are one stage between them. */
function merge(grid: readonly number[], shares: readonly number[]): FosterStage[] {
  const stages: FosterStage[] = [];
  let sum = 0;
  let logarithm = 0;
  for (let i = 0; i <= grid.length; i++) {
    const share = shares[i] ?? 0;
    if (share > 0) {
      sum += share;
      logarithm += share * Math.log(grid[i]!);
    } else if (sum > 0) {
      stages.push({ resistance: sum, timeConstant: Math.exp(logarithm / sum) });
      sum = 0;
      logarithm = 0;
    }
  }
  return stages;
}

/** Merges the smallest stage into its nearest neighbour until few are left. */
function fewest(stages: readonly FosterStage[]): FosterStage[] {
  const left = [...stages];
  while (left.length > mostStages) {
    const smallest = left.reduce((at, stage, i) => (stage.resistance < left[at]!.resistance ? i : at), 0);
    const distance = (i: number) =>
      left[i] ? Math.abs(Math.log(left[i].timeConstant / left[smallest]!.timeConstant)) : Infinity;
    const first = distance(smallest - 1) < distance(smallest + 1) ? smallest - 1 : smallest;
    const [a, b] = [left[first]!, left[first + 1]!];
    const resistance = a.resistance + b.resistance;
    const mean =
      (a.resistance * Math.log(a.timeConstant) + b.resistance * Math.log(b.timeConstant)) / resistance;
    left.splice(first, 2, { resistance, timeConstant: Math.exp(mean) });
  }
  return left;
}

/** Least squares on ln r and ln τ from the coarse stages; keeps those when the points cannot tell more. */
function refine(
  coarse: readonly FosterStage[],
  points: readonly ImpedancePoint[],
  resistance: number,
): readonly FosterStage[] {
  if (2 * coarse.length > points.length + 1) return coarse;
  const stagesOf = (logs: readonly number[]): FosterStage[] =>
    coarse.map((_, i) => ({
      resistance: Math.exp(Math.min(logs[2 * i]!, 50)),
      timeConstant: Math.exp(Math.min(Math.max(logs[2 * i + 1]!, -50), 50)),
    }));
  const residualsOf = (logs: readonly number[]) => {
    const stages = stagesOf(logs);
    const total = stages.reduce((sum, stage) => sum + stage.resistance, 0);
    const misses = points.map(({ time, impedance }) => ladderImpedance(stages, time) / impedance - 1);
    return [...misses, totalWeight * (total / resistance - 1)];
  };
  const start = coarse.flatMap((stage) => [Math.log(stage.resistance), Math.log(stage.timeConstant)]);
  const fit = leastSquares(residualsOf, start);
  if (!fit.ok) return coarse;
  return stagesOf(fit.value.parameters).sort((a, b) => a.timeConstant - b.timeConstant);
}

function poorNotes(worst: number): readonly Note[] {
  if (worst <= poorFit) return [];
  return [
    note(
      'outside validity',
      'impedanceFitPoor',
      `The stages miss a point of the curve by ${Math.round(100 * worst)} %; check the points.`,
      { worst },
    ),
  ];
}
