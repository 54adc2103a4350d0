import { type Accessor, createContext, createSignal, useContext } from 'solid-js';

/** Work that a reader does not wait for: stations below the screen, entries that are folded away, plots out of sight. */
export interface Pace {
  /** Does the work in a free moment, after what was handed in before it. */
  readonly later: (work: () => void) => void;
  /** The same once what stands now has been painted: a reader sees it, and can use it, before more is made. */
  readonly afterPaint: (work: () => void) => void;
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
  afterPaint: (work) => work(),
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

/** Calls back once what stands now has been painted. */
export type WhenPainted = (work: () => void) => void;

/** A page that is hidden paints nothing, and its work goes on after so long, ms. */
const longestFrame = 300;

/** In the turn after the next frame. */
export const nextPaint: WhenPainted = (work) => {
  let done = false;
  const once = () => {
    if (!done) work();
    done = true;
  };
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, longestFrame);
};

/** One piece a turn, more where the moment lasts; keys and pointer come between. */
export function createPace(whenFree: WhenFree = nextFreeTurn, whenPainted: WhenPainted = nextPaint): Pace {
  const [idle, setIdle] = createSignal(true);
  const unpainted = new Set<() => void>();
  const waiting: (() => void)[] = [];
  const unseen: (() => void)[] = [];
  let asked = false;
  // What nobody sees waits for the paint as well.
  const isLeft = () => waiting.length > 0 || (unpainted.size === 0 && unseen.length > 0);
  const isBusy = () => waiting.length + unpainted.size > 0;
  const doNext = () => (waiting.shift() ?? unseen.shift())?.();

  function ask(): void {
    if (asked) return;
    asked = true;
    whenFree((msLeft) => {
      asked = false;
      try {
        if (isLeft()) doNext();
        while (isLeft() && msLeft() > shortest) doNext();
      } finally {
        // What fails is told by the browser; the rest still has its turn.
        setIdle(!isBusy());
        if (isLeft()) ask();
      }
    });
  }

  function later(work: () => void): void {
    waiting.push(work);
    setIdle(false);
    ask();
  }

  return {
    idle,
    later,
    afterPaint(work) {
      const next = () => {
        if (unpainted.delete(next)) later(work);
      };
      unpainted.add(next);
      setIdle(false);
      whenPainted(next);
    },
    last(work) {
      unseen.push(work);
      ask();
    },
    flush() {
      while (isBusy() || isLeft()) {
        for (const next of [...unpainted]) next();
        doNext();
      }
      setIdle(true);
    },
  };
}
