import type { BenchCurve } from '../../../shared/bench.ts';
import { writeDuration, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { niceRange, niceTicks, type PlotData } from '../parts/plot/data.ts';
import type { Told } from './plots.ts';

const toCelsius = (kelvin: number) => kelvin - 273.15;
const degrees = (celsius: number) => writeQuantity(celsius + 273.15, 'temperature');
const rms = (one: readonly number[], other: readonly number[], without: readonly number[]) => {
  const kept = one.flatMap((value, i) => (without.includes(i) ? [] : [(value - other[i]!) ** 2]));
  return Math.sqrt(kept.reduce((sum, square) => sum + square, 0) / Math.max(1, kept.length));
};
const kelvins = (value: number) => writeQuantity(value, 'temperatureDifference', 'K', 2);

/** A run as measured, as the estimate has it and as the corrected sink has it. */
export function benchPlot(curve: BenchCurve): Told | undefined {
  if (curve.time.length < 2) return undefined;
  const minutes = curve.time.map((seconds) => seconds / 60);
  const range = niceRange([...curve.measured, ...curve.before, ...curve.after].map(toCelsius), 6);
  const data: PlotData = {
    x: minutes,
    xLabel: 'min',
    yLabel: 'thermometer on the plate',
    xRange: [minutes[0]!, minutes.at(-1)!],
    xTicks: niceTicks(minutes[0]!, minutes.at(-1)!, 6),
    writeX: (value) => writeDuration(value * 60),
    tickX: (value) => writeNumber(value, 3, true),
    yRange: range,
    yTicks: niceTicks(range[0], range[1], 6),
    writeY: degrees,
    tickY: degrees,
    series: [
      {
        key: 'measured',
        label: 'measured',
        values: curve.measured.map((kelvin, i) => (curve.rejected.includes(i) ? null : toCelsius(kelvin))),
        tone: '--copper',
        dash: [],
      },
      {
        key: 'before',
        label: 'estimate',
        values: curve.before.map(toCelsius),
        tone: '--ink-soft',
        dash: [3, 3],
      },
      { key: 'after', label: 'corrected', values: curve.after.map(toCelsius), tone: '--ink', dash: [9, 4] },
    ],
    limits: [],
    bands: [],
    marks: [],
  };
  const before = rms(curve.measured, curve.before, curve.rejected);
  const after = rms(curve.measured, curve.after, curve.rejected);
  const finding = `The estimate misses by ${kelvins(before)} on average, the corrected sink by ${kelvins(after)}.`;
  return { data, start: curve.time.length - 1, finding };
}
