/**
 * Air between two hot plates, stepped along the channel by finite differences: developed laminar profile, heat conducted
 * across. Written for the checks alone: own computation. An entrance still developing takes up a little more heat.
 *
 * graetz: L/(D Re Pr) with D = 2 s.
 * @returns heat taken up over the heat that air leaving at wall temperature would carry, 0 to 1
 */
export function warmedShare(graetz: number): number {
  const cells = 200;
  const steps = 4000;
  // Half a channel: y from wall to middle in units of s; u = 6 y (1 - y) of the mean.
  const dy = 0.5 / cells;
  const speed = Array.from({ length: cells }, (_, j) => {
    const y = (j + 0.5) * dy;
    return 6 * y * (1 - y);
  });
  // u ∂θ/∂x = ∂²θ/∂y², x in units of s² V/α; x = 4 L/(D Re Pr) with D = 2 s.
  const end = 4 * graetz;
  const theta = new Float64Array(cells).fill(1);
  // Steps grow from the entrance on, where the layer is thin.
  let x = 0;
  for (let n = 1; n <= steps; n += 1) {
    const next = end * (n / steps) ** 3;
    implicitStep(theta, speed, next - x, dy);
    x = next;
  }
  const bulk = theta.reduce((sum, value, j) => sum + value * speed[j]!, 0);
  return 1 - bulk / speed.reduce((sum, value) => sum + value, 0);
}

/** One implicit step of the tridiagonal system; the wall is at 0, the middle a mirror. */
function implicitStep(theta: Float64Array, speed: readonly number[], dx: number, dy: number): void {
  const cells = theta.length;
  const g = dx / (dy * dy);
  const upper = new Float64Array(cells);
  for (let j = 0; j < cells; j += 1) {
    // The wall lies half a cell from the first middle.
    const below = j === 0 ? 2 * g : g;
    const above = j === cells - 1 ? 0 : g;
    const lower = j === 0 ? 0 : g;
    const middle = speed[j]! + below + above - lower * (j === 0 ? 0 : upper[j - 1]!);
    theta[j] = (speed[j]! * theta[j]! + lower * (j === 0 ? 0 : theta[j - 1]!)) / middle;
    upper[j] = above / middle;
  }
  for (let j = cells - 2; j >= 0; j -= 1) theta[j]! += upper[j]! * theta[j + 1]!;
}
