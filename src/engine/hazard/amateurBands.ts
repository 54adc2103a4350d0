import bandTable from '../../../reference-data/amateurBands.json';
import type { Band } from '../../../shared/design/peopleSchema.ts';

export type Region = 'region1' | 'region2' | 'region3';

const megahertz = 1e6;

interface BandRow {
  readonly region1: readonly number[] | null;
  readonly region2: readonly number[] | null;
  readonly region3: readonly number[] | null;
}

const bandRows = bandTable.bands as Readonly<Record<Band, BandRow>>;

/** The bands, longest wave first. */
export const bandNames = Object.keys(bandRows) as readonly Band[];

/** Edges of a band in a region, Hz; null where it is not listed. Source: 47 CFR 97.301. */
export function bandEdges(band: Band, region: Region): readonly [number, number] | null {
  const edges = bandRows[band][region];
  return edges ? [edges[0]! * megahertz, edges[1]! * megahertz] : null;
}

/**
 * Highest frequency of a band in any region, Hz: exposure limits fall with frequency, so it is the strictest.
 *
 * The 60 m channels above the common segment count. Source: 47 CFR 97.301 and 97.303(h).
 */
export function bandTopEdge(band: Band): number {
  let top = 0;
  for (const region of ['region1', 'region2', 'region3'] as const) {
    top = Math.max(top, bandRows[band][region]?.[1] ?? 0);
  }
  if (band === '60 m') top = Math.max(top, ...bandTable.sixtyMetreChannels);
  return top * megahertz;
}

/** Lowest frequency of a band in any region, Hz: there contact currents are judged most strictly. */
export function bandBottomEdge(band: Band): number {
  let bottom = Number.POSITIVE_INFINITY;
  for (const region of ['region1', 'region2', 'region3'] as const) {
    bottom = Math.min(bottom, bandRows[band][region]?.[0] ?? bottom);
  }
  if (band === '60 m') bottom = Math.min(bottom, ...bandTable.sixtyMetreChannels);
  return bottom * megahertz;
}
