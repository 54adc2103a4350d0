import { type Accessor, batch, createComputed, createSignal, on, onCleanup, untrack } from 'solid-js';
import type { Band } from '../../../shared/band.ts';
import type { BenchReport } from '../../../shared/bench.ts';
import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import {
  type AmplifierCurves,
  type PlateMap,
  type RatingCurve,
  type Service,
  type Solution,
  type SuggestedPlaces,
  type Sweep,
  services,
  type WarmUp,
} from '../../../shared/solution.ts';
import type { SupplyCurves } from '../../../shared/supplyCurves.ts';
import { keepSame } from './keepSame.ts';

/** An answer that is there or will be: the engine computes beside the page, in tests within it. */
export type Soon<T> = T | Promise<T>;

/** What the page asks of the engine. */
export interface Engine {
  readonly solve: (design: Design) => Soon<Solution>;
  readonly sweep: (design: Design, service: Service) => Soon<Outcome<Sweep>>;
  readonly warmUp: (design: Design, service: Service) => Soon<Outcome<WarmUp>>;
  readonly ratingCurve: (design: Design) => Soon<Outcome<RatingCurve>>;
  readonly plateMap: (design: Design, service: Service) => Soon<Outcome<PlateMap>>;
  readonly suggestedPlaces: (design: Design, service: Service) => Soon<Outcome<SuggestedPlaces>>;
  readonly amplifierCurves: (design: Design) => Soon<AmplifierCurves>;
  readonly supplyCurves: (design: Design) => Soon<SupplyCurves>;
  /** What the bench runs say; asked for only where there are some. */
  readonly benchReportOf: (design: Design) => Soon<Outcome<BenchReport>>;
  /** How sure the figures are: long work, with news of its progress. A newer one or `stopBand` cancels it. */
  readonly band: (design: Design, progress: (share: number) => void) => Soon<Outcome<Band>>;
  readonly stopBand: () => void;
}

/** The curves behind the plots; they follow the figures a few frames later. */
export interface Curves {
  readonly sweeps: Readonly<Record<Service, Outcome<Sweep>>>;
  readonly warmUps: Readonly<Record<Service, Outcome<WarmUp>>>;
  readonly rating: Outcome<RatingCurve>;
  readonly amplifier: AmplifierCurves;
  readonly supply: SupplyCurves;
  /** null without bench runs. */
  readonly bench: Outcome<BenchReport> | null;
}

export interface Results {
  readonly solution: Accessor<Solution | undefined>;
  /** The design the shown figures belong to; behind the edited one while a frame is pending. */
  readonly solved: Accessor<Design | undefined>;
  readonly curves: Accessor<Curves | undefined>;
  /** For what only one part of the page asks, such as the map of the plate. */
  readonly engine: Engine;
  /** The band of the shown figures; undefined while they are nominal. */
  readonly band: Accessor<Band | undefined>;
  /** Share of the band that is done, null while none is being computed. */
  readonly bandProgress: Accessor<number | null>;
  /** A fault of the sheet itself, in words; the last figures stay. */
  readonly fault: Accessor<string | null>;
}

/** Edits that rest this long are worth the long work, ms. */
const restBeforeBand = 300;

/** News of the band's progress is rounded down to this: each one paints the page, and nobody reads more of them. */
const progressStep = 0.5;

/** Calls back a little later; returns a way to take it back. */
export type Schedule = (work: () => void) => () => void;

/** After what the page has to do first: keys, pointer, paint. */
export const nextTurn: Schedule = (work) => {
  const id = setTimeout(work);
  return () => clearTimeout(id);
};

/** A page that is hidden paints nothing, a busy one has no free moment; the curves come after so long, ms. */
const longestFrame = 100;

/** In a free moment after the next frame: what has changed on the page is painted before more is begun. */
export const afterFrame: Schedule = (work) => {
  let late: ReturnType<typeof setTimeout> | undefined;
  let idle: number | undefined;
  const go = () => {
    stop();
    work();
  };
  const frame = requestAnimationFrame(() => {
    if (typeof requestIdleCallback === 'function') idle = requestIdleCallback(go);
    else {
      clearTimeout(late);
      late = setTimeout(go);
    }
  });
  late = setTimeout(go, longestFrame);
  function stop(): void {
    cancelAnimationFrame(frame);
    clearTimeout(late);
    if (idle !== undefined) cancelIdleCallback(idle);
  }
  return stop;
};

/**
 * Follows the design. The figures are asked for at once, so that they are computed while the page shows the edit;
 * edits that come faster than answers wait for one another, the newest wins. The curves come piece by piece after the
 * figures have been painted; a new edit drops what is not yet computed, and an answer to an older design is thrown
 * away. The first curves of all are asked for at once: the page is still making its stations then.
 */
export function createResults(
  design: Accessor<Design>,
  engine: Engine,
  schedule: Schedule = nextTurn,
  painted: Schedule = schedule,
): Results {
  const [solution, setSolution] = createSignal<Solution>();
  const [curves, setCurves] = createSignal<Curves>();
  const [solved, setSolved] = createSignal<Design>();
  const [fault, setFault] = createSignal<string | null>(null);
  const [band, setBand] = createSignal<Band>();
  const [bandProgress, setBandProgress] = createSignal<number | null>(null);
  let cancel = () => {};
  let latest = 0;
  let solving = false;
  let waiting: Design | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;

  function blame(error: unknown): void {
    setFault(error instanceof Error ? error.message : String(error));
  }

  /** Runs work and hands its answer on, unless a newer design has come in between. */
  function answer<T>(
    turn: number,
    work: () => Soon<T>,
    use: (found: T) => void,
    after: () => void = () => {},
  ): void {
    const take = (found: T) => {
      if (turn === latest) use(found);
    };
    try {
      const found = work();
      if (found instanceof Promise) {
        found.then(take).catch(blame).finally(after);
        return;
      }
      take(found);
    } catch (error) {
      blame(error);
    }
    after();
  }

  function computeFigures(current: Design): void {
    latest += 1;
    if (solving) {
      waiting = current;
      return;
    }
    solving = true;
    const turn = latest;
    answer(
      turn,
      () => engine.solve(current),
      (found) => {
        batch(() => {
          setSolution((before) => keepSame(before, found));
          setSolved(current);
          setBand(undefined);
          setFault(null);
        });
        const whenToBegin = untrack(curves) === undefined ? schedule : painted;
        computePieces(turn, current, piecesOf(engine, current), {}, whenToBegin);
      },
      () => {
        solving = false;
        const next = waiting;
        waiting = undefined;
        if (next) computeFigures(next);
      },
    );
  }

  /** How sure the figures are: after everything else, when typing rests. */
  function computeBand(turn: number, current: Design): void {
    const progress = (share: number) =>
      turn === latest && setBandProgress(Math.floor(share / progressStep) * progressStep);
    progress(0);
    answer(
      turn,
      () => engine.band(current, progress),
      (found) =>
        batch(() => {
          setBandProgress(null);
          if (found.ok) setBand(found.value);
        }),
    );
  }

  function dropBand(): void {
    clearTimeout(resting);
    if (untrack(bandProgress) === null) return;
    engine.stopBand();
    setBandProgress(null);
  }

  function computePieces(
    turn: number,
    current: Design,
    pieces: readonly Piece[],
    found: Partial<Record<string, unknown>>,
    whenToBegin: Schedule = schedule,
  ): void {
    const [piece, ...rest] = pieces;
    if (piece === undefined) {
      setCurves((before) => keepSame(before, assemble(found)));
      resting = setTimeout(() => turn === latest && computeBand(turn, current), restBeforeBand);
      return;
    }
    cancel = whenToBegin(() =>
      answer(turn, piece.compute, (result) =>
        computePieces(turn, current, rest, { ...found, [piece.key]: result }),
      ),
    );
  }

  // Before anything on the page follows the edit, so that the answer is on its way meanwhile.
  createComputed(
    on(design, (current) => {
      cancel();
      dropBand();
      computeFigures(current);
    }),
  );
  onCleanup(() => {
    latest += 1;
    waiting = undefined;
    cancel();
    dropBand();
  });
  return { solution, solved, curves, engine, band, bandProgress, fault };
}

interface Piece {
  readonly key: string;
  readonly compute: () => Soon<unknown>;
}

function piecesOf(engine: Engine, design: Design): readonly Piece[] {
  return [
    ...services.map((service) => ({ key: `sweep.${service}`, compute: () => engine.sweep(design, service) })),
    ...services.map((service) => ({
      key: `warmUp.${service}`,
      compute: () => engine.warmUp(design, service),
    })),
    { key: 'rating', compute: () => engine.ratingCurve(design) },
    { key: 'amplifier', compute: () => engine.amplifierCurves(design) },
    { key: 'supply', compute: () => engine.supplyCurves(design) },
    { key: 'bench', compute: () => (design.bench.length > 0 ? engine.benchReportOf(design) : null) },
  ];
}

function assemble(found: Partial<Record<string, unknown>>): Curves {
  const each = (kind: string) =>
    Object.fromEntries(services.map((service) => [service, found[`${kind}.${service}`]]));
  return {
    sweeps: each('sweep') as Curves['sweeps'],
    warmUps: each('warmUp') as Curves['warmUps'],
    rating: found.rating as Curves['rating'],
    amplifier: found.amplifier as Curves['amplifier'],
    supply: found.supply as Curves['supply'],
    bench: found.bench as Curves['bench'],
  };
}
