import type { Sensitivity, SensitivityRow } from '../../../../shared/answers.ts';
import {
  type FieldPlace,
  fieldsOf,
  leafAt,
  type NumberField,
  withLeaf,
} from '../../../../shared/design/leaves.ts';
import { withLoggedSinks } from '../../../../shared/design/loggedSink.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../../shared/outcome.ts';
import type { Verdict } from '../../../../shared/solution.ts';
import { noDoubt } from './edge.ts';
import { type Gauge, gaugeFor, marginAt } from './gauge.ts';
import { isService } from './standing.ts';
import { lastOf } from './steps.ts';

/** A tenth more or less of what has a natural zero; own choice. */
const tenth = 0.1;
/** Steps of what has none, in SI: 5 K, 5 points of a share, one piece. */
const temperatureStep = 5;
const shareStep = 0.05;
/** Effects below this share of the greatest are left out. */
const leastShare = 0.002;

/** The quantity that stands for a verdict. */
export const measureOfVerdict: Readonly<Record<Verdict['key'], string>> = {
  ssb: 'ssb.junctionPeak',
  cw: 'cw.junctionPeak',
  keyDown: 'keyDown.junctionPeak',
  supply: 'inputVoltagePep',
  people: 'touchTemperature',
};

interface Step {
  readonly size: number;
  readonly words: string;
}

function stepOf(field: NumberField, value: number): Step | null {
  switch (field.dimension) {
    case 'count':
      return { size: 1, words: '±1' };
    case 'temperature':
      return { size: temperatureStep, words: `±${temperatureStep}\u202fK` };
    case 'share':
      return { size: shareStep, words: '±5\u202fpoints' };
    default:
      return value === 0 ? null : { size: tenth * Math.abs(value), words: '±10\u202f%' };
  }
}

/** What is asked of each changed design; a junction through the quick way, everything else by a full solve. */
function reader(gauge: Gauge): (design: Design) => number | null {
  const [head, name] = gauge.quantity.split('.');
  if (name !== 'junctionPeak' || !isService(head as Verdict['key'])) return gauge.value;
  const service = head as 'ssb' | 'cw' | 'keyDown';
  return (design) => {
    const margin = marginAt(design, service, noDoubt);
    return margin === null ? null : -margin;
  };
}

function changed(design: Design, { path }: FieldPlace, field: NumberField, value: number, step: number) {
  const next = Math.min(field.max, Math.max(field.min, value + step));
  return next === value ? null : withLeaf(design, path, next);
}

function rowOf(
  design: Design,
  place: FieldPlace,
  read: (design: Design) => number | null,
  base: number,
): SensitivityRow | null {
  const { spec, path } = place;
  const value = leafAt(design, path);
  if (spec.kind !== 'number' || typeof value !== 'number') return null;
  const step = stepOf(spec, value);
  if (step === null) return null;
  const effect = (sign: number) => {
    const other = changed(design, place, spec, value, sign * step.size);
    const found = other === null ? null : read(other);
    return found === null ? null : found - base;
  };
  const raised = effect(1);
  // What does nothing one way does nothing the other: most fields of a design have no say in one quantity.
  const lowered = raised === 0 ? 0 : effect(-1);
  const size = Math.max(Math.abs(raised ?? 0), Math.abs(lowered ?? 0));
  return { path, label: spec.label, step: step.words, raised, lowered, size };
}

/** Steps to a sensitivity: yields the share done. */
export function* sensitivitySteps(given: Design, quantity: string): Generator<number, Outcome<Sensitivity>> {
  const design = withLoggedSinks(given);
  const gauge = gaugeFor(quantity, noDoubt);
  if (!gauge.ok) return gauge;
  const value = gauge.value.value(design);
  const read = reader(gauge.value);
  const base = read(design);
  if (value === null || base === null) {
    return failure('notComputed', `“${gauge.value.label}” cannot be computed for this design.`);
  }
  const fields = fieldsOf(design).filter(({ path }) => !path.startsWith('bench.'));
  const rows: SensitivityRow[] = [];
  for (const [i, place] of fields.entries()) {
    const row = rowOf(design, place, read, base);
    if (row) rows.push(row);
    yield (i + 1) / fields.length;
  }
  const greatest = Math.max(0, ...rows.map((row) => row.size));
  const { label, dimension } = gauge.value;
  return success({
    measure: { quantity, label, dimension },
    value,
    rows: rows.filter((row) => row.size > leastShare * greatest).sort((a, b) => b.size - a.size),
  });
}

/**
 * What a small change of each given value does to a found quantity, most important first: a tenth more and less,
 * 5 K of a temperature, 5 points of a share, one piece of a count. Each by the whole coupled model.
 *
 * quantity: catalogue key; `measureOfVerdict` names one for each verdict. Fails with `noSuchQuantity`,
 * `quantityIsGiven` or `notComputed`.
 */
export function sensitivity(design: Design, quantity: string): Outcome<Sensitivity> {
  return lastOf(sensitivitySteps(design, quantity));
}
