export type Series = 'E3' | 'E6' | 'E12' | 'E24' | 'E48' | 'E96' | 'E192';

/** E24 was rounded by hand when it was made: 27, 30, 33, 36, 39, 43, 47 and 82 differ from 10^(i/24). IEC 60063. */
const e24 = [
  1, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.7, 3, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2,
  9.1,
];

const counts: Readonly<Record<Series, number>> = {
  E3: 3,
  E6: 6,
  E12: 12,
  E24: 24,
  E48: 48,
  E96: 96,
  E192: 192,
};

function fine(count: number): number[] {
  const values: number[] = [];
  for (let index = 0; index < count; index++) {
    const value = Math.round(100 * 10 ** (index / count)) / 100;
    // 10^(185/192) rounds to 9.19; the standard prints 9.20 in that place.
    values.push(value === 9.19 ? 9.2 : value);
  }
  return values;
}

function build(series: Series): readonly number[] {
  const count = counts[series];
  if (count > 24) return fine(count);
  return e24.filter((_, index) => index % (24 / count) === 0);
}

const tables: Readonly<Record<Series, readonly number[]>> = {
  E3: build('E3'),
  E6: build('E6'),
  E12: build('E12'),
  E24: build('E24'),
  E48: build('E48'),
  E96: build('E96'),
  E192: build('E192'),
};

/** Values of a series from 1 to below 10. Source: IEC 60063, from memory. */
export function seriesValues(series: Series): readonly number[] {
  return tables[series];
}

/**
 * The preferred value at or next to a wanted one.
 *
 * `nearest` by ratio, `up` the first not below, `down` the last not above. value > 0; a value of the series is itself.
 */
export function preferredValue(
  series: Series,
  value: number,
  direction: 'nearest' | 'up' | 'down' = 'nearest',
): number {
  const exponent = Math.floor(Math.log10(value) + 1e-12);
  const scale = 10 ** exponent;
  const mantissa = value / scale;
  const values = tables[series];
  const below = values.filter((one) => one <= mantissa * (1 + 1e-9)).at(-1) ?? 1;
  const above = values.find((one) => one >= mantissa * (1 - 1e-9)) ?? 10;
  if (direction === 'up') return tidy(above, exponent);
  if (direction === 'down') return tidy(below, exponent);
  return mantissa * mantissa <= below * above ? tidy(below, exponent) : tidy(above, exponent);
}

/** Mantissa times a power of ten without the dust of binary fractions. */
function tidy(mantissa: number, exponent: number): number {
  return Number(`${Number(mantissa.toPrecision(3))}e${exponent}`);
}
