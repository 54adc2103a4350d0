import type { LimitMap, UnknownAnswer } from '../../../shared/answers.ts';
import type { Design } from '../../../shared/design/schema.ts';
import type { Service } from '../../../shared/solution.ts';
import type { QuantityEntry } from '../../engine/catalogue/index.ts';
import { findUnit, fromSI, metricUnits, toSI } from '../../engine/quantity/units.ts';
import { writeDuration, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { niceRange, niceTicks, type PlotData, type PlotMark, type PlotSeries } from '../parts/plot/data.ts';
import { leafAt } from '../state/fields.ts';
import { closedLine, fineSide } from './mapLines.ts';

/** A plot with its words. */
export interface Drawn {
  readonly title: string;
  readonly finding: string;
  readonly data: PlotData;
  readonly start: number;
}

export interface AxisWords {
  readonly label: string;
  readonly toShown: (value: number) => number;
  readonly fromShown: (shown: number) => number;
  /** A SI value with its unit. */
  readonly write: (value: number) => string;
}

const plain = (value: number) => writeNumber(value, 3, true);

/** The quantity over the range of the unknown, with the target and where it is met. */
export function unknownPlot(
  answer: UnknownAnswer,
  target: number,
  entry: QuantityEntry,
  axis: AxisWords,
): Drawn | undefined {
  const unit = findUnit(entry.dimension, metricUnits[entry.dimension]);
  const known = nearTheAnswer(answer);
  if (known.length < 2) return undefined;
  const y = (value: number) => fromSI(value, unit);
  const write = (value: number) =>
    entry.dimension === 'time' ? writeDuration(value) : writeQuantity(value, entry.dimension, unit.symbol);
  const x = known.map((point) => axis.toShown(point.value));
  const values = known.map((point) => (point.quantity === null ? null : y(point.quantity)));
  const seen = values.filter((value): value is number => value !== null);
  const yRange = niceRange([...seen, y(target)], 5);
  const xRange: [number, number] = [x[0]!, x.at(-1)!];
  const back = (value: number) => toSI(value, unit);
  const series: readonly PlotSeries[] = [{ key: 'quantity', label: '', values, tone: '--ink', dash: [] }];
  const marks: readonly PlotMark[] = answer.found
    .filter((one): one is typeof one & { value: number } => typeof one.value === 'number')
    .map((one) => ({ x: axis.toShown(one.value), y: y(one.reached), label: one.words, tone: '--copper' }));
  return {
    title: `${entry.label} against ${answer.label.toLowerCase()}`,
    finding: `${write(target)} at ${answer.found.map((one) => one.words).join(' and ')}.`,
    start: Math.floor(known.length / 2),
    data: {
      x,
      xLabel: axis.label,
      yLabel: unit.symbol === '' ? entry.label : unit.symbol,
      xRange,
      yRange,
      xTicks: niceTicks(xRange[0], xRange[1], 6),
      yTicks: niceTicks(yRange[0], yRange[1], 5),
      writeX: (value) => axis.write(axis.fromShown(value)),
      tickX: plain,
      writeY: (value) => write(back(value)),
      tickY: plain,
      series,
      limits: [{ label: `asked for ${write(target)}`, value: y(target), tone: '--close' }],
      bands: [],
      marks,
    },
  };
}

/** How far beyond the answers the curve is drawn, as a factor. */
const beyond = 3;

/** The part of the curve around the answers: a whole range of decades would hide them. */
function nearTheAnswer(answer: UnknownAnswer): UnknownAnswer['curve'] {
  const found = answer.found.flatMap((one) => (typeof one.value === 'number' ? [one.value] : []));
  const inPart = answer.curve.filter(
    ({ value }) =>
      found.length === 0 || (value <= beyond * Math.max(...found) && value >= Math.min(...found) / beyond),
  );
  const exact = answer.found.flatMap((one) =>
    typeof one.value === 'number' ? [{ value: one.value, quantity: one.reached }] : [],
  );
  const all = [...(inPart.length > 2 ? inPart : answer.curve), ...exact];
  return [...all].sort((a, b) => a.value - b.value);
}

const lines: Readonly<Record<Service, { tone: string; dash: readonly number[] }>> = {
  ssb: { tone: '--ssb', dash: [9, 4] },
  cw: { tone: '--cw', dash: [3, 3] },
  keyDown: { tone: '--key-down', dash: [] },
};

/** Limit lines of the services over two given values, with the design as a dot. */
export function mapPlot(design: Design, map: LimitMap, unitOf: (path: string) => string): Drawn {
  const xUnit = findUnit(map.x.dimension, unitOf(map.x.path));
  const yUnit = findUnit(map.y.dimension, unitOf(map.y.path));
  const label = (name: string, symbol: string) => (symbol === '' ? name : `${name}, ${symbol}`);
  const x = map.columns.map((value) => fromSI(value, xUnit));
  const writeY = (value: number) => writeQuantity(toSI(value, yUnit), map.y.dimension, yUnit.symbol);
  const series = map.lines.flatMap((line) => {
    const { heights, ends } = closedLine(line, map);
    const shownEnds = new Set([...ends].map((at) => fromSI(at, yUnit)));
    const write = (value: number) => (shownEnds.has(value) ? 'steep here' : writeY(value));
    return Array.from({ length: Math.max(...heights.map((at) => at.length)) }, (_, i): PlotSeries => {
      const values = heights.map((at) => (at[i] === undefined ? null : fromSI(at[i]!, yUnit)));
      return { key: `${line.service}.${i}`, label: line.name, values, write, ...lines[line.service] };
    }).filter((one) => one.values.filter((value) => value !== null).length > 1);
  });
  const xRange: [number, number] = [x[0]!, x.at(-1)!];
  const yRange: [number, number] = [fromSI(map.y.from, yUnit), fromSI(map.y.to, yUnit)];
  const now = { x: leafAt(design, map.x.path), y: leafAt(design, map.y.path) };
  const marks: readonly PlotMark[] =
    typeof now.x === 'number' && typeof now.y === 'number'
      ? [{ x: fromSI(now.x, xUnit), y: fromSI(now.y, yUnit), label: 'this design', tone: '--copper' }]
      : [];
  return {
    title: `${map.y.label} against ${map.x.label.toLowerCase()}`,
    finding: mapFinding(map),
    start: Math.floor(x.length / 2),
    data: {
      x,
      xLabel: label(map.x.label, xUnit.symbol),
      yLabel: label(map.y.label, yUnit.symbol),
      xRange,
      yRange,
      xTicks: niceTicks(xRange[0], xRange[1], 6),
      yTicks: niceTicks(yRange[0], yRange[1], 5),
      writeX: (value) => writeQuantity(toSI(value, xUnit), map.x.dimension, xUnit.symbol),
      tickX: plain,
      writeY,
      tickY: plain,
      series,
      limits: [],
      bands: [],
      marks,
    },
  };
}

/** Whose limits are drawn; where there is no line the whole map is on one side of it. */
function mapFinding({ lines: all }: LimitMap): string {
  const crossed = (line: LimitMap['lines'][number]) => line.crossings.some((at) => at.length > 0);
  const drawn = all.filter(crossed);
  const others = all.filter((line) => !crossed(line)).map(sideOf);
  const limits =
    drawn.length > 0 ? [`limit of the junction in ${listOf(drawn.map(({ name }) => name))}`] : [];
  const sides = new Set(drawn.map(fineSide));
  const [only] = sides;
  if (sides.size === 1 && only) limits.push(`within it ${only} the line`);
  else {
    for (const line of drawn) {
      const side = fineSide(line);
      if (side) limits.push(`${line.name} within it ${side} its line`);
    }
  }
  const text = [...limits, ...others].join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function sideOf({ name, fineBelow }: LimitMap['lines'][number]): string {
  if (fineBelow.every((one) => one === null)) return `${name} has no figures`;
  const fine = fineBelow.filter((one) => one === true).length;
  if (fine === fineBelow.length) return `${name} within its limit all over`;
  return fine === 0 ? `${name} beyond its limit all over` : `${name} within its limit at one side only`;
}

function listOf(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
