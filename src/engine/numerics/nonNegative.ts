import { linearSolve } from './linearSolve.ts';

/**
 * Least squares with unknowns that may not be negative: min |A x - b|, x >= 0, by the active-set method.
 *
 * @param columns of A, some tens at most, none all zero
 * @see C. L. Lawson and R. J. Hanson, Solving Least Squares Problems (1974), chapter 23 (from memory)
 */
export function nonNegativeLeastSquares(
  columns: readonly (readonly number[])[],
  right: readonly number[],
): number[] {
  const n = columns.length;
  const gram = columns.map((a) => columns.map((b) => dot(a, b)));
  const target = columns.map((a) => dot(a, right));
  const scale = Math.max(...target.map(Math.abs), Number.MIN_VALUE);
  let x = new Array<number>(n).fill(0);
  const free = new Set<number>();
  const barred = new Set<number>();
  for (let round = 0; round < 6 * n; round++) {
    const gradient = target.map((value, i) => value - dot(gram[i]!, x));
    let best = -1;
    for (let i = 0; i < n; i++) {
      if (free.has(i) || barred.has(i) || gradient[i]! <= 1e-12 * scale) continue;
      if (best < 0 || gradient[i]! > gradient[best]!) best = i;
    }
    if (best < 0) break;
    free.add(best);
    const settled = settle(gram, target, x, free);
    if (settled === null || settled[best]! <= 0) {
      free.delete(best);
      barred.add(best);
      continue;
    }
    x = settled;
    barred.clear();
  }
  return x;
}

/** Solves for the free unknowns; steps back and releases those that would turn negative until none does. */
function settle(
  gram: readonly (readonly number[])[],
  target: readonly number[],
  start: readonly number[],
  free: Set<number>,
): number[] | null {
  let x = [...start];
  while (free.size > 0) {
    const indices = [...free];
    const solved = linearSolve(
      indices.map((i) => indices.map((j) => gram[i]![j]!)),
      indices.map((i) => target[i]!),
    );
    if (!solved) return null;
    const wanted = new Array<number>(x.length).fill(0);
    indices.forEach((i, k) => {
      wanted[i] = solved[k]!;
    });
    if (solved.every((value) => value > 0)) return wanted;
    let share = 1;
    for (const i of indices) {
      if (wanted[i]! <= 0 && x[i]! > wanted[i]!) share = Math.min(share, x[i]! / (x[i]! - wanted[i]!));
    }
    x = x.map((value, i) => value + share * (wanted[i]! - value));
    for (const i of indices) {
      if (x[i]! <= 1e-14 * Math.max(...x.map(Math.abs)) || (wanted[i]! <= 0 && x[i]! <= 0)) {
        x[i] = 0;
        free.delete(i);
      }
    }
  }
  return x;
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
