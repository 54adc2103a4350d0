import type { Band } from '../../../../shared/band.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { type Service, type Solution, services } from '../../../../shared/solution.ts';
import { entryFor } from '../../catalogue/index.ts';
import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { hottestMetal } from '../bandVerdicts.ts';
import { efficiencyAdvice, efficiencyEdges } from '../loadDoubts.ts';
import { converterDoubt, withConverter } from '../loadResponse.ts';
import { touchOf } from '../people.ts';
import { prepare } from '../prepare.ts';
import { holdTimeOf } from '../serviceCycle.ts';
import { solve } from '../solve.ts';

/** A design with the edges of its band. */
export interface Doubted {
  readonly design: Design;
  readonly edges: Band['edges'];
}

/**
 * How far the pessimistic edges of a design lie from its nominal figures, so that they can be carried along when the
 * design is changed a little: factors on the rise over the room. Nothing named means nominal.
 */
export interface Doubt {
  readonly junction: Readonly<Partial<Record<Service, number>>>;
  readonly metal: number;
  /** Where the factors come from; null when everything is nominal. */
  readonly from: Doubted | null;
}

export const noDoubt: Doubt = { junction: {}, metal: 1, from: null };

/** What the pessimistic figure of a quantity rests on. */
export type EdgeSource = 'band' | 'load' | 'none';

/** Edges over the nominal figure (of a temperature: its rise over the room), as factors. */
export interface QuantityEdge {
  readonly source: EdgeSource;
  readonly low: number;
  readonly high: number;
}

const noEdge: QuantityEdge = { source: 'none', low: 1, high: 1 };
/** An edge nearer than this share of the figure is none. */
const leastEdge = 1e-6;

/** The doubt of a design by its band. */
export function doubtFrom(design: Design, edges: Band['edges']): Doubt {
  const solution = solve(design);
  const { ambient } = design.surroundings;
  const factor = (nominal: number | null | undefined, high: number | null | undefined) =>
    nominal == null || high == null || !(nominal > ambient)
      ? null
      : Math.max(1, (high - ambient) / (nominal - ambient));
  const junction: Partial<Record<Service, number>> = {};
  for (const service of services) {
    const key = `${service}.junctionPeak`;
    const found = factor(solution.values[key], edges[key]?.high);
    if (found !== null) junction[service] = found;
  }
  return {
    junction,
    metal: factor(hottestMetal(solution), edges.metal?.high) ?? 1,
    from: { design, edges },
  };
}

/** The pessimistic edge of a junction temperature, K. */
export function atEdge(junction: number, ambient: number, service: Service, doubt: Doubt): number {
  return ambient + (junction - ambient) * (doubt.junction[service] ?? 1);
}

/** The hottest place a hand can touch and its pessimistic edge, K; null where nothing is known of it. */
export function metalAtEdge(
  design: Design,
  solution: Solution,
  doubt: Doubt,
): { readonly nominal: number; readonly edge: number } | null {
  const nominal = hottestMetal(solution);
  if (nominal === null) return null;
  const { ambient } = design.surroundings;
  return { nominal, edge: ambient + (nominal - ambient) * doubt.metal };
}

/** What a hand finds at the pessimistic edge, K. */
export function touchAtEdge(design: Design, doubt: Doubt): number | null {
  const metal = metalAtEdge(design, solve(design), doubt);
  return metal === null ? null : touchOf(design, metal.nominal, metal.edge).temperature;
}

/** How often the limit of a hold time is halved towards its edge. */
const holdTolerance = 1e-3;

/**
 * Factor on the rise of a junction at which a carrier from cold meets its limit at the edge of the band: the hold time
 * that is found with the limit lowered by it is the pessimistic one.
 */
function holdFactor(service: Service, { design, edges }: Doubted): number {
  const low = edges[`${service}.holdTime`]?.low;
  const { coupled, limits } = prepare(design);
  if (low === undefined || !Number.isFinite(low) || !(low > 0) || !coupled.ok) return 1;
  const { ambient } = design.surroundings;
  const excess = (limit: number) => {
    const time = holdTimeOf(coupled.value, service, limit);
    if (!time.ok) return Number.NaN;
    return time.value === null ? 1 / low : 1 / low - 1 / Math.max(time.value, 1e-6);
  };
  const span = limits.design - ambient;
  if (!(span > 0) || !(excess(limits.design) > 0)) return 1;
  const found = bracketedRoot(excess, ambient + 0.01 * span, limits.design, {
    tolerance: holdTolerance * span,
  });
  return found.ok ? Math.max(1, span / (found.value.root - ambient)) : 1;
}

const holdFactors = new WeakMap<Doubted, Map<Service, number>>();

/** Hold time at the pessimistic edge, s: null where there is none, Infinity where no limit is met. */
export function holdAtEdge(design: Design, service: Service, doubt: Doubt): number | null {
  const solution = solve(design);
  if (!solution.services[service].ok) return null;
  const nominal = solution.values[`${service}.holdTime`] ?? Number.POSITIVE_INFINITY;
  if (doubt.from === null || nominal === 0) return nominal;
  const known = holdFactors.get(doubt.from) ?? new Map<Service, number>();
  holdFactors.set(doubt.from, known);
  const factor = known.get(service) ?? holdFactor(service, doubt.from);
  known.set(service, factor);
  const { coupled, limits } = prepare(design);
  if (!coupled.ok) return null;
  const { ambient } = design.surroundings;
  const time = holdTimeOf(coupled.value, service, ambient + (limits.design - ambient) / factor);
  if (!time.ok) return null;
  return Math.min(nominal, time.value ?? Number.POSITIVE_INFINITY);
}

type Values = Readonly<Record<string, number>>;

/** One part of the load whose doubt moves a quantity, with the figures at both of its edges. */
export interface LoadPart {
  readonly key: 'amplifier.efficiency' | 'converter';
  readonly label: string;
  readonly advice: string;
  readonly path: string | null;
  /** Less efficient, more efficient. */
  readonly edges: readonly [Values, Values];
}

const loadParts = new WeakMap<Design, readonly LoadPart[]>();

/** The parts of the load that are not exactly known: the final's efficiency and that of a bought converter. */
export function loadPartsOf(design: Design): readonly LoadPart[] {
  const known = loadParts.get(design);
  if (known) return known;
  const edges = efficiencyEdges(design);
  const found: LoadPart[] = [
    {
      key: 'amplifier.efficiency',
      label: 'efficiency of the final',
      advice: efficiencyAdvice(design),
      path: 'amplifier.efficiency',
      edges: [solve(edges.lessEfficient).values, solve(edges.moreEfficient).values],
    },
  ];
  if (design.converter.kind === 'module') {
    found.push({
      key: 'converter',
      label: 'efficiency of the converter',
      advice: 'Measure current and voltage on both sides of the converter at full power.',
      path: null,
      edges: [
        solve(withConverter(design, -converterDoubt)).values,
        solve(withConverter(design, converterDoubt)).values,
      ],
    });
  }
  loadParts.set(design, found);
  return found;
}

/** Edges of a figure by the doubts of the load, taken together as independent. */
export function loadEdges(key: string, nominal: number, parts: readonly LoadPart[]) {
  let below = 0;
  let above = 0;
  for (const { edges } of parts) {
    const found = edges.flatMap((values) => values[key] ?? []);
    below += Math.max(0, nominal - Math.min(nominal, ...found)) ** 2;
    above += Math.max(0, Math.max(nominal, ...found) - nominal) ** 2;
  }
  return { low: nominal - Math.sqrt(below), high: nominal + Math.sqrt(above) };
}

/** Edges of any found quantity of the design the doubt belongs to, and what they rest on. */
export function quantityEdge(key: string, { from }: Doubt): QuantityEdge {
  if (from === null) return noEdge;
  const { design, edges } = from;
  const nominal = solve(design).values[key];
  if (nominal === undefined) return noEdge;
  const zero = entryFor(key)?.dimension === 'temperature' ? design.surroundings.ambient : 0;
  if (!(Math.abs(nominal - zero) > 0)) return noEdge;
  const inBand = edges[key];
  const found = inBand ?? loadEdges(key, nominal, loadPartsOf(design));
  const factor = (edge: number | null) => (edge === null ? 1 : (edge - zero) / (nominal - zero));
  const low = factor(found.low);
  const high = factor(found.high);
  if (Math.max(Math.abs(low - 1), Math.abs(high - 1)) < leastEdge) return noEdge;
  return { source: inBand ? 'band' : 'load', low, high };
}

/** A nominal figure at an edge of its own. */
export function shifted(key: string, nominal: number, ambient: number, factor: number): number {
  const zero = entryFor(key)?.dimension === 'temperature' ? ambient : 0;
  return zero + (nominal - zero) * factor;
}
