import { describe, expect, it } from 'vitest';
import type { Band } from '../../../shared/band.ts';
import { startDesign } from '../../../shared/design/start.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import { bandSteps } from '../../../src/engine/index.ts';
import { createBandJob } from '../../../src/worker/bandJob.ts';

/** Work put off, done one piece at a time. */
function queue() {
  const waiting: (() => void)[] = [];
  return {
    later: (work: () => void) => void waiting.push(work),
    one: () => waiting.shift()?.(),
    all() {
      while (waiting.length > 0) waiting.shift()?.();
    },
    waiting,
  };
}

function listener(told: string[], name: string) {
  return {
    progress: (share: number) => void told.push(`${name} ${share}`),
    done: (result: Outcome<Band>) => void told.push(`${name} ${result.ok ? 'done' : result.reason.key}`),
    fail: (message: string) => void told.push(`${name} failed: ${message}`),
  };
}

function* three(): Generator<number, Outcome<Band>> {
  yield 0.25;
  yield 0.5;
  yield 0.75;
  return success({} as Band);
}

describe('long work of the engine', () => {
  it('tells its progress piece by piece, each in a turn of its own', () => {
    const told: string[] = [];
    const { later, one, all } = queue();
    createBandJob(three, later).start(startDesign, listener(told, 'a'));
    expect(told).toEqual([]);
    one();
    expect(told).toEqual(['a 0.25']);
    all();
    expect(told).toEqual(['a 0.25', 'a 0.5', 'a 0.75', 'a done']);
  });

  it('lets a newer design win: the older one is told that it was cancelled and works no further', () => {
    const told: string[] = [];
    const { later, one, all } = queue();
    const job = createBandJob(three, later);
    job.start(startDesign, listener(told, 'old'));
    one();
    job.start(startDesign, listener(told, 'new'));
    all();
    expect(told).toEqual(['old 0.25', 'old cancelled', 'new 0.25', 'new 0.5', 'new 0.75', 'new done']);
  });

  it('stops when told to, once', () => {
    const told: string[] = [];
    const { later, one, all, waiting } = queue();
    const job = createBandJob(three, later);
    job.start(startDesign, listener(told, 'a'));
    one();
    job.stop();
    job.stop();
    all();
    expect(told).toEqual(['a 0.25', 'a cancelled']);
    expect(waiting).toEqual([]);
  });

  it('passes a fault on and can work again', () => {
    const told: string[] = [];
    const { later, all } = queue();
    let broken = true;
    const job = createBandJob(function* () {
      if (broken) throw new Error('a fault');
      return yield* three();
    }, later);
    job.start(startDesign, listener(told, 'a'));
    all();
    broken = false;
    job.start(startDesign, listener(told, 'b'));
    all();
    expect(told.slice(0, 2)).toEqual(['a failed: a fault', 'b 0.25']);
  });

  it('computes a real band in pieces', () => {
    const told: string[] = [];
    const { later, all } = queue();
    createBandJob((design) => bandSteps(design, { samples: 32 }), later).start(
      startDesign,
      listener(told, 'a'),
    );
    all();
    expect(told).toEqual(['a 0.5', 'a 1', 'a done']);
  });
});
