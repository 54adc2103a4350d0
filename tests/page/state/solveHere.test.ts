import { describe, expect, it } from 'vitest';
import type { Design } from '../../../shared/design/schema.ts';
import { startDesign } from '../../../shared/design/start.ts';
import type { Solution } from '../../../shared/solution.ts';
import { solve } from '../../../src/engine/index.ts';
import { createSolveHere } from '../../../src/worker/solveHere.ts';

/** An engine in the page whose speed and free moments are in the test's hand. */
async function begin(
  options: { design?: () => Design; load?: () => Promise<(design: Design) => Solution> } = {},
) {
  let clock = 0;
  let takes = 100;
  const solved: Design[] = [];
  const moments: (() => void)[] = [];
  const engine = (design: Design) => {
    solved.push(design);
    clock += takes;
    return { solved: design } as unknown as Solution;
  };
  const here = createSolveHere({
    load: options.load ?? (() => Promise.resolve(engine)),
    whenFree: (work) => moments.push(work),
    now: () => clock,
  });
  here.warmUp(options.design ?? (() => startDesign));
  moments.shift()?.();
  await new Promise((done) => setTimeout(done));
  return {
    here,
    solved,
    lasting: (ms: number) => {
      takes = ms;
    },
    /** Lets so many free moments come; gives how many were wanted. */
    practise: (most: number) => {
      let turns = 0;
      for (; turns < most && moments.length > 0; turns += 1) moments.shift()?.();
      return turns;
    },
  };
}

describe('an engine in the page', () => {
  it('answers nothing before it has become fast, and the same as the worker would afterwards', async () => {
    const { here, lasting, practise } = await begin({ load: () => Promise.resolve(solve) });
    expect(here.solve(startDesign)).toBeUndefined();
    lasting(1);
    practise(1000);
    expect(here.solve(startDesign)).toEqual(solve(startDesign));
  });

  it('practises until it is fast, never twice on the same design', async () => {
    const { here, solved, lasting, practise } = await begin();
    expect(practise(20)).toBe(20);
    expect(here.solve(startDesign)).toBeUndefined();
    lasting(2);
    const more = practise(1000);
    expect(more).toBeGreaterThan(1);
    expect(more).toBeLessThan(20);
    expect(here.solve(startDesign)).toEqual({ solved: startDesign });
    expect(new Set(solved.map((design) => JSON.stringify(design))).size).toBe(solved.length);
  });

  it('practises on the design as it is by then', async () => {
    let design = startDesign;
    const { solved, practise } = await begin({ design: () => design });
    practise(1);
    design = { ...startDesign, name: 'another' };
    practise(1);
    expect(solved.map((one) => one.name)).toEqual([startDesign.name, 'another']);
  });

  it('leaves a slow machine to the worker', async () => {
    const { here, practise } = await begin();
    const turns = practise(1000);
    expect(turns).toBeLessThan(1000);
    expect(here.solve(startDesign)).toBeUndefined();
  });

  it('gives up a design that is slow, not one slow turn', async () => {
    const { here, lasting, practise } = await begin();
    lasting(1);
    practise(1000);
    const answers = (...times: number[]) =>
      times.map((ms) => {
        lasting(ms);
        return here.solve(startDesign) !== undefined;
      });
    expect(answers(50, 1, 50, 50, 1)).toEqual([true, true, true, true, true]);
    expect(answers(50, 50, 50, 1)).toEqual([true, true, true, false]);
  });

  it('leaves all to the worker where its code cannot be fetched', async () => {
    const { here, practise } = await begin({ load: () => Promise.reject(new Error('no network')) });
    expect(practise(10)).toBe(0);
    expect(here.solve(startDesign)).toBeUndefined();
  });
});
