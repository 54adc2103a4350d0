export interface SymmetricEigen {
  /** In no particular order. */
  readonly values: readonly number[];
  /** Column k is the unit vector of value k. */
  readonly vectors: readonly (readonly number[])[];
}

const mostSweeps = 60;

/**
 * Eigenvalues and vectors of a real symmetric matrix by cyclic Jacobi rotations: slow for large matrices, but accurate
 * for small eigenvalues of graded ones too.
 *
 * @param matrix square and symmetric; up to some tens of rows
 * @see G. H. Golub and C. F. Van Loan, Matrix Computations (1996), section 8.4 (from memory)
 */
export function symmetricEigen(matrix: readonly (readonly number[])[]): SymmetricEigen {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const vectors = a.map((_, i) => a.map((_, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let turned = false;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) {
        const off = Math.abs(a[p]![q]!);
        if (off <= 1e-17 * Math.sqrt(Math.abs(a[p]![p]! * a[q]![q]!))) continue;
        rotate(a, vectors, p, q);
        turned = true;
      }
    }
    if (!turned) break;
  }
  return { values: a.map((row, i) => row[i]!), vectors };
}

/** Makes element (p, q) zero. */
function rotate(a: number[][], vectors: number[][], p: number, q: number): void {
  const n = a.length;
  const theta = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!);
  const tangent = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const cosine = 1 / Math.sqrt(tangent * tangent + 1);
  const sine = tangent * cosine;
  const shift = tangent * a[p]![q]!;
  a[p]![p]! -= shift;
  a[q]![q]! += shift;
  a[p]![q] = 0;
  a[q]![p] = 0;
  for (let k = 0; k < n; k++) {
    if (k !== p && k !== q) {
      const kp = a[k]![p]!;
      const kq = a[k]![q]!;
      a[k]![p] = cosine * kp - sine * kq;
      a[p]![k] = a[k]![p]!;
      a[k]![q] = sine * kp + cosine * kq;
      a[q]![k] = a[k]![q]!;
    }
    const vp = vectors[k]![p]!;
    const vq = vectors[k]![q]!;
    vectors[k]![p] = cosine * vp - sine * vq;
    vectors[k]![q] = sine * vp + cosine * vq;
  }
}
