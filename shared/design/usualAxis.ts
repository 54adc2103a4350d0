import type { MapAxis } from '../answers.ts';
import { fieldAt, leafAt, type NumberField } from './leaves.ts';
import type { Design } from './schema.ts';

/** A field of no great range is mapped from a tenth to twice its value: what does not fit fits at much less. */
const lowShare = 0.1;
const highShare = 2;
const temperatureSpan = { below: 30, above: 25 } as const;

/** A range around the present value of a field, within what the field allows. */
export function usualAxis(design: Design, path: string): MapAxis {
  const field = fieldAt(path) as NumberField;
  const { min, max, dimension } = field;
  if (dimension === 'share') return { path, from: min, to: max };
  const now = leafAt(design, path);
  const value = typeof now === 'number' ? now : (min + max) / 2;
  const [from, to] =
    dimension === 'temperature'
      ? [value - temperatureSpan.below, value + temperatureSpan.above]
      : [value * lowShare, value * highShare];
  if (!(to > from)) return { path, from: min, to: max };
  return { path, from: Math.max(min, from), to: Math.min(max, to) };
}
