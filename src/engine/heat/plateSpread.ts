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

/** Rise on a grid by separation: first all n for each row, then all m for each cell. */
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
  const columnCosines = Array.from({ length: columns }, (_, i) =>
    pointCosines(countX, plate.width, ((i + 0.5) * plate.width) / columns),
  );
  const rise = new Float64Array(columns * rows);
  const row = new Float64Array(width);
  for (let j = 0; j < rows; j++) {
    const rowCosines = pointCosines(countY, plate.length, ((j + 0.5) * plate.length) / rows);
    row.fill(0);
    for (let n = 0, at = 0; n <= countY; n++) {
      for (let m = 0; m < width; m++, at++) row[m]! += coefficients[at]! * rowCosines[n]!;
    }
    for (let i = 0; i < columns; i++) {
      const cosine = columnCosines[i]!;
      let sum = 0;
      for (let m = 0; m < width; m++) sum += row[m]! * cosine[m]!;
      rise[j * columns + i] = sum;
    }
  }
  return rise;
}
