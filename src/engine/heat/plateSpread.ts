import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import {
  meanCosines,
  ownTail,
  type Plate,
  type PlateSource,
  pointCosines,
  type SeriesTerms,
  seriesSum,
  seriesTerms,
} from './plateSeries.ts';

/** How heat spreads in the plate: rises over the plate's mean (its cooled face), K/W. */
export interface PlateSpread {
  /** 1/(h a b): rise of the plate's mean over the air per watt, K/W. */
  readonly uniform: number;
  /** Mean rise of source i over the plate's mean per watt in source j; symmetric. */
  readonly meanMatrix: readonly (readonly number[])[];
  /** Rise at the centre of source i over the plate's mean per watt in source j, K/W. Computed when asked. */
  readonly centreRise: (i: number, j: number) => number;
  /** Rise of a point over the plate's mean for given powers (W), K. */
  readonly pointRise: (x: number, y: number, powers: readonly number[]) => number;
  /** Rises over the plate's mean on a grid of cell centres, row by row in y, K. */
  readonly field: (powers: readonly number[], columns: number, rows: number) => Float64Array;
}

interface SourceCosines {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Lengths may overhang by this much, m, for rounding. */
const slack = 1e-9;

function fits(plate: Plate, source: PlateSource): boolean {
  return (
    source.x - source.width / 2 >= -slack &&
    source.x + source.width / 2 <= plate.width + slack &&
    source.y - source.length / 2 >= -slack &&
    source.y + source.length / 2 <= plate.length + slack
  );
}

/**
 * Temperature rise of rectangular heat sources anywhere on a plate that is cooled evenly on its other face.
 *
 * θ(x, y) = Σj Qj Σm Σn εm εn/(a b) C(λm, xj, cj) C(δn, yj, dj) cos λm x cos δn y [β + (h/k) tanh βt]/{[β tanh βt + h/k] k β},
 * λm = mπ/a, δn = nπ/b, β² = λ² + δ², C(λ, x, c) = cos(λx) sin(λc/2)/(λc/2); constant term t/k + 1/h. The mean over a
 * source puts C in place of the cosine. Edges and the heated face outside the sources are adiabatic.
 * Rises are given over the mean of the cooled face, which is what a sink model calls its plate temperature: the part
 * 1/(h a b) is left out and named `uniform`.
 *
 * @param plate film 1 to 1e4 W/(m² K)
 * @param sources inside the plate; they may overlap
 * @returns failure `sourceOffPlate` when one overhangs the plate
 *
 * Accuracy: mean rises within 0.1 % of the part over the plate's mean; points within 1 % near a source's edge.
 * Source: Muzychka, Culham and Yovanovich, J. Electronic Packaging 125 (2003); agrees with an own finite-volume solution
 * within 0.05 %.
 */
export function plateSpread(plate: Plate, sources: readonly PlateSource[]): Outcome<PlateSpread> {
  const outside = sources.findIndex((source) => !fits(plate, source));
  if (outside >= 0) {
    return failure('sourceOffPlate', `Part ${outside + 1} reaches over the edge of the plate.`, {
      part: outside + 1,
    });
  }
  const smallestWidth = Math.min(plate.width, ...sources.map((source) => source.width));
  const smallestLength = Math.min(plate.length, ...sources.map((source) => source.length));
  const terms = seriesTerms(plate, smallestWidth, smallestLength);
  const cosines = sources.map((source) => sourceCosines(terms, source));
  const pointRise = (x: number, y: number, j: number) => {
    const px = pointCosines(terms.countX, plate.width, x);
    const py = pointCosines(terms.countY, plate.length, y);
    return seriesSum(terms, px, cosines[j]!.x, py, cosines[j]!.y);
  };
  return success<PlateSpread>({
    uniform: 1 / (plate.film * plate.width * plate.length),
    meanMatrix: meanMatrix(terms, sources, cosines),
    centreRise: (i, j) => pointRise(sources[i]!.x, sources[i]!.y, j),
    pointRise: (x, y, powers) => powers.reduce((sum, power, j) => sum + power * pointRise(x, y, j), 0),
    field: (powers, columns, rows) => field(terms, cosines, powers, columns, rows),
  });
}

function sourceCosines(terms: SeriesTerms, source: PlateSource): SourceCosines {
  return {
    x: meanCosines(terms.countX, terms.plate.width, source.x, source.width),
    y: meanCosines(terms.countY, terms.plate.length, source.y, source.length),
  };
}

function meanMatrix(
  terms: SeriesTerms,
  sources: readonly PlateSource[],
  cosines: readonly SourceCosines[],
): number[][] {
  const matrix = sources.map(() => new Array<number>(sources.length).fill(0));
  for (let i = 0; i < sources.length; i++) {
    const a = cosines[i]!;
    for (let j = 0; j <= i; j++) {
      const b = cosines[j]!;
      const own = i === j ? ownTail(terms, sources[i]!, a.x, a.y) : 0;
      const mean = seriesSum(terms, a.x, b.x, a.y, b.y) + own;
      matrix[i]![j] = mean;
      matrix[j]![i] = mean;
    }
  }
  return matrix;
}

/** Rise on a grid by separation, first all n for each row, then all m for each cell; mirror images share their sums. */
function field(
  terms: SeriesTerms,
  cosines: readonly SourceCosines[],
  powers: readonly number[],
  columns: number,
  rows: number,
): Float64Array {
  const { plate, countX, countY, weights } = terms;
  const width = countX + 1;
  const coefficients = new Float64Array(weights.length);
  cosines.forEach((source, j) => {
    const power = powers[j] ?? 0;
    for (let n = 0, at = 0; n <= countY; n++) {
      const factor = power * source.y[n]!;
      for (let m = 0; m < width; m++, at++) coefficients[at]! += weights[at]! * factor * source.x[m]!;
    }
  });
  const halfColumns = Math.ceil(columns / 2);
  const columnCosines = Array.from({ length: halfColumns }, (_, i) =>
    pointCosines(countX, plate.width, ((i + 0.5) * plate.width) / columns),
  );
  const rise = new Float64Array(columns * rows);
  const low = new Float64Array(width);
  const high = new Float64Array(width);
  for (let j = 0; j < Math.ceil(rows / 2); j++) {
    const rowCosines = pointCosines(countY, plate.length, ((j + 0.5) * plate.length) / rows);
    foldRow(coefficients, rowCosines, low, high);
    fillRow(low, columnCosines, rise, j * columns, columns);
    fillRow(high, columnCosines, rise, (rows - 1 - j) * columns, columns);
  }
  return rise;
}

/** Sums over n for a row and for its mirror image across the plate, in which the odd terms change their sign. */
function foldRow(
  coefficients: Float64Array,
  rowCosines: Float64Array,
  low: Float64Array,
  high: Float64Array,
): void {
  const width = low.length;
  low.fill(0);
  high.fill(0);
  for (let n = 0, at = 0; n < rowCosines.length; n++) {
    const cosine = rowCosines[n]!;
    const target = n % 2 === 0 ? low : high;
    for (let m = 0; m < width; m++, at++) target[m]! += coefficients[at]! * cosine;
  }
  for (let m = 0; m < width; m++) {
    const even = low[m]!;
    low[m] = even + high[m]!;
    high[m] = even - high[m]!;
  }
}

/** Sums over m for the left half of a row and, with the odd terms turned, for the right half. */
function fillRow(
  row: Float64Array,
  columnCosines: readonly Float64Array[],
  rise: Float64Array,
  start: number,
  columns: number,
): void {
  for (let i = 0; i < columnCosines.length; i++) {
    const cosine = columnCosines[i]!;
    let even = 0;
    let odd = 0;
    for (let m = 0; m < row.length; m += 2) even += row[m]! * cosine[m]!;
    for (let m = 1; m < row.length; m += 2) odd += row[m]! * cosine[m]!;
    rise[start + i] = even + odd;
    rise[start + columns - 1 - i] = even - odd;
  }
}
