import { type Band, solutionAtEdge } from '../../../shared/band.ts';
import { type CsvCell, writeCsv } from '../../../shared/csv.ts';
import { fileUnits } from '../../../shared/design/fields.ts';
import { type Service, type Solution, services } from '../../../shared/solution.ts';
import { entryFor } from './index.ts';
import { sources } from './sources.ts';

/** Stands where a length of time has no end. */
const endless = 'no limit';

const header = [
  'key',
  'label',
  'symbol',
  'value',
  'unit',
  'low edge',
  'high edge',
  'formula or method',
  'source',
];

/** Hold times without an end have no number; the table must still show them. */
function endlessKeys({ services: found }: Solution): readonly string[] {
  return services.flatMap((service) => {
    const result = found[service];
    return result.ok && result.value.holdTime === null ? [`${service}.holdTime`] : [];
  });
}

function labelOf(key: string, label: string, { words }: Solution): string {
  const dot = key.indexOf('.');
  return dot < 0 ? label : `${words[key.slice(0, dot) as Service].name}: ${label}`;
}

function sourceOf(name: string | undefined): string {
  const source = name === undefined ? undefined : sources[name];
  if (!source) return '';
  return `${[source.title, source.part, source.year].filter(Boolean).join(', ')} (${source.status})`;
}

function rowOf(key: string, solution: Solution, band: Band | null): readonly CsvCell[] {
  const entry = entryFor(key);
  const value = solution.values[key] ?? endless;
  const edges = band?.edges[key];
  const low = edges && (Number.isFinite(edges.low) ? edges.low : endless);
  const high = edges && (edges.high ?? endless);
  if (!entry) return [key, '', '', value, '', low, high, '', ''];
  const label = labelOf(key, entry.label, solution);
  const how = entry.formula ?? entry.method ?? (entry.given ? 'given' : '');
  const unit = fileUnits[entry.dimension];
  return [key, label, entry.symbol, value, unit, low, high, how, sourceOf(entry.source)];
}

/**
 * Every named quantity as CSV, one a row, in the SI units of the file; the edges of the 90 % band where there is one,
 * empty otherwise. A length of time that never ends is "no limit".
 */
export function figuresCsv(nominal: Solution, band: Band | null = null): string {
  const solution = solutionAtEdge(nominal, band);
  const keys = [...Object.keys(solution.values), ...endlessKeys(solution)];
  return writeCsv([header, ...keys.map((key) => rowOf(key, solution, band))]);
}
