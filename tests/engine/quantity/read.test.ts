import fc from 'fast-check';
import { create, type ImportObject, unitDependencies } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../../shared/design/fields.ts';
import { needsExpression, readQuantity } from '../../../src/engine/quantity/read.ts';
import { units } from '../../../src/engine/quantity/units.ts';
import { writeDuration, writeEntry, writeQuantity } from '../../../src/engine/quantity/write.ts';

function value(text: string, dimension: Dimension, unit: string): number {
  const read = readQuantity(text, dimension, unit);
  if (!read.ok) throw new Error(`${text}: ${read.reason.sentence}`);
  return read.value.value;
}

function refusal(text: string, dimension: Dimension, unit: string) {
  const read = readQuantity(text, dimension, unit);
  if (read.ok) throw new Error(`${text} was read as ${read.value.value}`);
  return read.reason;
}

describe('reads what builders write', () => {
  it.each([
    ['1.5:1', 'number', '', 1.5],
    ['2 : 1', 'number', '', 2],
    ['3/8 in', 'length', 'mm', 0.009525],
    ['3/8"', 'length', 'mm', 0.009525],
    ['3/8″', 'length', 'mm', 0.009525],
    ['⅜ in', 'length', 'mm', 0.009525],
    ['1 1/2 in', 'length', 'mm', 0.0381],
    ['1-1/2 in', 'length', 'mm', 0.0381],
    ['1½"', 'length', 'mm', 0.0381],
    ['1 - 1/2', 'length', 'mm', 0.0005],
    ['100 mm + 1/4 in', 'length', 'mm', 0.10635],
    ['1/4 in + 100 mm', 'length', 'mm', 0.10635],
    ['100mm-1/4in', 'length', 'mm', 0.09365],
    ['5 ft 3 in', 'length', 'm', 1.6002],
    ['5\'3"', 'length', 'm', 1.6002],
    ['120', 'length', 'mm', 0.12],
    ['12 cm', 'length', 'mm', 0.12],
    ['62 thou', 'length', 'mm', 0.0015748],
    ['1,5 mm', 'length', 'mm', 0.0015],
    ['0,125 in', 'length', 'mm', 0.003175],
    ['1e-3 m', 'length', 'mm', 0.001],
    ['-50 m', 'length', 'm', -50],
    ['−50', 'length', 'm', -50],
    ['22 mOhm', 'resistance', 'Ω', 0.022],
    ['22 mΩ', 'resistance', 'Ω', 0.022],
    ['22 m\u03a9', 'resistance', 'Ω', 0.022],
    ['22m', 'resistance', 'Ω', 0.022],
    ['22', 'resistance', 'mΩ', 0.022],
    ['4k7', 'resistance', 'mΩ', 4700],
    ['4.7k', 'resistance', 'mΩ', 4700],
    ['4.7 k ohm', 'resistance', 'mΩ', 4700],
    ['0R05', 'resistance', 'mΩ', 0.05],
    ['2u2', 'capacitance', 'µF', 2.2e-6],
    ['2u2F', 'capacitance', 'µF', 2.2e-6],
    ['2.2 µF', 'capacitance', 'nF', 2.2e-6],
    ['2.2 μF', 'capacitance', 'nF', 2.2e-6],
    ['100n', 'capacitance', 'µF', 1e-7],
    ['7M1', 'frequency', 'MHz', 7.1e6],
    ['7,2 Mhz', 'frequency', 'MHz', 7.2e6],
    ['12V8', 'voltage', 'V', 12.8],
    ['13.8 volts', 'voltage', 'V', 13.8],
    ['250 mA', 'current', 'A', 0.25],
    ['0.5 °C/W', 'thermalResistance', 'K/W', 0.5],
    ['0.5 C/W', 'thermalResistance', 'K/W', 0.5],
    ['0.5 K / W', 'thermalResistance', 'K/W', 0.5],
    ['30', 'temperature', '°C', 303.15],
    ['86 °F', 'temperature', '°C', 303.15],
    ['86F', 'temperature', '°C', 303.15],
    ['-40 °F', 'temperature', '°C', 233.15],
    ['303.15 K', 'temperature', '°C', 303.15],
    ['25 °C + 10 K', 'temperature', '°C', 308.15],
    ['30 - 5', 'temperature', '°C', 298.15],
    ['40 %', 'share', '%', 0.4],
    ['40', 'share', '%', 0.4],
    ['1/3', 'share', '%', 1 / 3],
    ['0.4 %/K', 'temperatureCoefficient', '%/K', 0.004],
    ['0.4 %/°C', 'temperatureCoefficient', '%/K', 0.004],
    ['4 min 10 s', 'time', 's', 250],
    ['5 min', 'time', 's', 300],
    ['1 h 30 min', 'time', 's', 5400],
    ['20 ms', 'time', 's', 0.02],
    ['1 lb 4 oz', 'mass', 'g', 0.566990463],
    ['120°', 'angle', '°', (2 * Math.PI) / 3],
    ['200 W/(m K)', 'conductivity', 'W/(m K)', 200],
    ['18 wpm', 'keyingSpeed', 'wpm', 18],
    ['2.15 dBi', 'decibel', 'dB', 2.15],
    ['1.2 kW', 'power', 'W', 1200],
    ['12', 'count', '', 12],
    ['12 \u00a0mm', 'length', 'mm', 0.012],
  ] as const)('%s as %s', (text, dimension, unit, expected) => {
    expect(value(text, dimension, unit)).toBeCloseTo(expected, expected < 1e-3 && expected > 0 ? 15 : 9);
  });

  it('echoes in the unit of the field', () => {
    const read = readQuantity('3/8 in', 'length', 'mm');
    expect(read.ok && read.value.echo).toBe('9.525\u202fmm');
  });
});

describe('says what is wrong and what would be right', () => {
  it.each([
    ['', 'length', 'mm', 'empty', 'Type a length'],
    ['   ', 'length', 'mm', 'empty', 'Type a length'],
    ['5 kg', 'length', 'mm', 'otherDimension', 'mm, cm, in, ft or m expected; kg is a mass'],
    ['5 mm', 'power', 'W', 'otherDimension', 'mW, W or kW expected; mm is a length'],
    ['5 mΩ', 'length', 'mm', 'otherDimension', 'mΩ is a resistance'],
    ['25 K', 'power', 'W', 'otherDimension', 'K is a temperature'],
    ['2.5 ± 0.2', 'length', 'mm', 'tolerance', 'The value alone is expected'],
    ['2.5 mm +/- 0.2', 'length', 'mm', 'tolerance', 'The value alone is expected'],
    ['5 furlongs', 'length', 'mm', 'unknownUnit', '“furlongs” is not a unit known here'],
    ['abc', 'length', 'mm', 'noNumber', '“abc” is no number; '],
    ['seven', 'number', '', 'noNumber', '“seven” is no number.'],
    ['120..', 'length', 'mm', 'decimalMarks', 'write 120.'],
    ['5 mm +', 'length', 'mm', 'noNumber', 'A number is missing'],
    ['100 + 1/4 in', 'length', 'mm', 'unitOnEach', 'Give each part its unit'],
    ['1 500 W', 'power', 'W', 'twoNumbers', 'Two numbers side by side'],
    ['1,500 W', 'power', 'W', 'comma', 'write 1500 or 1.500'],
    ['1,500.5', 'power', 'W', 'decimalMarks', 'more than one decimal mark'],
    ['1.2.3', 'power', 'W', 'decimalMarks', 'more than one decimal mark'],
    ['4/0 in', 'length', 'mm', 'divisionByZero', 'zero'],
    ['1e999', 'power', 'W', 'absurd', 'scale'],
    ['1e17', 'power', 'W', 'absurd', 'no usable size'],
    ['NaN', 'power', 'W', 'noNumber', 'is no number'],
    ['Infinity', 'power', 'W', 'noNumber', 'is no number'],
    ['14 AWG', 'length', 'mm', 'wireSize', 'Wire size'],
    ['4k7', 'length', 'mm', 'noPrefix', 'no meaning for a length'],
    ['25 °C + 10 °C', 'temperature', '°C', 'temperatureStep', 'written in K'],
    ['0 dBd', 'decibel', 'dB', 'dBd', '2.15'],
    ['12 V 3 A', 'voltage', 'V', 'otherDimension', 'A is a current'],
  ] as const)('%j as %s', (text, dimension, unit, key, part) => {
    const reason = refusal(text, dimension, unit);
    expect(reason.sentence).toContain(part);
    expect(reason.key).toBe(key);
  });

  it.each(['2 * 30 mm', '(20 + 5) mm', '13.8 V * 20 A', '1/2/3', '30 mm / 2', 'sqrt(4) mm'])(
    'hands %s on to the expression reader',
    (text) => {
      expect(refusal(text, 'length', 'mm').key).toBe(needsExpression);
    },
  );
});

describe('laws', () => {
  const mathjs = create(unitDependencies as ImportObject);
  const numbers = fc.double({ min: 1e-3, max: 1e6, noNaN: true }).map((n) => Number(n.toPrecision(6)));
  const lengths = fc.constantFrom('mm', 'cm', 'm', 'ft', 'inch', 'km');

  it('agrees with mathjs on any number and length unit', () => {
    fc.assert(
      fc.property(numbers, lengths, (number, unit) => {
        const ours = value(`${number} ${unit}`, 'length', 'mm');
        expect(ours / mathjs.unit(number, unit).toNumber('m')).toBeCloseTo(1, 12);
      }),
    );
  });

  it('agrees with mathjs on sums of two lengths', () => {
    fc.assert(
      fc.property(numbers, lengths, numbers, lengths, (a, unitA, b, unitB) => {
        const theirs = mathjs.unit(a, unitA).toNumber('m') + mathjs.unit(b, unitB).toNumber('m');
        expect(value(`${a} ${unitA} + ${b} ${unitB}`, 'length', 'mm') / theirs).toBeCloseTo(1, 12);
      }),
    );
  });

  it('reads back what the sheet writes, in every unit', () => {
    const pairs = (Object.keys(units) as Dimension[]).flatMap((d) => units[d].map((u) => [d, u] as const));
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 0.01, max: 1e4, noNaN: true }),
        ([dimension, unit], n) => {
          const si = n * unit.factor + (unit.offset ?? 0);
          if (Math.abs(si) < 1e-15) return;
          const written = writeQuantity(si, dimension, unit.symbol, 12);
          expect(value(written, dimension, unit.symbol) / si).toBeCloseTo(1, 6);
          const entered = value(writeEntry(si, dimension, unit.symbol), dimension, unit.symbol);
          expect(Math.abs(entered / si - 1)).toBeLessThan(dimension === 'length' ? 5.1e-5 : 5e-6);
        },
      ),
    );
  });

  it('reads back every duration it writes, to the second', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3599 }), (seconds) => {
        expect(value(writeDuration(seconds), 'time', 's')).toBe(seconds);
      }),
    );
  });

  it('never throws and never lets NaN or infinity pass, whatever is typed', () => {
    const dimensions = fc.constantFrom(...(Object.keys(units) as Dimension[]));
    const typed = fc.oneof(
      fc.string({ maxLength: 120 }),
      fc
        .array(
          fc.constantFrom(
            '1',
            '/',
            '2',
            ' ',
            'mm',
            'in',
            '-',
            '+',
            '.',
            ',',
            'k',
            'e',
            '°',
            'C',
            '"',
            '*',
            '(',
          ),
          { maxLength: 14 },
        )
        .map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(typed, dimensions, (text, dimension) => {
        const read = readQuantity(text, dimension, units[dimension][0]!.symbol);
        if (read.ok) expect(Number.isFinite(read.value.value)).toBe(true);
        else expect(read.reason.sentence.length).toBeGreaterThan(5);
      }),
      { numRuns: 2000 },
    );
  });
});
