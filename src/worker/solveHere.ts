import type { Design } from '../../shared/design/schema.ts';
import type { Solution } from '../../shared/solution.ts';

type Solve = (design: Design) => Solution;

/** An engine in the page's own thread. */
export interface SolveHere {
  /** The figures at once, or undefined while the worker is the better one to ask. */
  readonly solve: (design: Design) => Solution | undefined;
  /** Practises in free moments on the design as it is then, until this engine can be used. */
  readonly warmUp: (design: () => Design) => void;
}

export interface SolveHereParts {
  readonly load: () => Promise<Solve>;
  /** Calls back in a moment in which nobody waits for the page. */
  readonly whenFree: (work: () => void) => void;
  readonly now: () => number;
}

/** A browser makes code faster as it runs; after about so many turns it stays as it is. */
const mostTurns = 80;

/** The page's thread may be busy with one design for so long, ms; asking the worker costs a frame more, about 16. */
const fastEnough = 12;

/** So many quick turns in a row show that the code has become fast. */
const quickTurns = 16;

/** Other work of the machine may slow one turn down; so many in a row are slow by themselves. */
const slowTurns = 3;

/**
 * Solves in the page itself, so that an edit and what follows from it are painted in one frame instead of two. That is
 * done only once the code has become fast, and given up where it is slow: typing never waits for the engine.
 */
export function createSolveHere({ load, whenFree, now }: SolveHereParts): SolveHere {
  let practised: Solve | undefined;
  let slow = 0;

  /** How long one design takes, ms. */
  function time(work: () => void): number {
    const began = now();
    work();
    return now() - began;
  }

  function practise(solve: Solve, design: () => Design, turn: number, quick: number): void {
    if (turn === mostTurns) return;
    whenFree(() => {
      const took = time(() => solve(turned(design(), turn)));
      const inRow = took < fastEnough ? quick + 1 : 0;
      if (inRow < quickTurns) practise(solve, design, turn + 1, inRow);
      else practised = solve;
    });
  }

  return {
    solve(design) {
      const engine = practised;
      if (!engine) return undefined;
      let found: Solution | undefined;
      const took = time(() => {
        found = engine(design);
      });
      slow = took < fastEnough ? 0 : slow + 1;
      if (slow === slowTurns) practised = undefined;
      return found;
    },
    warmUp(design) {
      whenFree(() => {
        load().then(
          (solve) => practise(solve, design, 0, 0),
          // Without it the worker goes on answering.
          () => {},
        );
      });
    },
  };
}

/** Another design at each turn: the engine keeps what an edit does not touch, and would have nothing to practise on. */
function turned(design: Design, turn: number): Design {
  const { amplifier, sink, surroundings } = design;
  const bit = 1e-3 * (turn + 1);
  const edits: readonly Design[] = [
    { ...design, amplifier: { ...amplifier, pep: amplifier.pep * (1 + bit) } },
    { ...design, sink: { ...sink, length: sink.length * (1 + bit) } },
    { ...design, surroundings: { ...surroundings, ambient: surroundings.ambient + bit } },
  ];
  return edits[turn % edits.length]!;
}

/** A machine without free moments for so long is too busy for this to matter, ms. */
const longestWait = 10_000;

/** The engine's code as the page fetches it, in the moments that the browser calls free. */
export const usualParts: SolveHereParts = {
  load: async () => (await import('../engine/index.ts')).solve,
  whenFree: (work) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(work, { timeout: longestWait });
    else setTimeout(work, 50);
  },
  now: () => performance.now(),
};
