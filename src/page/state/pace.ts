import { type Accessor, createContext, createSignal, useContext } from 'solid-js';

/** Work that a reader does not wait for: stations below the screen, entries that are folded away, plots out of sight. */
export interface Pace {
  /** Does the work in a free moment, after what was handed in before it. */
  readonly later: (work: () => void) => void;
  /** Does it after all of that: what stands unseen until it is asked for, and is made at once when it is. */
  readonly last: (work: () => void) => void;
  /** Whether nothing is left to do but what comes last. */
  readonly idle: Accessor<boolean>;
  /** Does all that is left now: paper shows the whole sheet. */
  readonly flush: () => void;
}

/** Where nobody waits, as in most tests, nothing is put off. */
export const atOncePace: Pace = {
  later: (work) => work(),
  last: (work) => work(),
  idle: () => true,
  flush: () => {},
};

const PaceContext = createContext<Pace>(atOncePace);
export const PaceProvider = PaceContext.Provider;

export function usePace(): Pace {
  return useContext(PaceContext);
}

/** Calls back in a free moment with a way to ask how long it lasts. */
export type WhenFree = (work: (msLeft: () => number) => void) => void;

/** Keys, pointer and paint have their turn after so long at the latest, ms; one piece may take longer. */
const longestTurn = 12;

/** A piece is begun only where this much of the moment is left, ms. */
const shortest = 6;

/**
 * The next turn of the browser's loop: keys and paint go before it. Not its idle moments: a slow machine has none for
 * seconds while the page comes.
 */
export const nextFreeTurn: WhenFree = (work) => {
  setTimeout(() => {
    const end = performance.now() + longestTurn;
    work(() => end - performance.now());
  });
};

/** One piece a turn, more where the moment lasts; keys and pointer come between. */
export function createPace(whenFree: WhenFree = nextFreeTurn): Pace {
  const [idle, setIdle] = createSignal(true);
  const waiting: (() => void)[] = [];
  const unseen: (() => void)[] = [];
  let asked = false;
  const isLeft = () => waiting.length + unseen.length > 0;
  const doNext = () => (waiting.shift() ?? unseen.shift())?.();

  function ask(): void {
    if (asked) return;
    asked = true;
    whenFree((msLeft) => {
      asked = false;
      try {
        do doNext();
        while (isLeft() && msLeft() > shortest);
      } finally {
        // What fails is told by the browser; the rest still has its turn.
        if (waiting.length === 0) setIdle(true);
        if (isLeft()) ask();
      }
    });
  }

  return {
    idle,
    later(work) {
      waiting.push(work);
      setIdle(false);
      ask();
    },
    last(work) {
      unseen.push(work);
      ask();
    },
    flush() {
      while (isLeft()) doNext();
      setIdle(true);
    },
  };
}
