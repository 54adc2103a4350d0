import type { ConverterCurves, ConverterWaveforms, TimeCurrent } from '../../../shared/supplyCurves.ts';
import { writeDuration, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { niceRange, niceTicks, type PlotData, type PlotSeries } from '../parts/plot/data.ts';
import type { Told } from './plots.ts';

const plain = (value: number) => writeNumber(value, 3, true);
const amperes = (value: number) => writeQuantity(value, 'current', 'A');

/** The shortest and the longest time worth drawing, s. */
const shortest = 1e-3;
const longest = 4 * 3600;

const decades = (from: number, to: number) =>
  Array.from({ length: Math.floor(to) - Math.ceil(from) + 1 }, (_, index) => Math.ceil(from) + index);

/** Ticks of a logarithmic axis at 1, 2 and 5. */
function halfDecades(from: number, to: number): readonly number[] {
  return decades(from - 1, to + 1)
    .flatMap((decade) => [1, 2, 5].map((digit) => decade + Math.log10(digit)))
    .filter((tick) => tick >= from - 1e-9 && tick <= to + 1e-9);
}

const logTime = (time: number | null) =>
  time === null || time > longest ? null : Math.log10(Math.max(time, shortest));

/** Fuse band, wire limit and load points over the logarithm of current and time. */
export function timeCurrentPlot(found: TimeCurrent): Told | undefined {
  const { current, loads } = found;
  if (current.length < 2) return undefined;
  const x = current.map(Math.log10);
  const from = x[0]!;
  const to = x.at(-1)!;
  const series: readonly PlotSeries[] = [
    { key: 'holds', label: 'fuse holds', values: found.holds.map(logTime), tone: '--ink', dash: [9, 4] },
    { key: 'opens', label: 'fuse is open', values: found.opens.map(logTime), tone: '--ink', dash: [] },
    { key: 'wire', label: 'wire bears', values: found.wire.map(logTime), tone: '--over', dash: [3, 3] },
  ];
  const yRange = [Math.log10(shortest), Math.log10(longest)] as const;
  const data: PlotData = {
    x,
    xLabel: 'current, A',
    yLabel: 'time',
    xRange: [from, to],
    xTicks: halfDecades(from, to),
    writeX: (value) => amperes(10 ** value),
    tickX: (value) => plain(Number((10 ** value).toPrecision(2))),
    yRange,
    yTicks: decades(yRange[0], yRange[1]),
    writeY: (value) => writeDuration(10 ** value),
    tickY: (value) => writeQuantity(10 ** value, 'time', value < -1e-9 ? 'ms' : 's', 1),
    series,
    limits: [],
    bands: [],
    marks: loads.map((load) => ({
      x: Math.log10(load.current),
      y: Math.log10(Math.min(Math.max(load.time, shortest), longest)),
      label: load.label,
      tone: load.label.startsWith('short') ? '--over' : '--copper',
    })),
  };
  const points = loads.map(
    (load) => `${load.label} ${amperes(load.current)} for ${writeDuration(load.time)}`,
  );
  const finding = `${found.fuse}: between the lines it may open at any moment. ${points.join('; ')}.`;
  // The cursor begins where there is something to read: in the middle of the fuse's band.
  const start = found.opens.findIndex((one) => one !== null && one <= 5);
  return { data, start: Math.max(0, start), finding };
}

const dashes: readonly (readonly number[])[] = [[3, 3], [], [9, 4]];

/** Efficiency against rail current for the lowest, the actual and the highest input. */
export function efficiencyPlot(found: ConverterCurves): Told | undefined {
  const { railCurrent, curves, pepCurrent } = found;
  const all = curves.flatMap((curve) => curve.efficiency).filter((one): one is number => one !== null);
  if (all.length < 2) return undefined;
  const perCent = (value: number) => writeQuantity(value / 100, 'share', '%', 3);
  // The first points near no load would flatten the rest.
  const floor = Math.max(Math.min(...all), 0.6);
  const yRange = niceRange([floor * 100, 100], 5);
  const end = niceRange([0, railCurrent.at(-1)!], 6)[1];
  const data: PlotData = {
    x: [...railCurrent],
    xLabel: 'rail current, A',
    yLabel: 'efficiency',
    xRange: [0, end],
    xTicks: niceTicks(0, end, 6),
    writeX: amperes,
    tickX: plain,
    yRange,
    yTicks: niceTicks(yRange[0], yRange[1], 5),
    writeY: perCent,
    tickY: perCent,
    series: curves.map((curve, index) => ({
      key: `v${index}`,
      label: `from ${writeQuantity(curve.inputVoltage, 'voltage', 'V')}`,
      values: curve.efficiency.map((one) => (one === null || one < floor ? null : one * 100)),
      tone: '--ink',
      dash: dashes[index] ?? [],
    })),
    limits: [],
    bands: [],
    marks: [{ x: pepCurrent, label: 'PEP', tone: '--ink-soft' }],
  };
  const start = railCurrent.findIndex((one) => one >= pepCurrent - 1e-9);
  const best = Math.max(...all);
  const finding = `At best ${writeQuantity(best, 'share', '%', 2)}; good to 2 points.`;
  return { data, start: Math.max(0, start), finding };
}

interface Trace {
  readonly key: string;
  readonly label: string;
  readonly values: readonly number[];
  readonly dash: readonly number[];
  readonly tone?: string;
}

function waveformData(
  waves: ConverterWaveforms,
  yLabel: string,
  traces: readonly Trace[],
  writeY: (value: number) => string,
  tickY: (value: number) => string,
  scale = 1,
): PlotData {
  const micro = waves.time.map((time) => time * 1e6);
  const end = micro.at(-1)!;
  const all = traces.flatMap((trace) => trace.values.map((value) => value * scale));
  const yRange = niceRange([Math.min(0, ...all), Math.max(...all)], 6);
  return {
    x: micro,
    xLabel: 'time, µs',
    yLabel,
    xRange: [0, end],
    xTicks: niceTicks(0, end, 6),
    writeX: (value) => writeQuantity(value * 1e-6, 'time', 'µs'),
    tickX: plain,
    yRange,
    yTicks: niceTicks(yRange[0], yRange[1], 6),
    writeY,
    tickY,
    series: traces.map((trace) => ({
      key: trace.key,
      label: trace.label,
      values: trace.values.map((value) => value * scale),
      tone: trace.tone ?? '--ink',
      dash: [...trace.dash],
    })),
    limits: [],
    bands: [],
    marks: [],
  };
}

/** Currents of coil, switch and rectifier over two periods at PEP. */
export function currentWaves(waves: ConverterWaveforms): Told {
  const traces: readonly Trace[] = [
    { key: 'inductor', label: 'inductor', values: waves.inductor, dash: [], tone: '--ink-soft' },
    { key: 'switch', label: 'switch', values: waves.switch, dash: [9, 4] },
    { key: 'rectifier', label: 'rectifier', values: waves.rectifier, dash: [3, 3] },
    { key: 'input', label: 'input', values: waves.input, dash: [1, 3] },
  ].slice(0, waves.phases > 1 ? 4 : 3);
  const peak = Math.max(...waves.inductor);
  const finding =
    waves.phases > 1
      ? `One of ${waves.phases} phases and the input they share; the inductor peaks at ${amperes(peak)}.`
      : `The inductor peaks at ${amperes(peak)}.`;
  return { data: waveformData(waves, 'current', traces, amperes, plain), start: 0, finding };
}

/** Ripple of the rail over two periods at PEP. */
export function rippleWave(waves: ConverterWaveforms): Told {
  const milli = 1e3;
  const write = (value: number) => writeQuantity(value / milli, 'voltage', 'mV');
  const span = Math.max(...waves.ripple) - Math.min(...waves.ripple);
  const traces: readonly Trace[] = [{ key: 'ripple', label: 'rail', values: waves.ripple, dash: [] }];
  return {
    data: waveformData(waves, 'rail less its mean, mV', traces, write, plain, milli),
    start: 0,
    finding: `${write(span * milli)} from peak to peak.`,
  };
}
