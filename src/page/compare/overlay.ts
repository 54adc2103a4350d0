import type { Service, Solution } from '../../../shared/solution.ts';
import { type PlotData, readCurve } from '../parts/plot/data.ts';
import type { Curves } from '../state/results.ts';
import { dutyPlot, type Told } from '../stations/plots.ts';

type Design = Parameters<typeof dutyPlot>[0];

/** One side of the comparison. */
export interface Side {
  readonly design: Design;
  readonly solution: Solution;
  readonly sweeps: Curves['sweeps'];
}

const dash = [9, 4];

function onlyService({ data }: Told, service: Service) {
  return data.series.find((series) => series.key === service);
}

/** The junction of one service against duty, this design unbroken and the other dashed, on one scale. */
export function overlayPlot(mine: Side, theirs: Side, service: Service): Told | undefined {
  const here = dutyPlot(mine.design, mine.solution, mine.sweeps);
  const there = dutyPlot(theirs.design, theirs.solution, theirs.sweeps);
  if (!here || !there) return undefined;
  const own = onlyService(here, service);
  const other = onlyService(there, service);
  if (!own || !other) return undefined;
  const wider = there.data.yRange[1] > here.data.yRange[1] ? there.data : here.data;
  const asNumbers = (values: readonly (number | null)[]) => values.map((value) => value ?? Number.NaN);
  const onMyPlaces = readCurve(there.data.x, asNumbers(other.values), here.data.x).map((value) =>
    Number.isFinite(value) ? value : null,
  );
  const known = new Set(here.data.limits.map((limit) => limit.label));
  const otherLimits = there.data.limits.filter((limit) => !known.has(limit.label));
  const data: PlotData = {
    ...here.data,
    yRange: wider.yRange,
    yTicks: wider.yTicks,
    series: [
      { ...own, key: 'here', label: 'here', dash: [] },
      { ...other, key: 'there', label: 'there', dash, values: onMyPlaces },
    ],
    limits: [
      ...here.data.limits,
      ...otherLimits.map((limit) => ({ ...limit, label: `there: ${limit.label}` })),
    ],
    bands: [],
    marks: here.data.marks.slice(0, 1),
  };
  const name = mine.solution.words[service].name;
  return { data, start: here.start, finding: `${name}: unbroken here, dashed there; nominal.` };
}
