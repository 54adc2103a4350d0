/**
 * A part on a spreader on a plate, by finite volumes on an even grid and conjugate gradients. Written for the checks alone,
 * without anything of the models: own computation.
 */
export interface SpreaderOnPlate {
  /** Quarter of the whole, the part in the corner of symmetry; m. */
  readonly plate: { readonly width: number; readonly length: number; readonly thickness: number };
  readonly spreader: { readonly width: number; readonly length: number; readonly thickness: number };
  readonly face: { readonly width: number; readonly length: number };
  readonly plateConductivity: number;
  readonly spreaderConductivity: number;
  /** Under the plate, W/(m² K). */
  readonly film: number;
  /** Joint under the spreader over its area, m² K/W. */
  readonly joint: number;
  /** Cells: sides of the grid in the plane, m, and layers in plate and spreader. */
  readonly cell: number;
  readonly layers: number;
}

/** Mean of the part's face over the mean of the plate's cooled face, K per watt of the whole part. */
export function spreaderByVolumes(of: SpreaderOnPlate): number {
  const { cell, layers, plate, spreader, face } = of;
  const nx = Math.round(plate.width / cell);
  const ny = Math.round(plate.length / cell);
  const sx = Math.round(spreader.width / cell);
  const sy = Math.round(spreader.length / cell);
  const area = cell * cell;
  const plateCells = nx * ny * layers;
  const size = plateCells + sx * sy * layers;
  const dzPlate = plate.thickness / layers;
  const dzSpreader = spreader.thickness / layers;
  const inPlate = (i: number, j: number, k: number) => (k * ny + j) * nx + i;
  const inSpreader = (i: number, j: number, k: number) => plateCells + (k * sy + j) * sx + i;
  // Links between cells, as pairs with a conductance.
  const from: number[] = [];
  const to: number[] = [];
  const conductance: number[] = [];
  const link = (a: number, b: number, g: number) => {
    from.push(a);
    to.push(b);
    conductance.push(g);
  };
  const block = (
    index: (i: number, j: number, k: number) => number,
    cellsX: number,
    cellsY: number,
    conductivity: number,
    dz: number,
  ) => {
    const side = conductivity * dz;
    const through = (conductivity * area) / dz;
    for (let k = 0; k < layers; k += 1)
      for (let j = 0; j < cellsY; j += 1)
        for (let i = 0; i < cellsX; i += 1) {
          if (i + 1 < cellsX) link(index(i, j, k), index(i + 1, j, k), side);
          if (j + 1 < cellsY) link(index(i, j, k), index(i, j + 1, k), side);
          if (k + 1 < layers) link(index(i, j, k), index(i, j, k + 1), through);
        }
  };
  block(inPlate, nx, ny, of.plateConductivity, dzPlate);
  block(inSpreader, sx, sy, of.spreaderConductivity, dzSpreader);
  const half = dzPlate / 2 / of.plateConductivity + dzSpreader / 2 / of.spreaderConductivity;
  for (let j = 0; j < sy; j += 1)
    for (let i = 0; i < sx; i += 1)
      link(inSpreader(i, j, 0), inPlate(i, j, layers - 1), area / (half + of.joint));
  const ground = new Float64Array(size);
  const toAir = area / (1 / of.film + dzPlate / 2 / of.plateConductivity);
  for (let j = 0; j < ny; j += 1) for (let i = 0; i < nx; i += 1) ground[inPlate(i, j, 0)] = toAir;
  const source = new Float64Array(size);
  const fx = Math.round(face.width / cell);
  const fy = Math.round(face.length / cell);
  // A quarter of a watt, evenly over the quarter face.
  for (let j = 0; j < fy; j += 1)
    for (let i = 0; i < fx; i += 1) source[inSpreader(i, j, layers - 1)] = 0.25 / (fx * fy);
  const rise = solved(size, from, to, conductance, ground, source);
  let under = 0;
  for (let j = 0; j < fy; j += 1)
    for (let i = 0; i < fx; i += 1) under += rise[inSpreader(i, j, layers - 1)]! / (fx * fy);
  // From the middle of the top cells to the face itself.
  const last = dzSpreader / 2 / of.spreaderConductivity / (4 * fx * fy * area);
  let mean = 0;
  for (let j = 0; j < ny; j += 1) for (let i = 0; i < nx; i += 1) mean += rise[inPlate(i, j, 0)]! / (nx * ny);
  const surface = mean * (1 - (toAir * (dzPlate / 2)) / (of.plateConductivity * area));
  return under + last - surface;
}

function solved(
  size: number,
  from: readonly number[],
  to: readonly number[],
  conductance: readonly number[],
  ground: Float64Array,
  source: Float64Array,
): Float64Array {
  const diagonal = Float64Array.from(ground);
  for (let n = 0; n < from.length; n += 1) {
    diagonal[from[n]!]! += conductance[n]!;
    diagonal[to[n]!]! += conductance[n]!;
  }
  const times = (x: Float64Array): Float64Array => {
    const y = x.map((value, i) => value * diagonal[i]!);
    for (let n = 0; n < from.length; n += 1) {
      y[from[n]!]! -= conductance[n]! * x[to[n]!]!;
      y[to[n]!]! -= conductance[n]! * x[from[n]!]!;
    }
    return y;
  };
  const dot = (a: Float64Array, b: Float64Array) => a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const x = new Float64Array(size);
  const residual = Float64Array.from(source);
  let z = residual.map((value, i) => value / diagonal[i]!);
  const direction = Float64Array.from(z);
  let along = dot(residual, z);
  const enough = 1e-18 * along;
  for (let round = 0; round < 4000 && along > enough; round += 1) {
    const image = times(direction);
    const step = along / dot(direction, image);
    for (let i = 0; i < size; i += 1) {
      x[i]! += step * direction[i]!;
      residual[i]! -= step * image[i]!;
    }
    z = residual.map((value, i) => value / diagonal[i]!);
    const next = dot(residual, z);
    for (let i = 0; i < size; i += 1) direction[i] = z[i]! + (next / along) * direction[i]!;
    along = next;
  }
  return x;
}
