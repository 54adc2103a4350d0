import type { Edge, Measure } from '../../../../shared/answers.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../../shared/outcome.ts';
import { type Service, services } from '../../../../shared/solution.ts';
import { entryFor } from '../../catalogue/index.ts';
import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { writeDuration, writeQuantity } from '../../quantity/write.ts';
import { solve } from '../solve.ts';
import { atEdge, type Doubt, holdAtEdge, quantityEdge, shifted, touchAtEdge } from './edge.ts';
import { noSteadyState, quickMargin } from './quick.ts';

/** A found quantity made ready to be asked of many designs. */
export interface Gauge extends Measure {
  /** More of it is good: safe duty, hold time, margin, voltages that should not sag. */
  readonly moreIsBetter: boolean;
  /** The quantity of a design, SI; null where it cannot be computed. */
  readonly value: (design: Design) => number | null;
  /** The quantity as text. */
  readonly write: (value: number) => string;
}

const better = new Set([
  'safeDuty',
  'holdTime',
  'junctionMargin',
  'pep',
  'drainEfficiencyPep',
  'converterEfficiencyPep',
  'railVoltagePep',
  'inputVoltagePep',
  'terminalVoltagePep',
  'wireAmpacity',
  'greatestLoadPower',
  'allowedHeat',
  'batteryTime',
  'runTime',
  'runTimeCautious',
  'ratingHeat',
  'sinkHeatCapacity',
  'swingLimit',
]);

/** Names of the services where the catalogue has none of its own; the page says the same. */
const serviceLabels: Readonly<Record<Service, string>> = { ssb: 'SSB', cw: 'CW', keyDown: 'key-down' };

function serviceOf(key: string): Service | null {
  const [head] = key.split('.');
  return services.find((service) => service === head) ?? null;
}

function labelOf(key: string, label: string): string {
  const service = serviceOf(key);
  return service === null ? label : `${label} (${serviceLabels[service]})`;
}

function writer(key: string, dimension: Measure['dimension']): Gauge['write'] {
  if (dimension === 'time') return (value) => writeDuration(value);
  if (dimension === 'share') return (value) => writeQuantity(value, 'share', '%');
  if (key.endsWith('Temperature') || dimension === 'temperature') {
    return (value) => writeQuantity(value, dimension, undefined, 4);
  }
  return (value) => writeQuantity(value, dimension);
}

/**
 * A gauge for a found quantity by its catalogue key, such as "keyDown.safeDuty".
 *
 * doubt: every figure is read at its pessimistic edge where there is a doubt of it (`figureWords`). Fails with
 * `noSuchQuantity` and, for something the builder enters, `quantityIsGiven`.
 */
export function gaugeFor(key: string, doubt: Doubt): Outcome<Gauge> {
  const entry = entryFor(key);
  const service = serviceOf(key);
  const name = service === null ? key : key.slice(service.length + 1);
  if (!entry || (service === null && key.includes('.'))) {
    return failure('noSuchQuantity', `There is no quantity “${key}”.`);
  }
  if (entry.given) {
    return failure(
      'quantityIsGiven',
      `“${entry.label}” is entered, not found: take a found quantity as the target, or make it the unknown.`,
    );
  }
  return success({
    quantity: key,
    label: labelOf(key, entry.label),
    dimension: entry.dimension,
    moreIsBetter: better.has(name),
    value: readerOf(key, name, service, doubt),
    write: writer(name, entry.dimension),
  });
}

function readerOf(key: string, name: string, service: Service | null, doubt: Doubt): Gauge['value'] {
  const nominal = (design: Design) => solve(design).values[key] ?? null;
  if (name === 'touchTemperature') return (design) => touchAtEdge(design, doubt);
  if (service === null) return otherAtEdge(key, name, doubt);
  switch (name) {
    case 'junctionMargin':
      return (design) => marginAt(design, service, doubt);
    case 'junctionPeak':
      return (design) => {
        const junction = nominal(design);
        return junction === null ? null : atEdge(junction, design.surroundings.ambient, service, doubt);
      };
    case 'safeDuty':
      if (doubt.junction[service] === undefined) return nominal;
      return (design) => carefulDuty(design, service, nominal(design), doubt);
    case 'holdTime':
      return (design) => {
        const time = holdAtEdge(design, service, doubt);
        return time === null || Number.isFinite(time) ? time : null;
      };
    default:
      return otherAtEdge(key, name, doubt);
  }
}

/** Any other figure, moved as far as its edge lies from it in the design the doubt belongs to. */
function otherAtEdge(key: string, name: string, doubt: Doubt): Gauge['value'] {
  const { low, high } = quantityEdge(key, doubt);
  const factor = better.has(name) ? low : high;
  return (design) => {
    const nominal = solve(design).values[key];
    return nominal === undefined ? null : shifted(key, nominal, design.surroundings.ambient, factor);
  };
}

/** Quantities with a way of their own to the edge. */
const junctionQuantities = new Set(['junctionMargin', 'junctionPeak', 'safeDuty', 'holdTime']);

/** Which figure of a quantity counts, and why, in a sentence. */
export function figureWords(key: string, edge: Edge, doubt: Doubt): string {
  if (edge === 'nominal') return 'Judged by the nominal figures.';
  const label = labelOf(key, entryFor(key)?.label ?? key);
  const service = serviceOf(key);
  const name = service === null ? key : key.slice(service.length + 1);
  if (name === 'touchTemperature') {
    return `“${label}” is the pessimistic edge of the metal, or 5\u202fK or 15\u202f% of the rise above the nominal figure where that is hotter.`;
  }
  const own = service !== null && junctionQuantities.has(name) && doubt.from !== null;
  const { source } = own ? { source: 'band' as const } : quantityEdge(key, doubt);
  if (source === 'band') return `“${label}” is judged at the pessimistic edge of its band.`;
  if (source === 'load') {
    const converter = doubt.from?.design.converter.kind === 'module' ? ' and of the converter' : '';
    return `“${label}” is judged with the efficiency of the final${converter} at the pessimistic edge.`;
  }
  return `“${label}” is the nominal figure: the sheet knows no doubt of it.`;
}

/** A duty is told in whole per cent; this is well below. */
const dutyTolerance = 1e-4;

/** Largest duty at which the pessimistic edge keeps its limit; never more than the nominal one, which other limits may end. */
function carefulDuty(design: Design, service: Service, nominal: number | null, doubt: Doubt): number | null {
  if (nominal === null || nominal === 0) return nominal;
  const margin = (share: number) => quickMargin(design, service, doubt, share).margin ?? noSteadyState;
  if (margin(nominal) >= 0) return nominal;
  const root = bracketedRoot(margin, 0, nominal, { tolerance: dutyTolerance });
  return root.ok ? root.value.root : 0;
}

/** Margin of a service at a duty (its own if not given), K; null where there is none. */
export function marginAt(design: Design, service: Service, doubt: Doubt, share?: number): number | null {
  const { margin } = quickMargin(design, service, doubt, share);
  return margin === noSteadyState ? null : margin;
}

/** How far a design is from a target: 0 where it is met, positive where it is better than asked. */
export type Excess = (design: Design) => number | null;

/**
 * A function of the design that crosses zero where the quantity meets its target, and does so with a slope.
 *
 * A safe duty is asked as the margin of the junction at that duty, since the duty itself stands still at 0 and 100 %; a
 * hold time by its inverse, which is 0 where the limit is never met.
 */
export function excessOver(gauge: Gauge, target: number, doubt: Doubt): Excess {
  const service = serviceOf(gauge.quantity);
  const name = gauge.quantity.split('.').at(-1);
  if (service !== null && name === 'safeDuty') {
    return (design) => {
      const share = Math.min(1, Math.max(0, target));
      return quickMargin(design, service, doubt, share).margin;
    };
  }
  if (service !== null && name === 'holdTime') {
    return (design) => {
      const time = holdAtEdge(design, service, doubt);
      return time === null ? null : 1 / target - 1 / Math.max(time, 1e-3);
    };
  }
  const sign = gauge.moreIsBetter ? 1 : -1;
  return (design) => {
    const value = gauge.value(design);
    return value === null ? null : sign * (value - target);
  };
}

/** The share of the target within which a found value counts as meeting it. */
export const targetTolerance = 2e-3;

/** Sizes by which it is meant, where the target itself is none: temperatures have no natural zero, small shares are read in points. */
const kelvinScale = 50;
const leastShareScale = 0.1;

function scaleOf({ dimension }: Gauge, target: number): number {
  if (dimension === 'temperature' || dimension === 'temperatureDifference') return kelvinScale;
  return dimension === 'share' ? Math.max(Math.abs(target), leastShareScale) : Math.abs(target);
}

/** Whether a quantity meets its target. */
export function meets(gauge: Gauge, reached: number, target: number): boolean {
  return Math.abs(reached - target) <= Math.max(targetTolerance * scaleOf(gauge, target), 1e-9);
}
