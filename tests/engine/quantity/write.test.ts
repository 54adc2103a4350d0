import { describe, expect, it } from 'vitest';
import {
  writeDegreesUp,
  writeDuration,
  writeEntry,
  writeNumber,
  writeQuantity,
  writeShareDown,
} from '../../../src/engine/quantity/write.ts';

const spaced = (text: string) => text.replaceAll(' ', '\u202f');

describe('writeNumber', () => {
  it.each([
    [0, 3, '0'],
    [1, 3, '1.00'],
    [12.345, 3, '12.3'],
    [1234.5, 3, '1230'],
    [0.00123456, 3, '0.00123'],
    [-4.5, 2, '−4.5'],
    [99.96, 3, '100'],
    [0.99951, 3, '1.00'],
    [Number.NaN, 3, '?'],
    [Number.POSITIVE_INFINITY, 3, '?'],
  ])('%s to %s figures is %s', (value, digits, text) => {
    expect(writeNumber(value, digits)).toBe(text);
  });
  it('trims padding when asked', () => {
    expect(writeNumber(1.5, 6, true)).toBe('1.5');
    expect(writeNumber(100, 6, true)).toBe('100');
  });
});

describe('writeQuantity', () => {
  it.each([
    [0.0043, 'resistance', undefined, '4.30 mΩ'],
    [0.02, 'resistance', 'Ω', '0.0200 Ω'],
    [2.2e-6, 'capacitance', undefined, '2.20 µF'],
    [0.12, 'length', undefined, '120 mm'],
    [1.5, 'length', undefined, '1.50 m'],
    [0.12, 'length', 'in', '4.72 in'],
    [86.8, 'power', undefined, '86.8 W'],
    [0.9999, 'power', undefined, '1.00 W'],
    [1500, 'power', undefined, '1.50 kW'],
    [0, 'power', undefined, '0 W'],
    [360.55, 'temperature', undefined, '87 °C'],
    [253.15, 'temperature', undefined, '−20 °C'],
    [272.95, 'temperature', undefined, '0 °C'],
    [360.55, 'temperature', '°F', '189 °F'],
    [0.382, 'share', undefined, '38.2 %'],
    [1.234, 'thermalResistance', undefined, '1.23 K/W'],
    [2, 'count', undefined, '2'],
    [7.2e6, 'frequency', undefined, '7.20 MHz'],
    [Number.NaN, 'power', undefined, '?'],
  ] as const)('%s as %s in %s', (value, dimension, unit, text) => {
    expect(writeQuantity(value, dimension, unit)).toBe(spaced(text));
  });
  it('sets the degree of an angle at the number', () => {
    expect(writeQuantity(Math.PI / 2, 'angle', '°')).toBe('90.0°');
  });
});

describe('writeEntry', () => {
  it.each([
    [0.009525, 'length', 'mm', '9.525'],
    [348.15, 'temperature', '°C', '75'],
    [0.1 + 0.2, 'share', '%', '30'],
    [1 / 3, 'share', '%', '33.333333'],
  ] as const)('%s as %s in %s', (value, dimension, unit, text) => {
    expect(writeEntry(value, dimension, unit)).toBe(text);
  });
});

describe('writeDuration', () => {
  it.each([
    [0.02, '20 ms'],
    [0.4, '400 ms'],
    [3.21, '3.2 s'],
    [9.99, '10 s'],
    [45.4, '45 s'],
    [59.7, '1 min'],
    [250, '4 min 10 s'],
    [300, '5 min'],
    [3599.8, '1 h'],
    [7500, '2 h 5 min'],
    [-3, '−3 s'],
    [Number.POSITIVE_INFINITY, '?'],
  ])('%s s is %s', (seconds, text) => {
    expect(writeDuration(seconds).replaceAll('\u202f', ' ')).toBe(text);
  });
});

describe('writeShareDown', () => {
  it.each([
    [0.3999, '39 %'],
    [0.29, '29 %'],
    [1, '100 %'],
    [0.0057, '0.5 %'],
    [0, '0 %'],
    [Number.NaN, '?'],
  ])('%s is %s', (share, text) => {
    expect(writeShareDown(share).replaceAll('\u202f', ' ')).toBe(text);
  });
});

describe('a temperature that burns', () => {
  it.each([
    [359.5, '87 °C'],
    [360.15, '87 °C'],
    [360.15 + 1e-12, '87 °C'],
    [360.2, '88 °C'],
    [268.05, '−5 °C'],
  ])('%f K is written in whole degrees, never cooler: %s', (kelvin, words) => {
    expect(writeDegreesUp(kelvin).replace(/\s/g, ' ')).toBe(words);
  });
});
