import { type Accessor, batch, createEffect, createSignal, on, onCleanup } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import {
  type RatingCurve,
  type Service,
  type Solution,
  type Sweep,
  services,
  type WarmUp,
} from '../../../shared/solution.ts';

/** What the page asks of the engine. */
export interface Engine {
  readonly solve: (design: Design) => Solution;
  readonly sweep: (design: Design, service: Service) => Outcome<Sweep>;
  readonly warmUp: (design: Design, service: Service) => Outcome<WarmUp>;
  readonly ratingCurve: (design: Design) => Outcome<RatingCurve>;
}

/** The curves behind the plots; they follow the figures a few frames later. */
export interface Curves {
  readonly sweeps: Readonly<Record<Service, Outcome<Sweep>>>;
  readonly warmUps: Readonly<Record<Service, Outcome<WarmUp>>>;
  readonly rating: Outcome<RatingCurve>;
}

export interface Results {
  readonly solution: Accessor<Solution | undefined>;
  /** The design the shown figures belong to; behind the edited one while a frame is pending. */
  readonly solved: Accessor<Design | undefined>;
  readonly curves: Accessor<Curves | undefined>;
  /** A fault of the sheet itself, in words; the last figures stay. */
  readonly fault: Accessor<string | null>;
}

/** Calls back in a later frame; returns a way to take it back. */
export type Schedule = (work: () => void) => () => void;

export const nextFrame: Schedule = (work) => {
  const id = requestAnimationFrame(work);
  return () => cancelAnimationFrame(id);
};

/**
 * Follows the design: all edits of a frame together give new figures in the next one. The curves come piece by
 * piece, one a frame, so that typing is never held up; a new edit drops the pieces not yet computed.
 */
export function createResults(
  design: Accessor<Design>,
  engine: Engine,
  schedule: Schedule = nextFrame,
): Results {
  const [solution, setSolution] = createSignal<Solution>();
  const [curves, setCurves] = createSignal<Curves>();
  const [solved, setSolved] = createSignal<Design>();
  const [fault, setFault] = createSignal<string | null>(null);
  let cancel = () => {};

  function inNextFrame(work: () => void): void {
    cancel = schedule(() => {
      try {
        work();
      } catch (error) {
        setFault(error instanceof Error ? error.message : String(error));
      }
    });
  }

  function computeFigures(current: Design): void {
    const found = engine.solve(current);
    batch(() => {
      setSolution(found);
      setSolved(current);
      setFault(null);
    });
    inNextFrame(() => computePieces(piecesOf(engine, current), {}));
  }

  function computePieces(pieces: readonly Piece[], found: Partial<Record<string, unknown>>): void {
    const [piece, ...rest] = pieces;
    if (piece === undefined) {
      setCurves(assemble(found));
      return;
    }
    const more = { ...found, [piece.key]: piece.compute() };
    inNextFrame(() => computePieces(rest, more));
  }

  createEffect(
    on(design, (current) => {
      cancel();
      inNextFrame(() => computeFigures(current));
    }),
  );
  onCleanup(() => cancel());
  return { solution, solved, curves, fault };
}

interface Piece {
  readonly key: string;
  readonly compute: () => unknown;
}

function piecesOf(engine: Engine, design: Design): readonly Piece[] {
  return [
    ...services.map((service) => ({ key: `sweep.${service}`, compute: () => engine.sweep(design, service) })),
    ...services.map((service) => ({
      key: `warmUp.${service}`,
      compute: () => engine.warmUp(design, service),
    })),
    { key: 'rating', compute: () => engine.ratingCurve(design) },
  ];
}

function assemble(found: Partial<Record<string, unknown>>): Curves {
  const each = (kind: string) =>
    Object.fromEntries(services.map((service) => [service, found[`${kind}.${service}`]]));
  return {
    sweeps: each('sweep') as Curves['sweeps'],
    warmUps: each('warmUp') as Curves['warmUps'],
    rating: found.rating as Curves['rating'],
  };
}
