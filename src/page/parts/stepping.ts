/**
 * The next value an arrow key gives: one step of the second figure ("120" -> "130", "12.8" -> "13.8"), a tenth of
 * that when fine, and never past the ends. Counts go by one.
 */
export function step(value: number, direction: 1 | -1, options: { fine: boolean; whole: boolean }): number {
  if (options.whole) return Math.round(value) + direction;
  const size = stepSize(value, direction) * (options.fine ? 0.1 : 1);
  return Number((value + direction * size).toPrecision(8));
}

function stepSize(value: number, direction: 1 | -1): number {
  const size = Math.abs(value);
  if (size === 0) return 1;
  const exponent = Math.floor(Math.log10(size) + 1e-9);
  const shrinks = Math.sign(value) !== direction;
  // Going down from a power of ten the step is that of the figures below it: 100, 99, not 100, 90.
  const atPower = shrinks && Math.abs(size / 10 ** exponent - 1) < 1e-9;
  return 10 ** (exponent - (atPower ? 2 : 1));
}
