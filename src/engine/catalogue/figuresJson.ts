import { type Band, solutionAtEdge } from '../../../shared/band.ts';
import { fileUnits } from '../../../shared/design/fields.ts';
import type { Design } from '../../../shared/design/schema.ts';
import type { Solution } from '../../../shared/solution.ts';
import { takenFrom, validity } from './grounds.ts';
import { entryFor } from './index.ts';
import { sources } from './sources.ts';

function describe(key: string, value: number) {
  const entry = entryFor(key);
  if (!entry) return { value };
  return {
    value,
    unit: fileUnits[entry.dimension],
    symbol: entry.symbol,
    label: entry.label,
    station: entry.station,
    given: entry.given === true,
    formula: entry.formula ?? null,
    method: entry.method ?? null,
    from: takenFrom[entry.key] ?? null,
    holds: validity[entry.key] ?? null,
    source: entry.source ? (sources[entry.source] ?? null) : null,
  };
}

/**
 * Every named quantity with what it is and where it comes from, and the verdicts, as one JSON object. band: null where
 * it was not asked for; the verdicts are nominal then.
 */
export function figuresJson(design: Design, nominal: Solution, band: Band | null = null): string {
  const solution = solutionAtEdge(nominal, band);
  // The words are for a page; the findings stand among supply and notes.
  const { values, words: _words, dutyWords: _duty, findings: _findings, ...rest } = solution;
  const quantities = Object.fromEntries(
    Object.entries(values).map(([key, value]) => [key, describe(key, value)]),
  );
  const { verdicts, services, ...parts } = rest;
  return `${JSON.stringify(
    { name: design.name, verdicts, band, services, quantities, ...parts },
    null,
    2,
  )}\n`;
}
