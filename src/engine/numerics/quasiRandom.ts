/**
 * Direction numbers of the Sobol sequence: primitive polynomial over GF(2) as bits, highest power first, and the odd
 * start values m_1, m_2, … Source: S. Joe and F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008), 2635-2654, table
 * new-joe-kuo-6. The first dimension is the van der Corput sequence and needs none.
 */
const directions: readonly (readonly [number, readonly number[]])[] = [
  [3, [1]],
  [7, [1, 3]],
  [11, [1, 3, 1]],
  [13, [1, 1, 1]],
  [19, [1, 1, 3, 3]],
  [25, [1, 3, 5, 13]],
  [37, [1, 1, 5, 5, 17]],
  [41, [1, 1, 5, 5, 5]],
  [47, [1, 1, 7, 11, 19]],
  [55, [1, 1, 5, 1, 1]],
  [59, [1, 1, 1, 3, 11]],
  [61, [1, 3, 5, 5, 31]],
  [67, [1, 3, 3, 9, 7, 49]],
  [91, [1, 1, 1, 15, 21, 21]],
  [97, [1, 3, 1, 13, 27, 49]],
  [103, [1, 1, 1, 15, 7, 5]],
  [109, [1, 3, 1, 15, 13, 25]],
  [115, [1, 1, 5, 5, 19, 61]],
  [131, [1, 3, 7, 11, 23, 15, 103]],
  [137, [1, 3, 7, 13, 13, 15, 69]],
  [143, [1, 1, 3, 13, 7, 35, 63]],
  [145, [1, 3, 5, 9, 1, 25, 53]],
  [157, [1, 3, 1, 13, 9, 35, 107]],
];

/** Dimensions with direction numbers of their own; further ones reuse them with other scrambling. */
export const sobolDimensions = directions.length + 1;

const bits = 32;
const unit = 2 ** -bits;

/** v_k = m_k 2^(32-k), and the recurrence of Bratley and Fox (1988) after the degree of the polynomial. */
function columnsOf(dimension: number): Uint32Array {
  const columns = new Uint32Array(bits);
  if (dimension === 0) {
    for (let k = 0; k < bits; k++) columns[k] = 2 ** (bits - 1 - k);
    return columns;
  }
  const [polynomial, start] = directions[dimension - 1]!;
  const degree = start.length;
  for (let k = 0; k < degree; k++) columns[k] = start[k]! * 2 ** (bits - 1 - k);
  for (let k = degree; k < bits; k++) {
    let value = columns[k - degree]! ^ (columns[k - degree]! >>> degree);
    for (let j = 1; j < degree; j++) {
      if ((polynomial >>> (degree - j)) & 1) value ^= columns[k - j]!;
    }
    columns[k] = value;
  }
  return columns;
}

function reverseBits(x: number): number {
  let r = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  r = ((r >>> 2) & 0x33333333) | ((r & 0x33333333) << 2);
  r = ((r >>> 4) & 0x0f0f0f0f) | ((r & 0x0f0f0f0f) << 4);
  r = ((r >>> 8) & 0x00ff00ff) | ((r & 0x00ff00ff) << 8);
  return (r >>> 16) | (r << 16);
}

/** Mixes a number into 32 bits that look random. Finaliser of the MurmurHash3 function (A. Appleby, public domain). */
function mixed(x: number): number {
  let h = x | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/**
 * Nested uniform scrambling by a hash whose every bit depends on the lower bits alone, applied to the reversed number.
 * Source: S. Laine and T. Karras, Computer Graphics Forum 30 (2011); B. Burley, J. Computer Graphics Techniques 9
 * (2020), no. 4 (from memory; uniformity tested).
 */
function scrambled(x: number, seed: number): number {
  let r = reverseBits(x);
  r = (r + seed) | 0;
  r ^= Math.imul(r, 0x6c50b47c);
  r ^= Math.imul(r, 0xb82f1e52);
  r ^= Math.imul(r, 0xc7afe638);
  r ^= Math.imul(r, 0x8d22f6e6);
  return reverseBits(r) >>> 0;
}

/** Fills `point` with the point of a number, each coordinate above 0 and below 1. */
export type QuasiRandom = (index: number, point: Float64Array) => void;

/**
 * Points that fill a cube evenly: the Sobol sequence, scrambled by a seed. The first 2^k points put exactly one into each
 * 2^k-th of every axis; means over them converge much faster than over random points. The same seed gives the same points
 * on every machine.
 *
 * @param dimensions at least 1; beyond `sobolDimensions` the sequence repeats, scrambled and shuffled differently
 * @param seed whole number
 */
export function quasiRandom(dimensions: number, seed: number): QuasiRandom {
  const columns = Array.from({ length: dimensions }, (_, d) => columnsOf(d % sobolDimensions));
  const seeds = Array.from({ length: dimensions }, (_, d) =>
    mixed(mixed(seed + 1) + Math.imul(d + 1, 0x9e3779b9)),
  );
  return (index, point) => {
    for (let d = 0; d < dimensions; d++) {
      const turn = Math.floor(d / sobolDimensions);
      // A further turn of dimensions takes the points in another order (blocks of 2^k stay together), or it would
      // repeat the first.
      let rest = turn === 0 ? index : scrambled(index, mixed(seed + turn));
      let x = 0;
      for (let k = 0; rest !== 0; k++, rest >>>= 1) if (rest & 1) x ^= columns[d]![k]!;
      point[d] = (scrambled(x, seeds[d]!) + 0.5) * unit;
    }
  };
}
