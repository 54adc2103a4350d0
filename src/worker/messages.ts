import type { Band } from '../../shared/band.ts';
import type { BenchReport } from '../../shared/bench.ts';
import type { Dimension } from '../../shared/design/fields.ts';
import type { Design } from '../../shared/design/schema.ts';
import type { Outcome } from '../../shared/outcome.ts';
import type {
  AmplifierCurves,
  PlateMap,
  RatingCurve,
  Service,
  Solution,
  SuggestedPlaces,
  Sweep,
  WarmUp,
} from '../../shared/solution.ts';
import type { SupplyCurves } from '../../shared/supplyCurves.ts';
import type { Reading } from '../engine/quantity/read.ts';

/** Typed text the scanner could not read, for a field of this dimension in this unit. */
export interface ExpressionQuestion {
  readonly id: number;
  readonly text: string;
  readonly dimension: Dimension;
  readonly unit: string;
}

export interface ExpressionAnswer {
  readonly id: number;
  readonly outcome: Outcome<Reading>;
}

/** What can be asked of the engine, and what comes back. */
export interface EngineCalls {
  readonly solve: (design: Design) => Solution;
  readonly sweep: (design: Design, service: Service) => Outcome<Sweep>;
  readonly warmUp: (design: Design, service: Service) => Outcome<WarmUp>;
  readonly ratingCurve: (design: Design) => Outcome<RatingCurve>;
  readonly plateMap: (design: Design, service: Service) => Outcome<PlateMap>;
  readonly suggestedPlaces: (design: Design, service: Service) => Outcome<SuggestedPlaces>;
  readonly amplifierCurves: (design: Design) => AmplifierCurves;
  readonly supplyCurves: (design: Design) => SupplyCurves;
  readonly benchReportOf: (design: Design) => Outcome<BenchReport>;
}

export type EngineCall = keyof EngineCalls;

export interface EngineQuestion {
  readonly id: number;
  readonly call: EngineCall;
  readonly args: Parameters<EngineCalls[EngineCall]>;
}

/** Asks for the band of a design: long work, done in pieces. A newer one, or `stopBand`, cancels it. */
export interface BandQuestion {
  readonly id: number;
  readonly band: Design;
}

export interface StopBand {
  readonly stopBand: true;
}

export type EngineOrder = EngineQuestion | BandQuestion | StopBand;

export type EngineAnswer =
  | {
      readonly id: number;
      readonly ok: true;
      readonly result: ReturnType<EngineCalls[EngineCall]> | Outcome<Band>;
    }
  | { readonly id: number; readonly ok: false; readonly message: string }
  /** Share of the long work that is done. */
  | { readonly id: number; readonly progress: number };
