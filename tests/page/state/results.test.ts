import { createRoot, createSignal } from 'solid-js';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Band } from '../../../shared/band.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { createResults, type Results } from '../../../src/page/state/results.ts';
import { atOnce, figuresOnly } from '../support.tsx';

/** A band of which only the number of samples is looked at. */
const bandOf = (samples: number) => ({ samples }) as Band;

function begin() {
  const asked: { design: Design; tell: (share: number) => void; answer: (band: Outcome<Band>) => void }[] =
    [];
  const stopped: number[] = [];
  const [design, setDesign] = createSignal(startDesign);
  let results!: Results;
  const dispose = createRoot((done) => {
    results = createResults(
      design,
      {
        ...figuresOnly,
        band: (current, tell) =>
          new Promise((answer) => {
            asked.push({ design: current, tell, answer });
          }),
        stopBand: () => void stopped.push(asked.length),
      },
      atOnce,
    );
    return done;
  });
  return { asked, stopped, design, setDesign, results, dispose };
}

const settle = () => vi.advanceTimersByTimeAsync(1000);

describe('the band behind the figures', () => {
  beforeEach(() => vi.useFakeTimers());
  afterEach(() => vi.useRealTimers());

  it('is asked for when typing rests, tells how far it is, and then stands', async () => {
    const { asked, results, dispose } = begin();
    expect(results.solution()).toBeDefined();
    expect(asked).toHaveLength(0);
    await settle();
    expect(asked.map(({ design }) => design)).toEqual([startDesign]);
    asked[0]!.tell(0.5);
    expect(results.bandProgress()).toBe(0.5);
    expect(results.band()).toBeUndefined();
    asked[0]!.answer(success(bandOf(1)));
    await settle();
    expect(results.band()?.samples).toBe(1);
    expect(results.bandProgress()).toBeNull();
    dispose();
  });

  it('is stopped by an edit; the late answer to the older design is thrown away and figures are nominal again', async () => {
    const { asked, stopped, setDesign, results, dispose } = begin();
    await settle();
    setDesign({ ...startDesign, name: 'newer' });
    expect(stopped).toEqual([1]);
    expect(results.bandProgress()).toBeNull();
    await settle();
    asked[0]!.answer(success(bandOf(1)));
    await settle();
    expect(results.band()).toBeUndefined();
    asked[1]!.answer(success(bandOf(2)));
    await settle();
    expect(results.band()?.samples).toBe(2);
    setDesign({ ...startDesign, name: 'newest' });
    expect(results.band()).toBeUndefined();
    dispose();
  });

  it('leaves the figures nominal where a design has none', async () => {
    const { asked, results, dispose } = begin();
    await settle();
    asked[0]!.answer(failure('finsDoNotFit', 'The fins do not fit.'));
    await settle();
    expect(results.band()).toBeUndefined();
    expect(results.bandProgress()).toBeNull();
    expect(results.fault()).toBeNull();
    dispose();
  });
});
