/** One line of the benchmark: several runs of the same thing, in the unit of the target. */
export interface Figure {
  readonly name: string;
  readonly unit: 'ms' | 'kB' | 'of the screen';
  readonly runs: readonly number[];
  /** What is held against the target: the median, or where even slow runs count the 95th percentile. */
  readonly judged?: 'median' | 'p95';
  /** Upper bound we want to keep; a slow machine may miss it, so it is shown and never fails anything. */
  readonly target: number;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  const upper = sorted[Math.floor(middle)] ?? Number.NaN;
  const lower = sorted[Math.ceil(middle) - 1] ?? Number.NaN;
  return (lower + upper) / 2;
}

/** The smallest run that at most a twentieth of the runs exceed. */
export function percentile95(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.ceil(0.95 * sorted.length) - 1] ?? Number.NaN;
}

function written(value: number): string {
  return value.toFixed(value < 0.1 ? 4 : value < 10 ? 2 : 1);
}

function rowOf(figure: Figure): string[] {
  const slow = figure.judged === 'p95';
  const middle = slow ? percentile95(figure.runs) : median(figure.runs);
  const between = slow ? `median ${written(median(figure.runs))}, ` : '';
  const spread = `${between}${written(Math.min(...figure.runs))} - ${written(Math.max(...figure.runs))}`;
  return [
    figure.name,
    `${written(middle)} ${figure.unit}${slow ? ' (p95)' : ''}`,
    figure.runs.length > 1 ? spread : '',
    `${figure.target} ${figure.unit}`,
    middle <= figure.target ? 'met' : 'NOT MET',
  ];
}

/** The figures as a plain table: median or 95th percentile, smallest and largest, target, whether it is met. */
export function tableOf(figures: readonly Figure[]): string {
  const rows = [['figure', 'median or p95', 'min - max', 'target', ''], ...figures.map(rowOf)];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  const lines = rows.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  '));
  return lines.map((line) => line.trimEnd()).join('\n');
}

/** The engine's compiler has settled after this long, ms: some two hundred solves, a minute of typing. */
const warmUpLength = 800;

/**
 * Times a piece of work in ms a call: warmed up first, then several runs of as many calls as fill the run, so
 * that the clock's grain does not matter.
 */
export function timed(work: () => void, runs = 9, runLength = 120): number[] {
  callsWithin(warmUpLength, work);
  const calls = callsWithin(runLength, work);
  return Array.from({ length: runs }, () => {
    const begin = performance.now();
    for (let call = 0; call < calls; call += 1) work();
    return (performance.now() - begin) / calls;
  });
}

/** How often the work is done within a time in ms; once at least. */
function callsWithin(length: number, work: () => void): number {
  const until = performance.now() + length;
  let calls = 0;
  while (performance.now() < until || calls === 0) {
    work();
    calls += 1;
  }
  return calls;
}
