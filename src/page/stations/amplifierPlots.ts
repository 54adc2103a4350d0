import type { DeratingCurve, MismatchCurve, OutputCurve, Solution } from '../../../shared/solution.ts';
import { writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { niceRange, niceTicks, type PlotData, type PlotSeries } from '../parts/plot/data.ts';
import { serviceLines, type Told } from './plots.ts';

const icePoint = 273.15;
const watts = (value: number) => writeQuantity(value, 'power', 'W');
const plain = (value: number) => writeNumber(value, 3, true);
const perCent = (value: number) => `${plain(value)}\u202f%`;
const degrees = (celsius: number) => writeQuantity(celsius + icePoint, 'temperature');

/** Power upwards from nothing. */
function powerAxis(values: readonly number[]) {
  const yRange = niceRange([0, ...values, 1e-3], 6);
  return { yRange, yTicks: niceTicks(yRange[0], yRange[1], 6), writeY: watts, tickY: plain };
}

/** What the final takes and gives against the amplitude of its output. */
export function outputPlot(curve: OutputCurve): Told {
  const axis = powerAxis(curve.supplyPower);
  const top = axis.yRange[1];
  const series: readonly PlotSeries[] = [
    { key: 'supply', label: 'supply', values: curve.supplyPower, tone: '--ink-soft', dash: [9, 4] },
    { key: 'output', label: 'output', values: curve.output, tone: '--ink-soft', dash: [3, 3] },
    { key: 'heat', label: 'heat', values: curve.heat, tone: '--ink', dash: [] },
    {
      key: 'efficiency',
      label: 'efficiency',
      values: curve.efficiency.map((share) => share * top),
      write: (value) => perCent((100 * value) / top),
      tone: '--ink-soft',
      dash: [12, 3, 2, 3],
    },
  ];
  const { hottest } = curve;
  const data: PlotData = {
    x: curve.amplitude.map((share) => share * 100),
    xLabel: 'amplitude, of that at PEP',
    yLabel: 'W; efficiency: top is 100\u202f%',
    xRange: [0, 100],
    xTicks: niceTicks(0, 100, 5),
    writeX: perCent,
    tickX: perCent,
    ...axis,
    series,
    limits: [],
    bands: [],
    marks: hottest
      ? [
          {
            x: 100 * hottest.amplitude,
            y: hottest.heat,
            label: `hottest ${watts(hottest.heat)}`,
            tone: '--ink',
          },
        ]
      : [],
  };
  return { data, start: curve.amplitude.length - 1, finding: hottestWords(curve) };
}

function hottestWords(curve: OutputCurve): string {
  const atPep = curve.heat.at(-1);
  const { hottest } = curve;
  if (!hottest || atPep === undefined) return '';
  if (hottest.amplitude > 0.995) return `Hottest at PEP: ${watts(hottest.heat)}.`;
  const where =
    hottest.amplitude < 0.005
      ? 'without drive'
      : `at ${perCent(Math.round(100 * hottest.amplitude))} of the amplitude`;
  return `Hottest ${where}: ${watts(hottest.heat)}; ${watts(atPep)} at PEP.`;
}

/** Heat of the devices against SWR, between the mildest and the worst phase. */
export function mismatchPlot(curve: MismatchCurve, solution: Solution): Told {
  const series: readonly PlotSeries[] = [
    { key: 'worst', label: 'worst', values: curve.worst, tone: '--ink', dash: [] },
    { key: 'mean', label: 'mean', values: curve.mean, tone: '--ink-soft', dash: [9, 4] },
    { key: 'mildest', label: 'mildest', values: curve.mildest, tone: '--ink-soft', dash: [3, 3] },
  ];
  const swr = solution.values.swr ?? 1;
  const heat = solution.values.deviceHeatPep;
  const marks = heat === undefined ? [] : [{ x: swr, y: heat, label: `SWR ${plain(swr)}`, tone: '--ink' }];
  const start = curve.swr.findIndex((each) => each >= Math.max(swr, 2) - 1e-9);
  const data: PlotData = {
    x: curve.swr,
    xLabel: 'SWR at the antenna',
    yLabel: 'heat at PEP, W, by phase of the reflection',
    xRange: [1, 10],
    xTicks: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
    writeX: plain,
    tickX: plain,
    ...powerAxis([...curve.worst, ...curve.mean]),
    series,
    limits: [],
    bands: [],
    marks: swr > 1.02 && swr <= 10 ? marks : [],
  };
  const worst = Math.max(...curve.worst);
  const at = curve.swr[curve.worst.indexOf(worst)] ?? 1;
  const matched = curve.worst[0] ?? 0;
  const finding = `${watts(matched)} into a matched load, at most ${watts(worst)} at SWR ${plain(at)}.`;
  return { data, start: Math.max(start, 0), finding };
}

/** The derating line of one device with the services on it. */
export function deratingPlot(curve: DeratingCurve): Told {
  const series: readonly PlotSeries[] = [
    { key: 'allowed', label: 'data sheet', values: curve.allowed, tone: '--over', dash: [] },
    { key: 'designed', label: 'design limit', values: curve.designed, tone: '--close', dash: [9, 4] },
  ];
  const x = curve.caseTemperature.map((kelvin) => kelvin - icePoint);
  const xRange = [x[0]!, x.at(-1)!] as const;
  const hottest = Math.max(...curve.points.map((point) => point.caseTemperature - icePoint));
  const start = x.findIndex((each) => each >= hottest);
  const data: PlotData = {
    x,
    xLabel: 'case',
    yLabel: 'W in one device',
    xRange,
    xTicks: niceTicks(xRange[0], xRange[1], 6),
    writeX: degrees,
    tickX: degrees,
    ...powerAxis([...curve.allowed, ...curve.points.map((point) => point.heat)]),
    series,
    limits: [],
    bands: [],
    marks: curve.points.map((point) => ({
      x: point.caseTemperature - icePoint,
      y: point.heat,
      label: `${point.name} ${watts(point.heat)}`,
      tone: serviceLines[point.service].tone,
    })),
  };
  const words = curve.points.map(
    (point) =>
      `${point.name} ${watts(point.heat)} with the case at ${degrees(point.caseTemperature - icePoint)}`,
  );
  return {
    data,
    start: Math.max(start, 0),
    finding: words.length > 0 ? `At the planned duty: ${words.join(', ')}.` : '',
  };
}
