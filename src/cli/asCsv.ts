import { type CsvCell, writeCsv } from '../../shared/csv.ts';
import type { Outcome } from '../../shared/outcome.ts';
import type { Service, Sweep } from '../../shared/solution.ts';

const celsius = (kelvin: number) => (kelvin - 273.15).toFixed(3);

/** The duty curves as CSV (RFC 4180), one row a duty and service; units stand in the header. */
export function asCsv(sweeps: readonly (readonly [Service, Outcome<Sweep>])[]): string {
  const rows: CsvCell[][] = [
    ['service', 'duty [1]', 'junction highest [degC]', 'junction mean [degC]', 'plate highest [degC]'],
  ];
  for (const [service, found] of sweeps) {
    if (!found.ok) {
      process.stderr.write(`${service}: ${found.reason.sentence}\n`);
      continue;
    }
    const { share, junctionPeak, junctionMean, platePeak } = found.value;
    share.forEach((duty, i) => {
      rows.push([
        service,
        duty.toFixed(4),
        celsius(junctionPeak[i] ?? 0),
        celsius(junctionMean[i] ?? 0),
        celsius(platePeak[i] ?? 0),
      ]);
    });
  }
  return writeCsv(rows);
}
