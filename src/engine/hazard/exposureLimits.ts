import exposureTable from '../../../reference-data/exposureLimits.json';
import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';

export type LimitSet = keyof typeof exposureTable.sets;
export type Tier = 'general' | 'controlled';

/** Levels of a limit set at one frequency. */
export interface ExposureLimit {
  readonly set: LimitSet;
  readonly setName: string;
  readonly tier: Tier;
  readonly tierName: string;
  /** V/m r.m.s. */
  readonly electric: number;
  /** A/m r.m.s. */
  readonly magnetic: number;
  /** W/m²; null where the set has none at this frequency. */
  readonly density: number | null;
  /** Averaging time, s. */
  readonly averaging: number;
  readonly status: string;
}

interface LimitRow {
  readonly from: number;
  readonly to: number;
  readonly electric: readonly number[];
  readonly magnetic: readonly number[];
  readonly density: readonly number[] | null;
}

const tierNames: Readonly<Record<Tier, string>> = {
  general: 'general population',
  controlled: 'controlled (trained household)',
};

const megahertz = 1e6;

/** The sets in the order of the list on the page. */
export const limitSets = Object.keys(exposureTable.sets) as readonly LimitSet[];

/**
 * Exposure levels of a set and tier at a frequency.
 *
 * frequency: Hz. A row holds from its lower edge up to, not including, its upper edge; the last row includes it.
 * Errors: `noExposureLimit` outside the rows of the set.
 * Sources: 47 CFR 1.1310(e)(1) table 1; ICNIRP 2020 tables 5 and 6; Council Recommendation 1999/519/EC annex III.
 */
export function exposureLimit(set: LimitSet, tier: Tier, frequency: number): Outcome<ExposureLimit> {
  const entry = exposureTable.sets[set];
  const levels = entry[tier];
  const f = frequency / megahertz;
  const rows = levels.rows as readonly LimitRow[];
  const row = rows.find(
    (one, index) => f >= one.from && (f < one.to || (index === rows.length - 1 && f <= one.to)),
  );
  if (!row) {
    return failure('noExposureLimit', `${entry.name} has no level at ${Number(f.toPrecision(4))} MHz.`, {
      frequency,
    });
  }
  return success(
    {
      set,
      setName: entry.name,
      tier,
      tierName: tierNames[tier],
      electric: levelAt(row.electric, f),
      magnetic: levelAt(row.magnetic, f),
      density: row.density === null ? null : levelAt(row.density, f),
      averaging: levels.averaging,
      status: levels.source.status,
    },
    statusNotes(entry.name, levels.source.status),
  );
}

function levelAt(level: readonly number[], frequency: number): number {
  return level[0]! * frequency ** level[1]!;
}

function statusNotes(name: string, status: string): Note[] {
  if (status !== 'from memory') return [];
  return [
    note(
      'from memory',
      'exposureLevelsFromMemory',
      `Some levels of ${name} are from memory: check them against the text before you rely on the distance.`,
    ),
  ];
}
