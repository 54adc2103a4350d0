import { type Check, errorOf } from './checks.ts';
import type { MeasuredRow } from './measuredSinks.ts';

const figure = (value: number) => {
  const short = Number(value.toPrecision(4));
  return Math.abs(short) >= 1e-3 || short === 0 ? String(short) : short.toExponential(3);
};

/** "+1.2 %"; below a thousandth of a per cent "0.0 %". */
export function perCent(share: number): string {
  const text = (100 * share).toFixed(1);
  return `${share > 0 && Number(text) !== 0 ? '+' : ''}${Number(text) === 0 ? '0.0' : text} %`;
}

function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join('  ')
      .trimEnd(),
  );
}

/** Every check in a line: given, model, error, and whether it is independent. */
export function listOf(checks: readonly Check[]): string {
  return columns([
    ['part', 'item', 'given', 'model', 'error', 'origin', 'source'],
    ...checks.map((check) => [
      check.part,
      check.item,
      `${figure(check.given)} ${check.unit}`.trim(),
      figure(check.model),
      perCent(errorOf(check)),
      check.origin,
      check.source,
    ]),
  ]).join('\n');
}

/** The same gathered by part and source, for the README. */
export function markdownOf(checks: readonly Check[]): string {
  const groups = new Map<string, Check[]>();
  for (const check of checks) {
    const key = `${check.part}|${check.source}|${check.origin}`;
    groups.set(key, [...(groups.get(key) ?? []), check]);
  }
  const rows = [...groups.values()].map((group) => {
    const errors = group.map(errorOf);
    const low = perCent(Math.min(...errors));
    const high = perCent(Math.max(...errors));
    const { part, source, origin } = group[0]!;
    return `| ${part} | ${source} | ${origin} | ${group.length} | ${low === high ? low : `${low} to ${high}`} |`;
  });
  return [
    '| part | compared with | origin | figures | model is off by |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

/** Measured sinks and how many readings lie inside the band. */
export function measuredList(rows: readonly MeasuredRow[]): string {
  if (rows.length === 0) return 'Measured sinks: none yet. Add files to reference-data/measuredSinks.';
  const inside = rows.filter((row) => row.inside).length;
  const lines = columns([
    ['sink', 'power', 'measured', 'model', 'nine of ten', 'inside', 'source'],
    ...rows.map((row) => [
      row.name,
      `${figure(row.power)} W`,
      `${figure(row.measured)} K`,
      figure(row.model),
      `${figure(row.low)} to ${figure(row.high)}`,
      row.inside ? 'yes' : 'NO',
      row.source,
    ]),
  ]);
  return [...lines, `${inside} of ${rows.length} readings inside the band of nine in ten.`].join('\n');
}
