import { create, type ImportObject, unitDependencies } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../../shared/design/fields.ts';
import { defaultUnit, findUnit, fromSI, toSI, units } from '../../../src/engine/quantity/units.ts';

const math = create(unitDependencies as ImportObject);

/** Our printed symbol -> the name mathjs has for it, and the SI unit to compare in. */
const mathNames: Record<string, string> = {
  µm: 'um',
  mil: 'mil',
  in: 'inch',
  'mm²': 'mm^2',
  'cm²': 'cm^2',
  'in²': 'inch^2',
  'm²': 'm^2',
  µΩ: 'uohm',
  mΩ: 'mohm',
  Ω: 'ohm',
  kΩ: 'kohm',
  MΩ: 'Mohm',
  '°C/W': 'K/W',
  '°C': 'degC',
  '°F': 'degF',
  '1/K': 'K^-1',
  µs: 'us',
  µF: 'uF',
  '°': 'deg',
  'W/(m K)': 'W/(m K)',
  'W/(cm K)': 'W/(cm K)',
  min: 'minute',
  h: 'hour',
  'W/(m² K)': 'W/(m^2 K)',
  'mΩ/m': 'mohm/m',
  'Ω/m': 'ohm/m',
  'm³/h': 'm^3/hour',
  'ft³/min': 'ft^3/minute',
  'm³/s': 'm^3/s',
  'mmH₂O': 'mmH2O',
  µH: 'uH',
  µC: 'uC',
  mAh: 'mA hour',
  Ah: 'A hour',
  'A² s': 'A^2 s',
};

const si: Partial<Record<Dimension, string>> = {
  length: 'm',
  area: 'm^2',
  power: 'W',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  thermalResistance: 'K/W',
  temperature: 'K',
  temperatureCoefficient: 'K^-1',
  time: 's',
  frequency: 'Hz',
  mass: 'kg',
  capacitance: 'F',
  angle: 'rad',
  conductivity: 'W/(m K)',
  filmCoefficient: 'W/(m^2 K)',
  heatCapacity: 'J/K',
  resistancePerLength: 'ohm/m',
  temperatureDifference: 'K',
  volumeFlow: 'm^3/s',
  pressure: 'Pa',
  inductance: 'H',
  charge: 'C',
  energy: 'J',
  pulseIntegral: 'A^2 s',
};

/** mathjs has no such unit; checked by hand below. */
const unknownToMathjs = new Set(['%', '1', 'dB', 'wpm', '', '%/K', 'ppm/K', 'inH₂O']);

const checked = (Object.keys(units) as Dimension[]).flatMap((dimension) =>
  units[dimension]
    .filter((unit) => !unknownToMathjs.has(unit.symbol))
    .map((unit) => [dimension, unit.symbol] as const),
);

describe('every factor agrees with mathjs', () => {
  it('compares most of the table', () => {
    expect(checked.length).toBeGreaterThanOrEqual(50);
  });
  it.each(checked)('%s in %s', (dimension, symbol) => {
    const unit = findUnit(dimension, symbol);
    // A step of temperature has mathjs names of its own only through a difference.
    if (dimension === 'temperatureDifference' && symbol === '°F') {
      const step = math.unit(1, 'degF').toNumber('K') - math.unit(0, 'degF').toNumber('K');
      expect(toSI(1, unit)).toBeCloseTo(step, 12);
      return;
    }
    for (const number of [1, 37.5]) {
      const theirs = math.unit(number, mathNames[symbol] ?? symbol).toNumber(si[dimension]!);
      expect(toSI(number, unit) / theirs).toBeCloseTo(1, 12);
    }
  });
  it('has the few that mathjs does not know right', () => {
    expect(toSI(50, findUnit('share', '%'))).toBe(0.5);
    expect(toSI(0.5, findUnit('share', '1'))).toBe(0.5);
    expect(toSI(0.4, findUnit('temperatureCoefficient', '%/K'))).toBeCloseTo(0.004, 15);
    expect(toSI(4000, findUnit('temperatureCoefficient', 'ppm/K'))).toBeCloseTo(0.004, 15);
    expect(toSI(3, findUnit('decibel', 'dB'))).toBe(3);
    expect(toSI(18, findUnit('keyingSpeed', 'wpm'))).toBe(18);
  });
});

describe('the table itself', () => {
  const all = (Object.keys(units) as Dimension[]).flatMap((d) =>
    units[d].map((u) => ({ dimension: d, unit: u })),
  );
  it('goes there and back in every unit', () => {
    for (const { unit } of all) expect(fromSI(toSI(12.5, unit), unit)).toBeCloseTo(12.5, 9);
  });
  it('spells no two units of a dimension alike', () => {
    for (const dimension of Object.keys(units) as Dimension[]) {
      const spellings = units[dimension].flatMap((unit) => unit.spellings);
      expect(new Set(spellings).size).toBe(spellings.length);
    }
  });
});

describe('the unit a field starts with', () => {
  it.each([
    ['length', 0.01, 1, 'metric', 'mm'],
    ['length', 0.01, 1, 'inch', 'in'],
    ['length', 0, 50, 'metric', 'm'],
    ['length', 0, 50, 'inch', 'ft'],
    ['resistance', 0, 2, 'metric', 'mΩ'],
    ['resistance', 0, 20, 'metric', 'Ω'],
    ['time', 1e-5, 10, 'metric', 'ms'],
    ['time', 1, 7200, 'metric', 's'],
    ['mass', 0, 0.5, 'inch', 'oz'],
    ['temperature', 233, 343, 'inch', '°C'],
  ] as const)('%s from %s to %s in %s units: %s', (dimension, min, max, system, symbol) => {
    expect(defaultUnit({ dimension, min, max }, system)).toBe(symbol);
  });
});

describe('pressure of a column of water', () => {
  it('an inch of water is 249.089 Pa (conventional, 1000 kg/m³ and standard gravity)', () => {
    expect(toSI(1, findUnit('pressure', 'inH₂O'))).toBeCloseTo(249.08891, 4);
  });
});
