/** What a plot shows, in display units. Colours are names of CSS custom properties, so that a theme can change them. */
export interface PlotSeries {
  readonly key: string;
  readonly label: string;
  /** null where there is no value. */
  readonly values: readonly (number | null)[];
  /** How its own values are written where they are not in the unit of the axis. */
  readonly write?: (value: number) => string;
  readonly tone: string;
  readonly dash: readonly number[];
  /** Band around the line, a value each point; shaded. */
  readonly edges?: { readonly low: readonly number[]; readonly high: readonly number[] };
}

/** A level no curve should pass. */
export interface PlotLimit {
  readonly label: string;
  readonly value: number;
  readonly tone: string;
}

/** A horizontal band: a margin, a range. */
export interface PlotBand {
  readonly from: number;
  readonly to: number;
  readonly tone: string;
}

/** A place on the x axis worth naming; with `y` a dot on a curve as well. */
export interface PlotMark {
  readonly x: number;
  readonly y?: number;
  readonly label: string;
  readonly tone: string;
}

export interface PlotData {
  readonly x: readonly number[];
  readonly xLabel: string;
  readonly yLabel: string;
  readonly xRange: readonly [number, number];
  readonly yRange: readonly [number, number];
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
  /** A value with its unit, for the readout and the table. */
  readonly writeX: (value: number) => string;
  readonly writeY: (value: number) => string;
  /** The same at a tick, as short as can be. */
  readonly tickX: (value: number) => string;
  readonly tickY: (value: number) => string;
  readonly series: readonly PlotSeries[];
  readonly limits: readonly PlotLimit[];
  readonly bands: readonly PlotBand[];
  readonly marks: readonly PlotMark[];
}

/** Round steps of 1, 2 or 5 that give about `count` ticks over the range. */
export function niceTicks(from: number, to: number, count: number): readonly number[] {
  const span = to - from;
  if (!(span > 0)) return [from];
  const raw = span / count;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5].find((each) => each * power >= raw) ?? 10) * power;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  );
}

/** Values closer together than this part of their size (or than this, near nothing) are one level, not a curve. */
const flat = 1e-9;

/** The smallest range on round numbers that holds all values. */
export function niceRange(values: readonly number[], count = 5): readonly [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (!Number.isFinite(low) || !Number.isFinite(high)) return [0, 1];
  const level = high - low <= flat * Math.max(1, Math.abs(low), Math.abs(high));
  const ticks = niceTicks(low, level ? low + 1 : high, count);
  const step = ticks.length > 1 ? ticks[1]! - ticks[0]! : 1;
  return [Math.floor(low / step) * step, Math.ceil(high / step) * step];
}

/** Labels pushed apart so that none covers another; keeps their order. Returns the new middle of each. */
export function spread(
  middles: readonly number[],
  height: number,
  low: number,
  high: number,
): readonly number[] {
  const order = middles.map((middle, index) => ({ middle, index })).sort((a, b) => a.middle - b.middle);
  let floor = low;
  for (const each of order) {
    each.middle = Math.max(each.middle, floor);
    floor = each.middle + height;
  }
  let ceiling = high;
  for (const each of [...order].reverse()) {
    each.middle = Math.min(each.middle, ceiling);
    ceiling = each.middle - height;
  }
  const placed = new Array<number>(middles.length);
  for (const each of order) placed[each.index] = each.middle;
  return placed;
}

/** A curve known at some places, read at others by straight lines; its ends beyond them. */
export function readCurve(
  x: readonly number[],
  values: readonly number[],
  at: readonly number[],
): readonly number[] {
  return at.map((place) => {
    const next = x.findIndex((each) => each >= place);
    if (next === 0) return values[0]!;
    if (next < 0) return values.at(-1)!;
    const share = (place - x[next - 1]!) / (x[next]! - x[next - 1]!);
    return values[next - 1]! + share * (values[next]! - values[next - 1]!);
  });
}

/** The last value of a series with its index; undefined for an empty one. */
export function lastPoint(series: PlotSeries): { index: number; value: number } | undefined {
  for (let index = series.values.length - 1; index >= 0; index--) {
    const value = series.values[index];
    if (value !== null && value !== undefined) return { index, value };
  }
  return undefined;
}
