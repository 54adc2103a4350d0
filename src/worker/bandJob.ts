import type { Band, BandOptions } from '../../shared/band.ts';
import type { Design } from '../../shared/design/schema.ts';
import { failure, type Outcome } from '../../shared/outcome.ts';

type Steps = (design: Design, options?: BandOptions) => Generator<number, Outcome<Band>>;

export interface BandListener {
  readonly progress: (share: number) => void;
  /** Called once: with the band, a reason, or the failure `cancelled`. */
  readonly done: (result: Outcome<Band>) => void;
  readonly fail: (message: string) => void;
}

export interface BandJob {
  /** Begins a band; one that is still running is cancelled: the latest design wins. */
  readonly start: (design: Design, listener: BandListener) => void;
  readonly stop: () => void;
}

/** Calls back after everything that already waits; setTimeout but in tests. */
export type Later = (work: () => void) => void;

/**
 * Runs a band in small pieces and lets other questions in between, so that an edit never waits for it.
 *
 * steps: the engine's `bandSteps`.
 */
export function createBandJob(steps: Steps, later: Later = (work) => void setTimeout(work, 0)): BandJob {
  let turn = 0;
  let running: BandListener | null = null;

  function stop(): void {
    turn += 1;
    const stopped = running;
    running = null;
    stopped?.done(failure('cancelled', 'The band was not finished.'));
  }

  function start(design: Design, listener: BandListener): void {
    stop();
    const mine = turn;
    running = listener;
    const work = steps(design);
    const advance = () => {
      if (mine !== turn) return;
      try {
        const step = work.next();
        if (!step.done) {
          listener.progress(step.value);
          later(advance);
          return;
        }
        running = null;
        listener.done(step.value);
      } catch (error) {
        running = null;
        listener.fail(error instanceof Error ? error.message : String(error));
      }
    };
    later(advance);
  }

  return { start, stop };
}
