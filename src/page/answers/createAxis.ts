import { type Accessor, createSignal } from 'solid-js';
import type { AskedAxis } from '../../../shared/answers.ts';
import { usualAxis } from '../../../shared/design/usualAxis.ts';
import { readQuantity } from '../../engine/quantity/read.ts';
import { findUnit, fromSI, toSI } from '../../engine/quantity/units.ts';
import { writeEcho } from '../../engine/quantity/write.ts';
import { fieldAt, type NumberField } from '../state/fields.ts';
import { useSheet } from '../state/sheet.ts';
import { solvedDesign } from './parts.tsx';

/** One end of an axis as it is typed. */
export interface TypedEnd {
  readonly text: Accessor<string>;
  readonly type: (text: string) => void;
  readonly wrong: Accessor<string | null>;
  readonly echo: Accessor<string>;
  /** SI; null while the text cannot be read or the field does not take it. */
  readonly value: Accessor<number | null>;
}

export interface TypedAxis {
  readonly path: Accessor<string>;
  readonly pick: (path: string) => void;
  readonly from: TypedEnd;
  readonly to: TypedEnd;
  /** null while an end is wrong. */
  readonly axis: Accessor<AskedAxis | null>;
}

/** An axis of the map: a given value and the range to draw, around the present value until another is typed. */
export function createAxis(first: string): TypedAxis {
  const sheet = useSheet();
  const [path, setPath] = createSignal(first);
  const field = () => fieldAt(path()) as NumberField;
  const unit = () => sheet.preferences.unitOf(path(), field());
  /** Three figures of what is shown: in kelvins they would be odd degrees. */
  const written = (value: number) => {
    const { dimension } = field();
    const shownIn = findUnit(dimension, unit());
    const rounded = toSI(Number(fromSI(value, shownIn).toPrecision(3)), shownIn);
    return writeEcho(rounded, dimension, unit());
  };
  const from = createEnd('from');
  const to = createEnd('to');

  function createEnd(end: 'from' | 'to'): TypedEnd & { readonly clear: () => void } {
    const [typed, setTyped] = createSignal<string | null>(null);
    const text = () => typed() ?? written(usualAxis(solvedDesign(sheet), path())[end]);
    const read = () => readQuantity(text(), field().dimension, unit());
    const wrong = () => {
      const found = read();
      if (!found.ok) return found.reason.sentence;
      const { min, max } = field();
      const { value } = found.value;
      // What is written to three figures may lie a hair outside of its field.
      const slack = 1e-2 * (max - min);
      if (value >= min - slack && value <= max + slack) return null;
      return `Between ${written(min)} and ${written(max)}.`;
    };
    return {
      text,
      type: setTyped,
      clear: () => setTyped(null),
      wrong,
      echo: () => {
        const found = read();
        return typed() !== null && found.ok ? `= ${found.value.echo}` : '';
      },
      value: () => {
        const found = read();
        return found.ok && wrong() === null ? found.value.value : null;
      },
    };
  }

  return {
    path,
    pick: (next) => {
      setPath(next);
      from.clear();
      to.clear();
    },
    from,
    to,
    axis: () => {
      const [low, high] = [from.value(), to.value()];
      return low === null || high === null ? null : { path: path(), from: low, to: high };
    },
  };
}
