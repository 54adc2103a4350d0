/**
 * Air through a low and a high opening of a warm case, by its balance of mass: the pressure inside settles so that what
 * flows in below flows out above, each with its own density. Written for the checks alone: own computation.
 *
 * @returns kg/s
 */
export function stackFlow(
  area: number,
  height: number,
  inside: number,
  outside: number,
  pressure: number,
  discharge: number,
): number {
  const warm = pressure / (287.055 * inside);
  const cold = pressure / (287.055 * outside);
  const drive = (cold - warm) * 9.80665 * height;
  const through = (drop: number, density: number) => discharge * area * Math.sqrt(2 * density * drop);
  let low = 0;
  let high = drive;
  for (let i = 0; i < 100; i += 1) {
    const drop = (low + high) / 2;
    if (through(drop, cold) < through(drive - drop, warm)) low = drop;
    else high = drop;
  }
  return through(low, cold);
}
