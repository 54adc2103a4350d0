import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { readQuantity } from '../../engine/quantity/read.ts';
import { writeEcho } from '../../engine/quantity/write.ts';
import type { NumberField } from './fields.ts';

export interface Entry {
  /** SI value; null where the builder left an optional field empty. */
  readonly value: number | null;
  /** What was understood, in the field's unit. */
  readonly echo: string;
}

/** Reads typed text for one field: the quantity, then the range of the field. */
export function readEntry(text: string, spec: NumberField, unit: string): Outcome<Entry> {
  if (spec.optional && text.trim() === '') return success({ value: null, echo: '' });
  const read = readQuantity(text, spec.dimension, unit);
  return read.ok ? checkRange(read.value.value, read.value.echo, spec, unit, text) : read;
}

/** Whether a value fits the field, said in the unit the builder sees. */
export function checkRange(
  value: number,
  echo: string,
  spec: NumberField,
  unit: string,
  text = '',
): Outcome<Entry> {
  if (spec.dimension === 'count' && !Number.isInteger(value)) {
    return failure('whole', 'A whole number is expected.');
  }
  // The ends of a range survive the trip through the display unit and back.
  const slack = 1e-9 * Math.max(Math.abs(spec.min), Math.abs(spec.max));
  if (value < spec.min - slack || value > spec.max + slack) {
    return failure('range', rangeSentence(spec, unit) + shareHint(value, spec, text));
  }
  return success({ value: Math.min(Math.max(value, spec.min), spec.max), echo });
}

export function rangeSentence(spec: NumberField, unit: string): string {
  const write = (value: number) => writeEcho(value, spec.dimension, unit);
  return `Between ${write(spec.min)} and ${write(spec.max)} is expected.`;
}

/** What a bare "0.25" in a field of per cent was read as, and how the other is written; empty for all else. */
export function ratioRemark(value: number, spec: NumberField, text: string): string {
  const bare = /^\s*0?[.,]\d+\s*$/.test(text);
  if (spec.dimension !== 'share' || !bare || value <= 0 || value * 100 > spec.max) return '';
  const asRatio = Number((value * 1e4).toPrecision(6));
  return `${writeEcho(value, 'share', '%')}; for ${writeEcho(value * 100, 'share', '%')} write ${asRatio}`;
}

/** "0.52" in a field of per cent is most likely meant as 52 %. */
function shareHint(value: number, spec: NumberField, text: string): string {
  const asRatio = value * 100;
  const likely =
    spec.dimension === 'share' && !text.includes('%') && asRatio >= spec.min && asRatio <= spec.max;
  return likely ? ` Did you mean ${writeEcho(asRatio, 'share', '%')}?` : '';
}
