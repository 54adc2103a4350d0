import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { symmetricEigen } from '../numerics/symmetricEigen.ts';
import type { FosterStage } from './deviceLadder.ts';
import * as exact from './rational.ts';

/** A body of the physical ladder: heat capacity to the reference and resistance on to the next body, the last to it. */
export interface CauerStage {
  /** J/K */
  readonly capacity: number;
  /** K/W */
  readonly resistance: number;
}

/**
 * Physical (Cauer) ladder to the curve-fit (Foster) form seen at the first body: the symmetric matrix
 * C^(-1/2) G C^(-1/2) has eigenvalues 1/τ and vectors v; r = v1² τ/C1.
 *
 * @param stages from the junction outwards, all positive
 * Source: standard circuit theory; both directions checked against each other.
 */
export function fosterOf(stages: readonly CauerStage[]): FosterStage[] {
  const n = stages.length;
  const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    const { capacity, resistance } = stages[i]!;
    const before = i > 0 ? 1 / stages[i - 1]!.resistance : 0;
    matrix[i]![i] = (before + 1 / resistance) / capacity;
    if (i + 1 < n) {
      const coupling = -1 / (resistance * Math.sqrt(capacity * stages[i + 1]!.capacity));
      matrix[i]![i + 1] = coupling;
      matrix[i + 1]![i] = coupling;
    }
  }
  const { values, vectors } = symmetricEigen(matrix);
  return values
    .map((value, k) => {
      const first = vectors[0]![k]!;
      return { resistance: (first * first) / (value * stages[0]!.capacity), timeConstant: 1 / value };
    })
    .sort((a, b) => a.timeConstant - b.timeConstant);
}

/**
 * Curve-fit (Foster) form to the physical (Cauer) ladder by the continued fraction of Z(s) = Σ r/(1 + s τ):
 * capacity and resistance are lead ratios of numerator and denominator in turn. In exact fractions, since in floating
 * point the digits are lost when time constants span more than six decades.
 *
 * @param stages with positive resistances and different, positive time constants
 * @returns failure `notALadder` otherwise, or when a body comes out without a positive value
 */
export function cauerOf(stages: readonly FosterStage[]): Outcome<CauerStage[]> {
  const usable = merged(stages);
  if (
    usable.length === 0 ||
    usable.some(({ resistance, timeConstant }) => !(resistance > 0 && timeConstant > 0))
  ) {
    return failure('notALadder', 'Every stage needs a positive resistance and a positive time constant.');
  }
  let { numerator, denominator } = impedanceFraction(usable);
  const ladder: CauerStage[] = [];
  for (let i = 0; i < usable.length; i++) {
    const capacity = exact.divide(denominator.at(-1)!, numerator.at(-1)!);
    const remainder = exact.subtractShifted(denominator, numerator, capacity);
    if (remainder.length === 0)
      return failure('notALadder', 'These stages do not belong to a physical ladder.');
    const resistance = exact.divide(numerator.at(-1)!, remainder.at(-1)!);
    const next = exact.subtractShifted(numerator, remainder, resistance, 0);
    ladder.push({ capacity: exact.toNumber(capacity), resistance: exact.toNumber(resistance) });
    denominator = remainder;
    numerator = next;
  }
  if (ladder.some(({ capacity, resistance }) => !(capacity > 0 && resistance > 0))) {
    return failure('notALadder', 'These stages do not belong to a physical ladder.');
  }
  return success(ladder);
}

/** Stages of one time constant are one stage. */
function merged(stages: readonly FosterStage[]): FosterStage[] {
  const sums = new Map<number, number>();
  for (const { resistance, timeConstant } of stages) {
    sums.set(timeConstant, (sums.get(timeConstant) ?? 0) + resistance);
  }
  return [...sums].map(([timeConstant, resistance]) => ({ timeConstant, resistance }));
}

/** Z(s) as one fraction of polynomials, lowest power first. */
function impedanceFraction(stages: readonly FosterStage[]): {
  numerator: exact.Polynomial;
  denominator: exact.Polynomial;
} {
  let numerator: exact.Polynomial = [];
  let denominator: exact.Polynomial = [exact.one];
  for (const { resistance, timeConstant } of stages) {
    const factor: exact.Polynomial = [exact.one, exact.fromNumber(timeConstant)];
    numerator = exact.add(
      exact.multiply(numerator, factor),
      exact.multiply(denominator, [exact.fromNumber(resistance)]),
    );
    denominator = exact.multiply(denominator, factor);
  }
  return { numerator, denominator };
}
