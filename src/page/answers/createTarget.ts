import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { Target } from '../../../shared/answers.ts';
import { entryFor } from '../../engine/catalogue/index.ts';
import { readQuantity } from '../../engine/quantity/read.ts';
import { metricUnits } from '../../engine/quantity/units.ts';
import { writeEcho } from '../../engine/quantity/write.ts';
import { useSheet } from '../state/sheet.ts';

/** A result and what it should become, as it is typed. */
export interface TypedTarget {
  readonly quantity: Accessor<string>;
  readonly text: Accessor<string>;
  readonly type: (text: string) => void;
  /** Chooses another result, with its present figure as the first text. */
  readonly pick: (quantity: string) => void;
  /** What is wrong with the text, in words. */
  readonly wrong: Accessor<string | null>;
  readonly echo: Accessor<string>;
  /** null while the text cannot be read. */
  readonly target: Accessor<Target | null>;
}

export function createTarget(firstQuantity: string, firstText: string): TypedTarget {
  const sheet = useSheet();
  const [quantity, setQuantity] = createSignal(firstQuantity);
  const [text, setText] = createSignal(firstText);
  const dimension = () => entryFor(quantity())?.dimension ?? 'number';
  const read = createMemo(() => readQuantity(text(), dimension(), metricUnits[dimension()]));
  return {
    quantity,
    text,
    type: setText,
    pick: (key) => {
      setQuantity(key);
      const entry = entryFor(key);
      const now = sheet.results.solution()?.values[key];
      if (!entry || now === undefined) return;
      setText(writeEcho(Number(now.toPrecision(3)), entry.dimension, metricUnits[entry.dimension]));
    },
    wrong: () => {
      const found = read();
      return found.ok ? null : found.reason.sentence;
    },
    echo: () => {
      const found = read();
      return found.ok ? `= ${found.value.echo}` : '';
    },
    target: () => {
      const found = read();
      return found.ok ? { quantity: quantity(), value: found.value.value } : null;
    },
  };
}
