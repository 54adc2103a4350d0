import type { AskedAxis, Edge, LimitMap, MapAxis, MapLine, MapQuestion } from '../../../../shared/answers.ts';
import { fieldAt, type NumberField, withLeaf } from '../../../../shared/design/leaves.ts';
import { withLoggedSinks } from '../../../../shared/design/loggedSink.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { usualAxis } from '../../../../shared/design/usualAxis.ts';
import { failure, type Outcome, success } from '../../../../shared/outcome.ts';
import { type Service, services } from '../../../../shared/solution.ts';
import { prepare } from '../prepare.ts';
import { cycleAt } from '../serviceCycle.ts';
import { serviceWords } from '../serviceWords.ts';
import { doubtSteps } from './doubt.ts';
import { atEdge, type Doubt, noDoubt } from './edge.ts';
import { lastOf, within } from './steps.ts';

/** Rows looked at in every column before anything is bisected. */
const coarse = 9;
/** Share of the work that the band of the design takes. */
const doubtShare = 0.1;
/** Margin of each service, K; null without a steady state or refused. */
type Margins = Readonly<Record<Service, number | null>>;

function marginsOf(design: Design, asked: readonly Service[], doubt: Doubt): Margins {
  const margins: Record<Service, number | null> = { ssb: null, cw: null, keyDown: null };
  const { coupled, limits } = prepare(design);
  if (!coupled.ok) return margins;
  for (const service of asked) {
    const state = cycleAt(coupled.value, service, design.service.transmitShare);
    if (!state.ok) {
      margins[service] = state.reason.key === 'runaway' ? Number.NEGATIVE_INFINITY : null;
      continue;
    }
    margins[service] =
      limits.design - atEdge(state.value.junctionPeak, design.surroundings.ambient, service, doubt);
  }
  return margins;
}

interface Axis extends MapAxis {
  readonly field: NumberField;
}

function axisOf(design: Design, asked: AskedAxis): Outcome<Axis> {
  const field = fieldAt(asked.path);
  if (field?.kind !== 'number') {
    return failure('noSuchField', `“${asked.path}” is no number that can be drawn along an axis.`);
  }
  const usual = usualAxis(design, asked.path);
  const axis = { path: asked.path, from: asked.from ?? usual.from, to: asked.to ?? usual.to };
  const from = Math.max(field.min, Math.min(axis.from, axis.to));
  const to = Math.min(field.max, Math.max(axis.from, axis.to));
  if (!(to > from)) return failure('emptyAxis', `“${field.label}”: the axis has no length within its range.`);
  return success({ path: axis.path, from, to, field });
}

function valueAt({ from, to, field }: Axis, share: number): number {
  const value = from + (to - from) * share;
  return field.dimension === 'count' ? Math.round(value) : value;
}

/** One column: margins at rows, worked out once each. */
function columnOf(design: Design, x: Axis, y: Axis, share: number, doubt: Doubt) {
  const base = withLeaf(design, x.path, valueAt(x, share));
  const known = new Map<number, Margins>();
  return {
    known,
    at(row: number, asked: readonly Service[]): Margins {
      const before = known.get(row);
      if (before) return before;
      const found = marginsOf(withLeaf(base, y.path, valueAt(y, row)), asked, doubt);
      known.set(row, found);
      return found;
    },
  };
}

type Column = ReturnType<typeof columnOf>;

const fits = (margin: number | null | undefined) => margin !== null && margin !== undefined && margin >= 0;

/** The crossing between two rows: bisected to one row of the map, then a straight line between. */
function crossing(column: Column, service: Service, low: number, high: number, rows: number): number {
  let below = low;
  let above = high;
  const lowFits = fits(column.at(low, services)[service]);
  while (above - below > 1 / rows + 1e-12) {
    const middle = (below + above) / 2;
    if (fits(column.at(middle, services)[service]) === lowFits) below = middle;
    else above = middle;
  }
  const a = column.at(below, services)[service];
  const b = column.at(above, services)[service];
  if (a === null || b === null || !Number.isFinite(a) || !Number.isFinite(b) || a === b)
    return (below + above) / 2;
  return below + ((above - below) * a) / (a - b);
}

function crossingsOf(column: Column, service: Service, y: Axis, rows: number): readonly number[] {
  const found: number[] = [];
  for (let i = 0; i + 1 < coarse; i += 1) {
    const low = i / (coarse - 1);
    const high = (i + 1) / (coarse - 1);
    if (fits(column.at(low, services)[service]) === fits(column.at(high, services)[service])) continue;
    const share = crossing(column, service, low, high, rows);
    found.push(y.from + (y.to - y.from) * share);
  }
  return found;
}

function meaningOf(x: Axis, y: Axis, edge: Edge): string {
  const figure =
    edge === 'pessimistic'
      ? 'The pessimistic edge is that of the design as it stands, carried along with the rise.'
      : 'Nominal figures.';
  return `Each line is where a service stands at the design limit of the junction at the planned duty, with “${y.field.label}” against “${x.field.label}”; everything else stays as entered. ${figure}`;
}

/** Steps to a map: yields the share done after each column. */
export function* mapSteps(
  given: Design,
  question: MapQuestion,
  edge: Edge = 'nominal',
): Generator<number, Outcome<LimitMap>> {
  const design = withLoggedSinks(given);
  const x = axisOf(design, question.x);
  if (!x.ok) return x;
  const y = axisOf(design, question.y);
  if (!y.ok) return y;
  if (x.value.path === y.value.path)
    return failure('sameAxis', 'Choose two different values for the two axes.');
  const begun = edge === 'pessimistic' ? doubtShare : 0;
  const doubt = begun > 0 ? yield* within(doubtSteps(design), 0, begun) : noDoubt;
  const count = Math.max(2, Math.round(question.columns));
  const rows = Math.max(coarse, Math.round(question.rows));
  const names = serviceWords(design);
  const lines = services.map((service) => ({
    service,
    name: names[service].name,
    fineBelow: [] as (boolean | null)[],
    crossings: [] as (readonly number[])[],
  }));
  let solved = 0;
  for (let i = 0; i < count; i += 1) {
    const column = columnOf(design, x.value, y.value, i / (count - 1), doubt);
    for (const line of lines) {
      line.crossings.push(crossingsOf(column, line.service, y.value, rows));
      const lowest = column.at(0, services)[line.service];
      line.fineBelow.push(lowest === null ? null : lowest >= 0);
    }
    solved += column.known.size;
    yield begun + ((1 - begun) * (i + 1)) / count;
  }
  return success({
    x: shown(x.value),
    y: shown(y.value),
    columns: Array.from(
      { length: count },
      (_, i) => x.value.from + ((x.value.to - x.value.from) * i) / (count - 1),
    ),
    lines: lines as readonly MapLine[],
    edge,
    sentence: meaningOf(x.value, y.value, edge),
    solved,
  });
}

function shown({ path, from, to, field }: Axis): LimitMap['x'] {
  return { path, from, to, label: field.label, dimension: field.dimension };
}

/**
 * Two given values against each other, with the line on which each service stands at its limit.
 *
 * Each column is looked at in nine rows and every change between two of them is bisected to one row of the map; a
 * region thinner than an eighth of the height can be missed. All services of a design are read from one preparation.
 */
export function map(design: Design, question: MapQuestion, edge: Edge = 'nominal'): Outcome<LimitMap> {
  return lastOf(mapSteps(design, question, edge));
}
