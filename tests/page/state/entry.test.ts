import { describe, expect, it } from 'vitest';
import { readEntry } from '../../../src/page/state/entry.ts';
import { knownField, type NumberField } from '../../../src/page/state/fields.ts';

const spec = (path: string) => knownField(path) as NumberField;
const plain = (text: string) => text.replaceAll('\u202f', ' ');

describe('an entry of a field', () => {
  it('is read with its unit and echoed in the unit of the field', () => {
    const read = readEntry('3/8 in', spec('sink.baseThickness'), 'mm');
    expect(read.ok && read.value.value).toBeCloseTo(0.009525, 12);
    expect(read.ok && plain(read.value.echo)).toBe('9.525 mm');
  });

  it.each([
    ['sink.width', '5 m', 'mm', 'Between 10 mm and 1000 mm'],
    ['sink.finCount', '2.5', '', 'whole number'],
    ['amplifier.efficiency', '0.52', '%', 'Did you mean 52 %?'],
    ['surroundings.ambient', '400', '°C', 'Between −40 °C and 70 °C'],
    ['sink.width', '', 'mm', 'Type a length'],
  ])('%s: %j is refused with words that help', (path, text, unit, words) => {
    const read = readEntry(text, spec(path), unit);
    expect(read.ok ? '' : plain(read.reason.sentence)).toContain(words);
  });

  it('may be left empty where the value may be unknown', () => {
    const read = readEntry(' ', spec('device.junctionTime'), 'ms');
    expect(read.ok && read.value.value).toBeNull();
  });

  it('takes the ends of the range, typed in the unit of the field', () => {
    const read = readEntry('180', spec('amplifier.conductionAngle'), '°');
    expect(read.ok && read.value.value).toBe(Math.PI);
  });
});
