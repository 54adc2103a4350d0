import type { Band, BandCurve } from '../../../shared/band.ts';
import type { Design } from '../../../shared/design/schema.ts';
import {
  type RatingCurve,
  type Service,
  type Solution,
  services,
  type WarmUp,
} from '../../../shared/solution.ts';
import { writeDuration, writeNumber, writeQuantity, writeShareDown } from '../../engine/quantity/write.ts';
import {
  niceRange,
  niceTicks,
  type PlotData,
  type PlotLimit,
  type PlotMark,
  type PlotSeries,
  readCurve,
} from '../parts/plot/data.ts';
import type { Curves } from '../state/results.ts';

/** A plot with what it says, in words. */
export interface Told {
  readonly data: PlotData;
  readonly finding: string;
  /** Where the cursor stands at first. */
  readonly start: number;
}

const icePoint = 273.15;
const toCelsius = (kelvin: number) => kelvin - icePoint;
const perCent = (value: number) => `${writeNumber(value, 3, true)}\u202f%`;
const plain = (value: number) => writeNumber(value, 3, true);
const degrees = (value: number) => writeQuantity(value + icePoint, 'temperature');

/** One colour and one line style for each service, everywhere. */
export const serviceLines: Readonly<Record<Service, { tone: string; dash: readonly number[] }>> = {
  ssb: { tone: '--ssb', dash: [9, 4] },
  cw: { tone: '--cw', dash: [3, 3] },
  keyDown: { tone: '--key-down', dash: [] },
};

/** Margin below the highest junction temperature of the data sheet at which "over" begins, K. */
const overMargin = 25;

function limitLines(solution: Solution): readonly PlotLimit[] {
  const limit = solution.values.designLimit;
  const greatest = solution.values.maximumJunction;
  const found: PlotLimit[] = [];
  if (limit !== undefined)
    found.push({
      label: `design limit ${writeQuantity(limit, 'temperature')}`,
      value: toCelsius(limit),
      tone: '--close',
    });
  if (greatest !== undefined)
    found.push({
      label: `data sheet ${writeQuantity(greatest, 'temperature')}`,
      value: toCelsius(greatest),
      tone: '--over',
    });
  return found;
}

function marginBand(solution: Solution): PlotData['bands'] {
  const limit = solution.values.designLimit;
  const greatest = solution.values.maximumJunction;
  if (limit === undefined || greatest === undefined || greatest - overMargin <= limit) return [];
  return [{ from: toCelsius(limit), to: toCelsius(greatest - overMargin), tone: '--close' }];
}

/** Highest temperature axis worth drawing: a collapsing curve must not flatten the others. */
function ceiling(values: readonly number[], limits: readonly PlotLimit[]): number {
  const highestLimit = Math.max(...limits.map((limit) => limit.value), 60);
  return Math.min(Math.max(...values, highestLimit), highestLimit * 1.6 + 40);
}

function temperatureAxis(series: readonly PlotSeries[], limits: readonly PlotLimit[]) {
  const values = series.flatMap((each) => each.values).filter((value): value is number => value !== null);
  const low = Math.min(...values, ...limits.map((limit) => limit.value));
  const range = niceRange([Math.min(low, 20), ceiling(values, limits) + 6], 6);
  return { yRange: range, yTicks: niceTicks(range[0], range[1], 6), writeY: degrees, tickY: degrees };
}

/** A band's curve on the places of a plot, in its units. */
function edgesOn(
  curve: BandCurve | null | undefined,
  at: readonly number[],
  unit: (value: number) => number,
): Pick<PlotSeries, 'edges'> {
  if (!curve) return {};
  const on = (values: readonly number[]) => readCurve(curve.x, values, at).map(unit);
  return { edges: { low: on(curve.low), high: on(curve.high) } };
}

/** Junction temperature against duty for the three services, shaded by the band once it is there. */
export function dutyPlot(
  design: Design,
  solution: Solution,
  sweeps: Curves['sweeps'],
  band?: Band,
): Told | undefined {
  const good = services.flatMap((service) => (sweeps[service].ok ? [sweeps[service].value] : []));
  const first = good[0];
  if (!first) return undefined;
  const series = services.map((service): PlotSeries => {
    const sweep = sweeps[service];
    const values = sweep.ok
      ? sweep.value.junctionPeak.map((kelvin) => (Number.isFinite(kelvin) ? toCelsius(kelvin) : null))
      : first.share.map(() => null);
    const edges = sweep.ok ? edgesOn(band?.duty[service], first.share, toCelsius) : {};
    return { key: service, label: solution.words[service].name, values, ...serviceLines[service], ...edges };
  });
  const limits = limitLines(solution);
  const start = first.share.findIndex((share) => share >= design.service.transmitShare - 1e-9);
  const data: PlotData = {
    x: first.share.map((share) => share * 100),
    xLabel: 'duty',
    yLabel: 'junction, highest in the cycle',
    xRange: [0, 100],
    xTicks: niceTicks(0, 100, 5),
    writeX: perCent,
    tickX: perCent,
    ...temperatureAxis(series, limits),
    series,
    limits,
    bands: marginBand(solution),
    marks: [
      {
        x: design.service.transmitShare * 100,
        label: `planned ${writeQuantity(design.service.transmitShare, 'share', '%', 2)}`,
        tone: '--ink-soft',
      },
      ...safeDutyMarks(solution),
    ],
  };
  return {
    data,
    start: Math.max(start, 0),
    finding: dutyFinding(solution) + (band ? ' Shaded: nine of ten.' : ''),
  };
}

function safeDutyMarks(solution: Solution): readonly PlotMark[] {
  const limit = solution.values.designLimit;
  return services.flatMap((service) => {
    const result = solution.services[service];
    if (!result.ok || limit === undefined) return [];
    const share = result.value.safeDuty;
    const byJunction = result.value.governing.key === 'junction';
    if (share <= 0 || share >= 1 || !byJunction) return [];
    const label = `${solution.words[service].name} up to ${writeShareDown(share)}`;
    return [{ x: share * 100, y: toCelsius(limit), label, tone: serviceLines[service].tone }];
  });
}

function dutyFinding(solution: Solution): string {
  const parts = services.flatMap((service) => {
    const result = solution.services[service];
    if (!result.ok) return [];
    const share = result.value.safeDuty;
    const text = share >= 1 ? 'at any duty' : share <= 0 ? 'at no duty' : `up to ${writeShareDown(share)}`;
    return [`${solution.words[service].name} ${text}`];
  });
  return parts.length === 0 ? '' : `Within the limits: ${parts.join(', ')}.`;
}

/** Junction and plate from cold through keyed overs, for one service. */
export function warmUpPlot(
  solution: Solution,
  warmUps: Curves['warmUps'],
  service: Service,
): Told | undefined {
  const outcome = warmUps[service];
  if (!outcome.ok || outcome.value.time.length < 2) return undefined;
  const { time, junction, plate } = outcome.value;
  const minutes = time.map((seconds) => seconds / 60);
  const series: readonly PlotSeries[] = [
    {
      key: 'junction',
      label: 'junction',
      values: junction.map(toCelsius),
      tone: serviceLines[service].tone,
      dash: [],
    },
    { key: 'plate', label: 'plate', values: plate.map(toCelsius), tone: '--ink-soft', dash: [9, 4] },
  ];
  const limits = limitLines(solution);
  const end = minutes.at(-1)!;
  const data: PlotData = {
    x: minutes,
    xLabel: 'min',
    yLabel: `${solution.words[service].name}, from cold`,
    xRange: [0, end],
    xTicks: niceTicks(0, end, 6),
    writeX: (value) => writeDuration(value * 60),
    tickX: plain,
    ...temperatureAxis(series, limits),
    series,
    limits,
    bands: [],
    marks: coolingMarks(outcome.value),
  };
  const highest = Math.max(...junction);
  const finding = `Highest junction ${writeQuantity(highest, 'temperature')} within ${writeDuration(outcome.value.switchedOff)}, at the planned duty. ${coolingFinding(outcome.value)}`;
  return { data, start: junction.indexOf(highest), finding };
}

/** When everything is switched off, and when the plate can be touched again. */
function coolingMarks({ switchedOff, touchable, coolEnough }: WarmUp): readonly PlotMark[] {
  const off = { x: switchedOff / 60, label: 'off', tone: '--ink-soft' };
  if (touchable === null) return [off];
  const label = `touchable after ${writeDuration(touchable - switchedOff)}`;
  return [off, { x: touchable / 60, y: toCelsius(coolEnough), label, tone: '--ink' }];
}

function coolingFinding({ switchedOff, touchable, coolEnough, plate }: WarmUp): string {
  const level = writeQuantity(coolEnough, 'temperature');
  if (touchable !== null) {
    return `Switched off, the plate is below ${level} after ${writeDuration(touchable - switchedOff)}.`;
  }
  return plate.at(-1)! > coolEnough
    ? `Switched off, the plate stays above ${level} for longer than shown.`
    : `The plate stays below ${level}.`;
}

/** Sink resistance against heat, shaded by the band once it is there. */
export function ratingPlot(curve: RatingCurve, band?: Band): Told | undefined {
  if (curve.heat.length < 2) return undefined;
  const end = niceRange([0, curve.heat.at(-1)!], 6)[1];
  const yRange = niceRange([0, ...curve.resistance], 5);
  const series: readonly PlotSeries[] = [
    {
      key: 'resistance',
      label: 'sink to air',
      values: [...curve.resistance],
      tone: '--ink',
      dash: [],
      ...edgesOn(band?.rating, curve.heat, (value) => value),
    },
  ];
  const perWatt = (value: number) => writeQuantity(value, 'thermalResistance');
  const data: PlotData = {
    x: [...curve.heat],
    xLabel: 'heat, W',
    yLabel: 'K/W',
    xRange: [0, end],
    xTicks: niceTicks(0, end, 6),
    writeX: (value) => writeQuantity(value, 'power', 'W'),
    tickX: plain,
    yRange,
    yTicks: niceTicks(yRange[0], yRange[1], 5),
    writeY: perWatt,
    tickY: plain,
    series,
    limits: [],
    bands: [],
    marks: [],
  };
  const start = Math.floor(curve.heat.length / 2);
  const finding = `From ${perWatt(curve.resistance[0]!)} at ${writeQuantity(curve.heat[0]!, 'power')} down to ${perWatt(curve.resistance.at(-1)!)} at ${writeQuantity(curve.heat.at(-1)!, 'power')}: a sink has no single rating.`;
  return { data, start, finding };
}
