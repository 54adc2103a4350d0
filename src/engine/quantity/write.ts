import type { Dimension } from '../../../shared/design/fields.ts';
import { findUnit, fromSI, metricUnits, type Unit, units } from './units.ts';

/** Narrow no-break space between number and unit. */
export const thinSpace = '\u202f';
/** True minus sign. */
export const minus = '\u2212';

/** Signs that stand at the number without a space. */
const unspaced = new Set(['°', '″', '′']);

/** Units `writeQuantity` may choose by size, small to large. Dimensions not named keep their usual unit. */
const bySize: Partial<Record<Dimension, readonly string[]>> = {
  length: ['µm', 'mm', 'm', 'km'],
  power: ['mW', 'W', 'kW'],
  voltage: ['mV', 'V', 'kV'],
  current: ['mA', 'A'],
  resistance: ['µΩ', 'mΩ', 'Ω', 'kΩ'],
  time: ['ns', 'µs', 'ms', 's', 'min', 'h'],
  frequency: ['Hz', 'kHz', 'MHz', 'GHz'],
  mass: ['mg', 'g', 'kg'],
  capacitance: ['pF', 'nF', 'µF', 'mF', 'F'],
  inductance: ['nH', 'µH', 'mH'],
  charge: ['nC', 'mAh', 'Ah'],
  energy: ['mJ', 'J', 'kJ'],
};

/** The unit in which a value of this size reads best. */
export function unitBySize(value: number, dimension: Dimension): Unit {
  const names = bySize[dimension];
  if (!names) return findUnit(dimension, '');
  const candidates = units[dimension].filter((each) => names.includes(each.symbol));
  const size = Math.abs(value);
  // A hair below one counts as one, so that 0.9999 W is 1 W and not 1000 mW.
  const fitting = candidates.filter((each) => size >= each.factor * 0.9995);
  if (size === 0) return findUnit(dimension, metricUnits[dimension]);
  return fitting.at(-1) ?? candidates[0]!;
}

/** A number to so many significant figures in plain decimal notation; trailing zeros kept unless `trim`. */
export function writeNumber(value: number, digits = 3, trim = false): string {
  if (!Number.isFinite(value)) return '?';
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(digits));
  const exponent = Math.floor(Math.log10(Math.abs(rounded)));
  if (exponent > 14 || exponent < -9) return rounded.toExponential().replace('-', minus);
  const decimals = Math.max(0, digits - 1 - exponent);
  const text = rounded.toFixed(Math.min(decimals, 20));
  const short = trim && text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short.replace('-', minus);
}

/** Whole degrees unless more than three figures are asked for: a temperature has no natural zero to count from. */
function writeTemperature(number: number, digits: number): string {
  const decimals = Math.max(0, digits - 3);
  const text = number.toFixed(decimals);
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', minus);
}

export function joinUnit(number: string, symbol: string): string {
  if (symbol === '' || symbol === '1') return number;
  return unspaced.has(symbol) ? `${number}${symbol}` : `${number}${thinSpace}${symbol}`;
}

/**
 * A SI value as text with its unit: significant figures, narrow space, true minus.
 * Without a unit the prefix follows the size. Temperatures are written in whole degrees (one decimal with four
 * digits, and so on). Anything that is not a finite number is written "?" and never passes as a figure.
 */
export function writeQuantity(value: number, dimension: Dimension, unit?: string, digits = 3): string {
  const chosen = unit === undefined || unit === '' ? usual(value, dimension) : findUnit(dimension, unit);
  const number = fromSI(value, chosen);
  if (!Number.isFinite(number)) return '?';
  if (dimension === 'temperature') return joinUnit(writeTemperature(number, digits), chosen.symbol);
  if (dimension === 'count') return joinUnit(writeNumber(number, Math.max(digits, 6), true), chosen.symbol);
  return joinUnit(writeNumber(number, digits), chosen.symbol);
}

function usual(value: number, dimension: Dimension): Unit {
  if (dimension === 'temperature') return findUnit(dimension, '°C');
  return unitBySize(value, dimension);
}

/** No caliper tells more of a length; 150 mm in inches would have eight figures otherwise. */
const lengthFigures = 5;

/** The number alone, as it stands in a field: up to eight figures, five of a length, no padding. */
export function writeEntry(value: number, dimension: Dimension, unit: string): string {
  const figures = dimension === 'length' ? lengthFigures : 8;
  return writeNumber(Number(fromSI(value, findUnit(dimension, unit)).toPrecision(9)), figures, true);
}

/** What was understood, with unit, up to six figures, five of a length, and no padding: "9.525 mm". */
export function writeEcho(value: number, dimension: Dimension, unit: string, figures?: number): string {
  const chosen = findUnit(dimension, unit);
  const most = figures ?? (dimension === 'length' ? lengthFigures : 6);
  return joinUnit(writeNumber(Number(fromSI(value, chosen).toPrecision(12)), most, true), chosen.symbol);
}

/** A temperature that burns, in whole °C: never stated cooler than it is. */
export function writeDegreesUp(kelvin: number): string {
  const zeroCelsius = 273.15;
  // A rounding error does not make a degree.
  const whole = Math.ceil(kelvin - zeroCelsius - 1e-9);
  return writeQuantity(whole + zeroCelsius, 'temperature', '°C');
}

/** The size of a difference beside whole degrees: two figures, whole kelvins from 100 K on. */
export function writeKelvins(value: number, trim = false): string {
  const size = Math.abs(value);
  return joinUnit(writeNumber(size, size >= 99.5 ? 3 : 2, trim), 'K');
}

/** A share that may not be exceeded: whole per cent, always rounded down; one decimal below one per cent. */
export function writeShareDown(share: number): string {
  if (!Number.isFinite(share)) return '?';
  const perCent = share * 100;
  const step = perCent < 1 ? 10 : 1;
  return joinUnit(writeNumber(Math.floor(perCent * step + 1e-6) / step, 3, true), '%');
}

const minute = 60;
const hour = 3600;

/** A length of time as people say it: "0.4 s", "45 s", "4 min 10 s", "2 h 5 min". Whole seconds above ten. */
export function writeDuration(seconds: number): string {
  if (!Number.isFinite(seconds)) return '?';
  if (seconds < 0) return `${minus}${writeDuration(-seconds)}`;
  if (seconds < 1) return writeQuantity(seconds, 'time', undefined, 2);
  if (seconds < 9.95) return joinUnit(writeNumber(seconds, 2, true), 's');
  const whole = Math.round(seconds);
  if (whole < minute) return joinUnit(String(whole), 's');
  if (whole < hour) return pair(Math.floor(whole / minute), 'min', whole % minute, 's');
  const minutes = Math.round(seconds / minute);
  return pair(Math.floor(minutes / 60), 'h', minutes % 60, 'min');
}

function pair(large: number, largeUnit: string, small: number, smallUnit: string): string {
  const first = joinUnit(String(large), largeUnit);
  return small === 0 ? first : `${first} ${joinUnit(String(small), smallUnit)}`;
}
