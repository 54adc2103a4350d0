import { fireEvent, screen } from '@solidjs/testing-library';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import { Field } from '../../../src/page/parts/Field.tsx';
import { Verdicts } from '../../../src/page/stations/Verdicts.tsx';
import { change, exampleOf } from '../../engine/couple/designs.ts';
import { engine, plainSpaces, renderInSheet } from '../support.tsx';

const field = exampleOf('field-station-60w');
const placed = change(field, {
  device: {
    places: [
      { x: 0.03, y: 0.05 },
      { x: 0.1, y: 0.05 },
    ],
  },
});
const blown = change(field, { sink: { fan: 'along', fanMiddleFlow: 0.006, fanMiddlePressure: 15 } });

const reasons = (container: HTMLElement) =>
  [...container.querySelectorAll('.reason')].map((reason) => plainSpaces(reason.textContent));
const headline = (container: HTMLElement, name: string) => {
  const verdict = [...container.querySelectorAll('.verdict')].find(
    (each) => each.querySelector('.verdict-name')?.textContent === name,
  );
  return plainSpaces(verdict?.querySelector('.verdict-headline')?.textContent);
};

/** What is typed into which field, and what the sheet then says of it. */
const faults: readonly (readonly [string, Design, string, string, RegExp])[] = [
  ['a part over the edge of the plate', placed, 'device.places.0.x', '1 mm', /mm over the edge of the plate/],
  ['fins that do not fit', field, 'sink.finCount', '60', /The fins do not fit/],
  ['a fan curve that does not fall', blown, 'sink.fanMiddleFlow', '0.4 m³/s', /middle point of the fan/],
];

describe('a heat path that cannot be', () => {
  it.each(faults)(
    '%s is told above the verdicts, and gone when it is mended',
    (_what, design, path, typed, words) => {
      const { container, state } = renderInSheet(
        () => (
          <>
            <Verdicts />
            <Field path={path} />
          </>
        ),
        design,
        { engine },
      );
      expect(reasons(container)).toEqual([]);
      const supply = headline(container, '12 V input');
      const box = container.querySelector<HTMLInputElement>('.field input')!;
      fireEvent.input(box, { target: { value: typed } });
      expect(state.store.wrong()).toEqual([]);
      expect(reasons(container).join(' ')).toMatch(words);
      // Said once, as one sentence; what does not hang on the sink stands as before.
      expect(new Set(reasons(container)).size).toBe(reasons(container).length);
      expect(headline(container, '12 V input')).toBe(supply);
      expect(supply).toMatch(/A/);
      expect(screen.queryByText(/NaN|Infinity|undefined/)).toBeNull();
      fireEvent.blur(box);
      state.store.undo();
      expect(reasons(container)).toEqual([]);
    },
  );
});
