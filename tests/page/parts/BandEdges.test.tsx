import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Band } from '../../../shared/band.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { Found } from '../../../src/page/parts/Found.tsx';
import { Station } from '../../../src/page/parts/Station.tsx';
import { figuresOnly, plainSpaces, renderInSheet } from '../support.tsx';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

const bandOf = (low: number, high: number) =>
  ({ edges: { ratingResistance: { low, high } } }) as unknown as Band;

/** A station with one figure whose band is answered when the test says so. */
function begin() {
  let answer!: (band: Outcome<Band>) => void;
  const engine = {
    ...figuresOnly,
    band: () =>
      new Promise<Outcome<Band>>((resolve) => {
        answer = resolve;
      }),
  };
  const { container, state } = renderInSheet(
    () => (
      <Station id="sink" number={1} title="Sink" given={<p />} found={<Found name="ratingResistance" />} />
    ),
    undefined,
    { engine },
  );
  const told = () => plainSpaces(container.querySelector('.found-band')?.textContent);
  const isHidden = () => container.querySelector('.band-coming .found-value > .found-band') !== null;
  const settle = () => vi.advanceTimersByTimeAsync(1000);
  return { state, told, isHidden, settle, answer: (band: Outcome<Band>) => answer(band) };
}

it('stand beside their figure; at an edit they keep their room, hidden, until the newer ones come', async () => {
  const { state, told, isHidden, settle, answer } = begin();
  expect(told()).toBe(' ');
  await settle();
  answer(success(bandOf(1.2, 1.8)));
  await settle();
  expect([told(), isHidden()]).toEqual(['1.20 to 1.80 K/W', false]);
  state.store.edit('sink.finHeight', 0.04);
  expect([told(), isHidden()]).toEqual(['1.20 to 1.80 K/W', true]);
  await settle();
  answer(success(bandOf(1, 1.5)));
  await settle();
  expect([told(), isHidden()]).toEqual(['1.00 to 1.50 K/W', false]);
});

it('stay hidden where the newer design has no band', async () => {
  const { state, isHidden, settle, answer } = begin();
  await settle();
  answer(success(bandOf(1.2, 1.8)));
  await settle();
  state.store.edit('sink.finHeight', 0.04);
  await settle();
  answer(failure('finsDoNotFit', 'The fins do not fit.'));
  await settle();
  expect(isHidden()).toBe(true);
});
