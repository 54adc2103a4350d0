import { fieldAt, leafAt, type NumberField, withValue } from '../../../../shared/design/leaves.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../../shared/outcome.ts';
import { defaultUnit } from '../../quantity/units.ts';
import { writeEcho, writeQuantity } from '../../quantity/write.ts';
import { wireSizesByArea } from '../../supply/conductor.ts';
import { tidy } from './edits.ts';

export type Candidate = number | string;

/** A given value of a design as something to be searched for. */
export interface Unknown {
  readonly path: string;
  readonly label: string;
  readonly field: NumberField | null;
  /** Between the values looked at there are others. */
  readonly continuous: boolean;
  /** The values stand in an order of size. */
  readonly ordered: boolean;
  /** Values to look at first, in order. */
  readonly candidates: readonly Candidate[];
  /** The design with this value. */
  readonly put: (value: Candidate) => Design;
  readonly write: (value: Candidate) => string;
  /** As `write`, in three figures, where more would mean nothing. */
  readonly writeRoughly: (value: Candidate) => string;
}

const scanPoints = 25;
/** A range that spans more than this is looked at in equal ratios. */
const wideRange = 50;
/** Ranges that begin at nothing are looked at down to this share of their end. */
const leastShare = 1e-4;
/** Whole numbers up to this many are looked at one by one. */
const mostCounts = 64;
const writtenDigits = 4;

function spaced(from: number, to: number, points: number): readonly number[] {
  const ratio = from > 0 && to / from > wideRange;
  return Array.from({ length: points }, (_, i) => {
    const share = i / (points - 1);
    return ratio ? from * (to / from) ** share : from + share * (to - from);
  });
}

function numbersOf(field: NumberField, present: number | null): readonly number[] {
  const { min, max, dimension } = field;
  if (dimension === 'count') return countsOf(min, max);
  const fromNothing = min === 0 && dimension !== 'share' && dimension !== 'angle';
  const points = fromNothing
    ? [0, ...spaced(leastShare * max, max, scanPoints)]
    : spaced(min, max, scanPoints);
  const all = present === null ? points : [...points, present];
  return [...new Set(all)].sort((a, b) => a - b);
}

function countsOf(min: number, max: number): readonly number[] {
  if (max - min < mostCounts) return Array.from({ length: max - min + 1 }, (_, i) => min + i);
  return [...new Set(spaced(min, max, mostCounts).map(Math.round))];
}

/** Options of a choice; wire sizes of the present family by area. */
function optionsOf(path: string, present: string, options: readonly string[]): readonly string[] {
  if (!path.endsWith('wiring.size') && !/\.path\.\d+\.size$/.test(path)) return options;
  const gauge = present.startsWith('AWG');
  return wireSizesByArea.filter((size) => size.startsWith('AWG') === gauge);
}

/** A field of the design as an unknown. Fails with `noSuchField` or `notAnUnknown`. */
export function unknownAt(design: Design, path: string): Outcome<Unknown> {
  const spec = fieldAt(path);
  if (!spec) return failure('noSuchField', `There is no field “${path}” in the design.`);
  const present = leafAt(design, path);
  const base = {
    path,
    label: spec.label,
    put: (value: Candidate) => withValue(design, path, typeof value === 'number' ? tidy(value) : value),
  };
  if (spec.kind === 'number') {
    const unit = defaultUnit(spec, 'metric');
    return success({
      ...base,
      field: spec,
      continuous: spec.dimension !== 'count',
      ordered: true,
      candidates: numbersOf(spec, typeof present === 'number' ? present : null),
      write: (value) => writeEcho(Number(Number(value).toPrecision(writtenDigits)), spec.dimension, unit),
      writeRoughly: (value) => writeQuantity(Number(value), spec.dimension, unit),
    });
  }
  if (spec.kind === 'choice') {
    const options = optionsOf(path, String(present), Object.keys(spec.options));
    const words = (value: Candidate) => spec.options[String(value)] ?? String(value);
    return success({
      ...base,
      field: null,
      continuous: false,
      ordered: options.length < Object.keys(spec.options).length,
      candidates: options,
      write: words,
      writeRoughly: words,
    });
  }
  return failure('notAnUnknown', `“${spec.label}” is no value that can be searched for.`);
}
