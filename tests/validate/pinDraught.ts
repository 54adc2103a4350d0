/**
 * Air that rises through a field of pins, marched row by row: it warms at each row and is driven by its own warmth against
 * the drag of the rows. Relations of forced flow across single cylinders, none of those of the model. Written for the
 * checks alone: own computation.
 *
 * Heat: Churchill and Bernstein, J. Heat Transfer 99 (1977) 300, cylinder in cross flow (from memory). Drag: C = 1 + 10
 * Re^(-2/3), White, Viscous Fluid Flow (from memory). Both on the speed in the gap. Plate and pins at one temperature.
 */
export interface PinField {
  readonly width: number;
  readonly length: number;
  readonly thickness: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** K */
  readonly plate: number;
  readonly air: number;
}

/** Air at a film temperature and 1 atm, by the tables' own figures at 300 and 350 K, straight between. */
function airAt(temperature: number) {
  const t = (temperature - 300) / 50;
  return {
    viscosity: 1.568e-5 + t * (2.065e-5 - 1.568e-5),
    conductivity: 0.0263 + t * (0.03 - 0.0263),
    prandtl: 0.705,
    density: 352.9 / temperature,
    specificHeat: 1008,
  };
}

/** Convection of pins and the plate between them, W; the pins follow the plate. */
export function pinDraught(field: PinField): number {
  const { width, length, thickness, height, columns, rows, plate, air } = field;
  const film = airAt((plate + air) / 2);
  const pitch = width / columns;
  const gapShare = (pitch - thickness) / pitch;
  const front = width * height;
  const perRow = columns * Math.PI * thickness * height + (width * length) / rows;
  const march = (speed: number) => {
    const inGap = speed / gapShare;
    const reynolds = (inGap * thickness) / film.viscosity;
    const nusselt =
      0.3 +
      ((0.62 * Math.sqrt(reynolds) * Math.cbrt(film.prandtl)) /
        (1 + (0.4 / film.prandtl) ** (2 / 3)) ** 0.25) *
        (1 + (reynolds / 282_000) ** (5 / 8)) ** (4 / 5);
    const h = (nusselt * film.conductivity) / thickness;
    const flow = film.density * speed * front * film.specificHeat;
    const kept = Math.exp((-h * perRow) / flow);
    const drag = 1 + 10 * reynolds ** (-2 / 3);
    let temperature = air;
    let lift = 0;
    let loss = 0;
    for (let row = 0; row < rows; row += 1) {
      const after = plate - (plate - temperature) * kept;
      const mean = (temperature + after) / 2;
      lift += ((9.80665 * (mean - air)) / mean) * film.density * (length / rows);
      loss += (drag * (thickness / pitch) * film.density * inGap * inGap) / 2;
      temperature = after;
    }
    return { excess: lift - loss, heat: flow * (temperature - air) };
  };
  let low = 1e-4;
  let high = 5;
  for (let i = 0; i < 60; i += 1) {
    const middle = Math.sqrt(low * high);
    if (march(middle).excess > 0) low = middle;
    else high = middle;
  }
  return march(low).heat;
}
