import partTable from '../../../reference-data/pathParts.json';
import type { FuseKind } from '../../../shared/design/supplyChoices.ts';
import { type Conductor, loopResistance } from './conductor.ts';
import { agedFactor, type ConnectorClass, connectorFigures } from './connector.ts';
import { fuseResistance } from './fuse.ts';

/** One thing the current passes on its way from the source and back. */
export type PathElement =
  | {
      readonly kind: 'wire';
      readonly conductor: Conductor;
      readonly length: number;
      readonly temperature: number;
    }
  | { readonly kind: 'fuse'; readonly fuse: FuseKind; readonly rating: number }
  | {
      readonly kind: 'connector';
      readonly connector: ConnectorClass;
      readonly poles: number;
      readonly aged: boolean;
    }
  | { readonly kind: 'part'; readonly part: PathPart; readonly count: number }
  | { readonly kind: 'resistance'; readonly name: string; readonly resistance: number }
  | { readonly kind: 'diode'; readonly drop: number; readonly resistance: number };

export type PathPart = keyof typeof partTable.parts;

export interface PathStep {
  readonly name: string;
  /** Ω */
  readonly resistance: number;
  /** Fixed drop, V. */
  readonly drop: number;
}

export interface PathSum {
  readonly steps: readonly PathStep[];
  /** Ω */
  readonly resistance: number;
  /** V */
  readonly seriesDrop: number;
}

/** Used for kinds of fuse without a figure: drop of about 0.1 V at the rating, from memory. */
const usualFuseDrop = 0.1;

/**
 * Sums a path element by element: resistance in ohms and the fixed drop of diodes apart.
 *
 * Resistances of small parts are the upper ends of their usual ranges, partly from memory; replace them by measured
 * ones. Never fails.
 */
export function sumPath(elements: readonly PathElement[]): PathSum {
  const steps = elements.map(pathStep);
  let resistance = 0;
  let seriesDrop = 0;
  for (const step of steps) {
    resistance += step.resistance;
    seriesDrop += step.drop;
  }
  return { steps, resistance, seriesDrop };
}

/** Heat in each step at a current, W: I² R + I V. */
export function pathHeat(sum: PathSum, current: number): readonly number[] {
  return sum.steps.map((step) => current * current * step.resistance + current * step.drop);
}

/** Voltage lost in the whole path at a current, V. */
export function pathDrop(sum: PathSum, current: number): number {
  return current * sum.resistance + (current > 0 ? sum.seriesDrop : 0);
}

function pathStep(element: PathElement): PathStep {
  switch (element.kind) {
    case 'wire':
      return {
        name: `${element.conductor.size.replace('mm2', 'mm²')}, there and back`,
        resistance: loopResistance(element.conductor, element.length, element.temperature),
        drop: 0,
      };
    case 'fuse':
      return {
        name: `${element.rating} A fuse`,
        resistance: fuseResistance(element.fuse, element.rating) ?? usualFuseDrop / element.rating,
        drop: 0,
      };
    case 'connector': {
      const figures = connectorFigures(element.connector);
      const factor = element.aged ? agedFactor : 1;
      return { name: figures.name, resistance: element.poles * figures.resistance * factor, drop: 0 };
    }
    case 'part': {
      const part = partTable.parts[element.part];
      return { name: part.name, resistance: element.count * part.resistance, drop: 0 };
    }
    case 'resistance':
      return { name: element.name, resistance: element.resistance, drop: 0 };
    case 'diode':
      return { name: 'series diode', resistance: element.resistance, drop: element.drop };
  }
}
