import { type Accessor, createContext, createSignal, useContext } from 'solid-js';

/** Work that a reader does not wait for: stations below the screen, entries that are folded away, plots out of sight. */
export interface Pace {
  /** Does the work in an idle moment, after what was handed in before it. */
  readonly later: (work: () => void) => void;
  /** Whether nothing is left to do. */
  readonly idle: Accessor<boolean>;
  /** Does all that is left now: paper shows the whole sheet. */
  readonly flush: () => void;
}

/** Where nobody waits, as in most tests, nothing is put off. */
export const atOncePace: Pace = { later: (work) => work(), idle: () => true, flush: () => {} };

const PaceContext = createContext<Pace>(atOncePace);
export const PaceProvider = PaceContext.Provider;

export function usePace(): Pace {
  return useContext(PaceContext);
}

/** Calls back in an idle moment with a way to ask how long it lasts. */
export type WhenIdle = (work: (msLeft: () => number) => void) => void;

/** An idle moment comes at last, however busy the page is, ms. */
const longestWait = 500;

/** A piece is begun only where this much of the moment is left, ms. */
const shortest = 6;

/** The browser's own idle moments; where it knows none, the next turn of its loop. */
export const browserIdle: WhenIdle = (work) => {
  if (typeof requestIdleCallback === 'undefined') setTimeout(() => work(() => 0), 1);
  else requestIdleCallback((moment) => work(() => moment.timeRemaining()), { timeout: longestWait });
};

/** One piece an idle moment, more where the moment lasts; keys and pointer come between. */
export function createPace(whenIdle: WhenIdle = browserIdle): Pace {
  const [idle, setIdle] = createSignal(true);
  const waiting: (() => void)[] = [];
  let asked = false;

  function ask(): void {
    if (asked) return;
    asked = true;
    whenIdle((msLeft) => {
      asked = false;
      try {
        do waiting.shift()?.();
        while (waiting.length > 0 && msLeft() > shortest);
      } finally {
        // What fails is told by the browser; the rest still has its turn.
        if (waiting.length > 0) ask();
        else setIdle(true);
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
    flush() {
      while (waiting.length > 0) waiting.shift()?.();
      setIdle(true);
    },
  };
}
