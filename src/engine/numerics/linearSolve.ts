/**
 * Solves a small linear system by elimination with partial pivoting.
 *
 * @param matrix square, up to some tens of rows; left as it is
 * @returns the unknowns; null when the matrix is singular to working precision
 */
export function linearSolve(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): number[] | null {
  const n = right.length;
  const a = matrix.map((row, i) => [...row, right[i]!]);
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(a[row]![column]!) > Math.abs(a[pivot]![column]!)) pivot = row;
    }
    const top = a[pivot]!;
    a[pivot] = a[column]!;
    a[column] = top;
    const largest = Math.max(...matrix.map((row) => Math.abs(row[column]!)));
    if (!(Math.abs(top[column]!) > 1e-14 * largest)) return null;
    for (let row = column + 1; row < n; row++) {
      const factor = a[row]![column]! / top[column]!;
      if (factor === 0) continue;
      for (let k = column; k <= n; k++) a[row]![k]! -= factor * top[k]!;
    }
  }
  const unknowns = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row--) {
    let sum = a[row]![n]!;
    for (let k = row + 1; k < n; k++) sum -= a[row]![k]! * unknowns[k]!;
    unknowns[row] = sum / a[row]![row]!;
  }
  return unknowns;
}
