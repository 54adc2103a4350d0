import touchTable from '../../../reference-data/touchTemperature.json';
import type { BurnRow, Severity } from '../../../shared/solution.ts';

const zeroCelsius = 273.15;

export type TouchMaterial = 'metal' | 'glass' | 'plastic' | 'wood';

/** Who can touch a surface, and the contact that must do no harm, s; null when nobody can reach it. */
export const contactTimes = { adults: 10, anyone: 60, carried: 600, nobody: null } as const;
export type TouchedBy = keyof typeof contactTimes;

/** Least and relative allowance of the pessimistic edge: 5 K, or 15 % of the rise. Own choice. */
const leastAllowance = 5;
const relativeAllowance = 0.15;

/**
 * Burn threshold of a material at a contact time, K: lower edge of the band, healthy adult skin, small area.
 *
 * Linear in log10(time) between the points of the table, held below 1 s and above 8 h; never raised upwards of 1 s.
 * Finned or rough surfaces get no credit. time: s, > 0. Source: ISO 13732-1:2006, values partly from memory (±3 K).
 */
export function burnThreshold(material: TouchMaterial, time: number): number {
  const times = touchTable.time;
  const temperatures = touchTable.materials[material];
  if (!(time > times[0]!)) return temperatures[0]! + zeroCelsius;
  for (let index = 1; index < times.length; index++) {
    if (time > times[index]!) continue;
    const from = Math.log10(times[index - 1]!);
    const share = (Math.log10(time) - from) / (Math.log10(times[index]!) - from);
    const start = temperatures[index - 1]!;
    return start + share * (temperatures[index]! - start) + zeroCelsius;
  }
  return temperatures[temperatures.length - 1]! + zeroCelsius;
}

/**
 * Contact time to the burn threshold at a surface temperature, s; null below the threshold of the longest contact.
 *
 * Inverse of `burnThreshold`; 1 s stands for "about 1 s or less". temperature: K.
 */
export function timeToBurn(material: TouchMaterial, temperature: number): number | null {
  const times = touchTable.time;
  const temperatures = touchTable.materials[material];
  const celsius = temperature - zeroCelsius;
  if (celsius >= temperatures[0]!) return times[0]!;
  for (let index = 1; index < times.length; index++) {
    const high = temperatures[index - 1]!;
    const low = temperatures[index]!;
    if (celsius < low) continue;
    const from = Math.log10(times[index - 1]!);
    const to = Math.log10(times[index]!);
    return 10 ** (from + ((high - celsius) / (high - low)) * (to - from));
  }
  return null;
}

/**
 * Pessimistic edge of a touchable temperature, K: raised by the larger of 5 K and 15 % of the rise over ambient.
 *
 * Where the uncertainty band of the design reaches higher, take that instead.
 */
export function pessimisticTouch(temperature: number, ambient: number): number {
  return temperature + Math.max(leastAllowance, relativeAllowance * Math.max(0, temperature - ambient));
}

export interface TouchLevel {
  readonly key: 'none' | 'note' | 'minutes' | 'minute' | 'seconds' | 'atOnce';
  readonly severity: Severity | null;
  /** "burns within seconds" */
  readonly words: string;
}

/** How a temperature is spoken of, by the column of the table from which it burns. */
const levels: readonly TouchLevel[] = [
  { key: 'atOnce', severity: 'danger', words: 'burns at once' },
  { key: 'seconds', severity: 'warning', words: 'burns within seconds' },
  { key: 'minute', severity: 'caution', words: 'burns within a minute' },
  { key: 'minutes', severity: 'caution', words: 'burns in minutes' },
  { key: 'note', severity: 'note', words: 'burns if the skin rests on it for hours' },
];

const noLevel: TouchLevel = { key: 'none', severity: null, words: 'can be held' };

/**
 * How a surface temperature is spoken of: rows from the thresholds at 1 s, 10 s, 1 min, 10 min and 8 h, for metal 65,
 * 55, 51, 48 and 43 °C. temperature: K.
 */
export function touchLevel(temperature: number, material: TouchMaterial = 'metal'): TouchLevel {
  const celsius = temperature - zeroCelsius;
  const index = touchTable.materials[material].findIndex((from) => celsius >= from);
  return levels[index] ?? noLevel;
}

/** Highest temperature allowed by who can touch it, K: metal 55, 51 or 48 °C; null when nobody can. */
export function touchLimit(touchedBy: TouchedBy, material: TouchMaterial = 'metal'): number | null {
  const time = contactTimes[touchedBy];
  return time === null ? null : burnThreshold(material, time);
}

const tableSurfaces = ['metal', 'glass', 'plastic'] as const;

/** The table of burn thresholds by surface, each with the time to burn at a temperature. temperature: K, or not known. */
export function burnTable(temperature: number | null): readonly BurnRow[] {
  return tableSurfaces.map((surface) => ({
    surface,
    thresholds: touchTable.time.map((contact) => ({
      contact,
      temperature: burnThreshold(surface, contact),
    })),
    burnsAfter: temperature === null ? null : timeToBurn(surface, temperature),
  }));
}
