import { gaussLegendre } from '../numerics/gaussLegendre.ts';

/** A plate heated on one face and cooled evenly on the other, SI. */
export interface Plate {
  /** Along x. */
  readonly width: number;
  /** Along y. */
  readonly length: number;
  readonly thickness: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** Heat off the cooled face per area and rise of that face over the air, fins folded in, W/(m² K). */
  readonly film: number;
}

/** A rectangle that heats evenly; x and y of its centre from a corner of the plate, m. */
export interface PlateSource {
  readonly x: number;
  readonly y: number;
  /** Along x. */
  readonly width: number;
  /** Along y. */
  readonly length: number;
}

/** Terms of the double Fourier series: the plate's answer to each pair of wave numbers. */
export interface SeriesTerms {
  readonly plate: Plate;
  /** Terms along x and y beside the constant. */
  readonly countX: number;
  readonly countY: number;
  /** Weight of cos(λm x) cos(δn y), K/W, row by row in n; the constant holds t/(k a b) alone, without the film. */
  readonly weights: Float64Array;
}

/** Terms per ratio of plate side to source side, and their bounds: mean rise of a source within 0.1 % (tested). */
const termsPerSide = 6;
const fewestTerms = 48;
const mostTerms = 160;

/** Above this, tanh is 1 in double precision. */
const tanhIsOne = 19.1;

/**
 * Surface rise per flux of one wave number β, K m²/W: [β + (h/k) tanh βt]/[β tanh βt + h/k]/(k β).
 */
export function waveResistance(plate: Plate, beta: number): number {
  const depth = beta * plate.thickness;
  const tanh = depth > tanhIsOne ? 1 : 1 - 2 / (Math.exp(2 * depth) + 1);
  const biot = plate.film / plate.conductivity;
  return (beta + biot * tanh) / ((beta * tanh + biot) * plate.conductivity * beta);
}

function termsAlong(side: number, smallestSource: number): number {
  return Math.min(Math.max(Math.ceil((termsPerSide * side) / smallestSource), fewestTerms), mostTerms);
}

/** Weights of the plates last asked for: a plate stays while parts move on it and while everything else is edited. */
const kept: SeriesTerms[] = [];
const mostKept = 4;

function keptTerms(plate: Plate, countX: number, countY: number): SeriesTerms | undefined {
  return kept.find(
    (terms) =>
      terms.countX === countX &&
      terms.countY === countY &&
      terms.plate.width === plate.width &&
      terms.plate.length === plate.length &&
      terms.plate.thickness === plate.thickness &&
      terms.plate.conductivity === plate.conductivity &&
      terms.plate.film === plate.film,
  );
}

/**
 * Weights for a plate, computed once and kept for the next time; `smallest` sides of the sources decide how many terms
 * are taken.
 */
export function seriesTerms(plate: Plate, smallestWidth: number, smallestLength: number): SeriesTerms {
  const countX = termsAlong(plate.width, smallestWidth);
  const countY = termsAlong(plate.length, smallestLength);
  const known = keptTerms(plate, countX, countY);
  if (known) return known;
  const found = computeTerms({ ...plate }, countX, countY);
  kept.unshift(found);
  kept.length = Math.min(kept.length, mostKept);
  return found;
}

function computeTerms(plate: Plate, countX: number, countY: number): SeriesTerms {
  const weights = new Float64Array((countX + 1) * (countY + 1));
  const area = plate.width * plate.length;
  const stepX = Math.PI / plate.width;
  const stepY = Math.PI / plate.length;
  let at = 0;
  for (let n = 0; n <= countY; n++) {
    const delta = n * stepY;
    for (let m = 0; m <= countX; m++, at++) {
      const lambda = m * stepX;
      const doubled = (m > 0 ? 2 : 1) * (n > 0 ? 2 : 1);
      weights[at] = (doubled / area) * waveResistance(plate, Math.sqrt(lambda * lambda + delta * delta));
    }
  }
  weights[0] = plate.thickness / (plate.conductivity * area);
  return { plate, countX, countY, weights };
}

/** cos(λm x) at a point, m = 0 … count. */
export function pointCosines(count: number, side: number, position: number): Float64Array {
  const cosines = new Float64Array(count + 1);
  for (let m = 0; m <= count; m++) cosines[m] = Math.cos((m * Math.PI * position) / side);
  return cosines;
}

/** Mean of cos(λm x) over a source: cos(λ x) sin(λ c/2)/(λ c/2). */
export function meanCosines(count: number, side: number, position: number, size: number): Float64Array {
  const cosines = pointCosines(count, side, position);
  for (let m = 1; m <= count; m++) {
    const half = (m * Math.PI * size) / (2 * side);
    cosines[m]! *= Math.sin(half) / half;
  }
  return cosines;
}

/** Σ weights · ax bx · ay by: rise of one thing (a) per watt in another (b), K/W. */
export function seriesSum(
  terms: SeriesTerms,
  ax: Float64Array,
  bx: Float64Array,
  ay: Float64Array,
  by: Float64Array,
): number {
  const { countX, countY, weights } = terms;
  const productX = new Float64Array(countX + 1);
  for (let m = 0; m <= countX; m++) productX[m] = ax[m]! * bx[m]!;
  let sum = 0;
  let at = 0;
  for (let n = 0; n <= countY; n++) {
    let row = 0;
    for (let m = 0; m <= countX; m++, at++) row += weights[at]! * productX[m]!;
    sum += row * ay[n]! * by[n]!;
  }
  return sum;
}

/** Points of the integral over the missing terms. */
const tailPoints = 4;

/** Mean of cos²(λx) sin²(λc/2) over many λ: 1/4, and 1/8 when the source touches an edge. */
function phaseMean(firstLambda: number, side: number, position: number, size: number): number {
  const nearness = (edge: number) => 1 / (1 + (2 * firstLambda * edge) ** 2);
  const toLow = position - size / 2;
  const toHigh = side - position - size / 2;
  return (1 - nearness(toLow) / 2 - nearness(toHigh) / 2) / 4;
}

/**
 * What the terms beyond the last one add to the mean rise of a source under its own heat, along one axis: an integral
 * over λ with the oscillation replaced by its mean.
 *
 * @param along count, side, position and size along the axis of the missing terms
 * @param across wave number step and squared mean cosines along the other axis
 */
function missingTerms(
  plate: Plate,
  along: { count: number; side: number; position: number; size: number },
  across: { step: number; cosines: Float64Array },
): number {
  const first = ((along.count + 0.5) * Math.PI) / along.side;
  const phase = phaseMean(first, along.side, along.position, along.size);
  let sum = 0;
  const rule = gaussLegendre(tailPoints);
  for (let q = 0; q < tailPoints; q++) {
    const lambda = (2 * first) / (1 + rule.node[q]!);
    let row = 0;
    for (let n = 0; n < across.cosines.length; n++) {
      const delta = n * across.step;
      const cosine = across.cosines[n]!;
      row +=
        (n > 0 ? 2 : 1) * cosine * cosine * waveResistance(plate, Math.sqrt(lambda * lambda + delta * delta));
    }
    const envelope = 2 * phase * (2 / (lambda * along.size)) ** 2;
    sum += (rule.weight[q]! / 2) * ((lambda * lambda) / first) * envelope * row;
  }
  return (sum * along.side) / (Math.PI * plate.width * plate.length);
}

/** Correction of a source's own mean rise for the terms not summed, K/W. */
export function ownTail(
  terms: SeriesTerms,
  source: PlateSource,
  cosinesX: Float64Array,
  cosinesY: Float64Array,
): number {
  const { plate, countX, countY } = terms;
  return (
    missingTerms(
      plate,
      { count: countX, side: plate.width, position: source.x, size: source.width },
      { step: Math.PI / plate.length, cosines: cosinesY },
    ) +
    missingTerms(
      plate,
      { count: countY, side: plate.length, position: source.y, size: source.length },
      { step: Math.PI / plate.width, cosines: cosinesX },
    )
  );
}
