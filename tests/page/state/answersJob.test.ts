import { describe, expect, it } from 'vitest';
import { createAnswersJob } from '../../../src/worker/answersJob.ts';
import type { AnswerNews } from '../../../src/worker/answersMessages.ts';
import { exampleOf } from '../../engine/couple/designs.ts';

const design = exampleOf('data-final-100w');
const map = {
  x: { path: 'surroundings.ambient' },
  y: { path: 'amplifier.pep' },
  columns: 6,
  rows: 9,
  edge: 'nominal',
} as const;

/** A job whose pieces run only when the test says so. */
function byHand() {
  const news: AnswerNews[] = [];
  const waiting: (() => void)[] = [];
  const order = createAnswersJob(
    (one) => news.push(one),
    (work) => waiting.push(work),
  );
  const runOne = () => waiting.shift()?.();
  const runAll = () => {
    while (waiting.length > 0) runOne();
  };
  return { news, order, runOne, runAll, waiting };
}

describe('long answers in pieces', () => {
  it('ends with the result, news of the progress before it', () => {
    const job = byHand();
    job.order({ id: 1, kind: 'map', design, question: map });
    job.runAll();
    const last = job.news.at(-1)!;
    expect('result' in last).toBe(true);
    const shares = job.news.flatMap((one) => ('progress' in one ? [one.progress] : []));
    shares.forEach((share, i) => {
      expect(share).toBeGreaterThan(shares[i - 1] ?? 0);
      expect(share).toBeLessThanOrEqual(1);
    });
  });

  it('tells nothing more of one that was cancelled', () => {
    const job = byHand();
    job.order({ id: 1, kind: 'remedies', design, question: { edge: 'nominal', pairs: false } });
    job.runOne();
    const before = job.news.length;
    expect(job.news.every((one) => 'progress' in one)).toBe(true);
    job.order({ cancel: 1 });
    job.runAll();
    expect(job.news).toHaveLength(before);
  });

  it('answers two side by side', () => {
    const job = byHand();
    job.order({ id: 1, kind: 'map', design, question: map });
    job.order({ id: 2, kind: 'matters', design, question: { quantity: 'keyDown.junctionPeak' } });
    job.runAll();
    const done = job.news.flatMap((one) => ('result' in one ? [one.id] : []));
    expect([...done].sort()).toEqual([1, 2]);
  });

  it('passes a fault on as words', () => {
    const job = byHand();
    job.order({ id: 7, kind: 'map', design: null as never, question: map });
    job.runAll();
    expect(job.news.at(-1)).toMatchObject({ id: 7, message: expect.any(String) });
  });
});
