import { type Accessor, batch, createEffect, createSignal, on, onCleanup } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import type { RatingCurve, Service, Solution, Sweep, WarmUp } from '../../../shared/solution.ts';
import { services } from '../../../shared/solution.ts';

/** What the page asks of the engine. */
export interface Engine {
  readonly solve: (design: Design) => Solution;
  readonly sweep: (design: Design, service: Service) => Outcome<Sweep>;
  readonly warmUp: (design: Design, service: Service) => Outcome<WarmUp>;
  readonly ratingCurve: (design: Design) => Outcome<RatingCurve>;
}

/** The curves behind the plots; they follow the figures one frame later. */
export interface Curves {
  readonly sweeps: Readonly<Record<Service, Outcome<Sweep>>>;
  readonly warmUps: Readonly<Record<Service, Outcome<WarmUp>>>;
  readonly rating: Outcome<RatingCurve>;
}

export interface Results {
  readonly solution: Accessor<Solution | undefined>;
  readonly curves: Accessor<Curves | undefined>;
  /** The design the shown figures belong to; behind `design` while a frame is pending. */
  readonly solved: Accessor<Design | undefined>;
  /** A fault of the sheet itself, in words; the last figures stay. */
  readonly fault: Accessor<string | null>;
}

/** Calls back in a later frame; returns a way to take it back. */
export type Schedule = (work: () => void) => () => void;

export const nextFrame: Schedule = (work) => {
  const id = requestAnimationFrame(work);
  return () => cancelAnimationFrame(id);
};

/** Follows the design: figures in the next frame, curves in the one after, all edits of a frame together. */
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

  function guarded(work: () => void): void {
    try {
      work();
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
  }

  function computeFigures(current: Design): void {
    guarded(() => {
      const found = engine.solve(current);
      batch(() => {
        setSolution(found);
        setSolved(current);
        setFault(null);
      });
    });
    cancel = schedule(() => guarded(() => setCurves(computeCurves(engine, current))));
  }

  createEffect(
    on(design, (current) => {
      cancel();
      cancel = schedule(() => computeFigures(current));
    }),
  );
  onCleanup(() => cancel());
  return { solution, curves, solved, fault };
}

function computeCurves(engine: Engine, design: Design): Curves {
  const each = <T>(find: (service: Service) => T) =>
    Object.fromEntries(services.map((service) => [service, find(service)])) as Record<Service, T>;
  return {
    sweeps: each((service) => engine.sweep(design, service)),
    warmUps: each((service) => engine.warmUp(design, service)),
    rating: engine.ratingCurve(design),
  };
}
