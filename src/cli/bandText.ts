import type { Band } from '../../shared/band.ts';
import { services } from '../../shared/solution.ts';
import { entryFor } from '../engine/catalogue/index.ts';
import { writeDuration, writeQuantity } from '../engine/quantity/write.ts';

const shown = ['junctionPeak', 'safeDuty', 'holdTime', 'platePeak'];
const mostNamed = 4;

function written(key: string, value: number | null): string {
  if (value === null || !Number.isFinite(value)) return 'no limit';
  const name = key.slice(key.indexOf('.') + 1);
  if (name === 'holdTime') return writeDuration(value);
  if (name === 'safeDuty') return writeQuantity(value, 'share', '%', 2);
  return writeQuantity(value, entryFor(key)?.dimension ?? 'number');
}

/** The band as lines: edges of the main figures, then what matters most. */
export function bandLines(band: Band, names: Readonly<Record<string, string>>): readonly string[] {
  const lines = [
    `Nine of ten: ${band.samples} samples, seed ${band.seed}${band.measured ? ', sink corrected by bench runs' : ''}`,
  ];
  const rows = [
    ...services.flatMap((service) => shown.map((name) => `${service}.${name}`)),
    'ratingResistance',
  ];
  for (const key of rows) {
    const edges = band.edges[key];
    if (!edges) continue;
    const [service] = key.split('.');
    const label = entryFor(key)?.label ?? key;
    const of = key.includes('.') ? `${names[service ?? ''] ?? service}: ` : '';
    lines.push(`  ${of}${label}, ${written(key, edges.low)} to ${written(key, edges.high)}`);
  }
  lines.push('', 'What matters most');
  for (const service of services) {
    for (const unknown of band.ranking[service]?.slice(0, mostNamed) ?? []) {
      const share = writeQuantity(unknown.share, 'share', '%', 2);
      lines.push(
        `  ${names[service] ?? service}: ${unknown.label}, ${share} of the spread. ${unknown.advice}`,
      );
    }
  }
  return lines;
}
