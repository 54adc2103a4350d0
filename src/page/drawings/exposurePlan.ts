import type { ExposureRow } from '../../../shared/solution.ts';

/** Size of the drawing and where its parts stand, in drawing units. */
export const plan = { width: 400, height: 272, left: 12, right: 282, middle: 132, top: 16, bottom: 248 };

const lightSpeed = 299_792_458;
/** The widest contour leaves this much of the half height free. */
const fill = 0.94;
/** Space for the dimension of the chosen contour left of a short antenna, in drawing units. */
const leastBar = 12;

export interface Contour {
  /** "10 m", or "17 m, 15 m" where the distances are the same. */
  readonly name: string;
  readonly chosen: boolean;
  /** m */
  readonly distance: number;
  readonly path: string;
  /** Where its line to the label begins, and the label's height. */
  readonly from: readonly [number, number];
  readonly labelY: number;
}

export interface ExposurePlan {
  /** Drawing units in a metre. */
  readonly scale: number;
  /** Ends of the antenna as drawn, at the height of `plan.middle`. */
  readonly start: number;
  readonly end: number;
  /** Whether the antenna is longer than the sheet and broken off at its left. */
  readonly broken: boolean;
  readonly contours: readonly Contour[];
  readonly chosen: Contour | undefined;
  /** Length of the scale bar, m: 1, 2 or 5 times a power of ten. */
  readonly bar: number;
  /** Where a person stands, drawing units below the antenna; null when beyond the drawing. */
  readonly person: number | null;
}

/** Length of the antenna seen from above, m: half a wave of wire, the width of a loop, nothing for a rod. */
export function lengthFromAbove(kind: string, frequency: number, loopRadius: number): number {
  if (kind === 'halfWaveWire') return lightSpeed / frequency / 2;
  return kind === 'smallLoop' ? 2 * loopRadius : 0;
}

/**
 * The antenna from above with the distance people keep all round it, to scale; the contours of the other bands are drawn
 * about the same antenna. Bands of the same distance share one line.
 */
export function exposurePlan(
  rows: readonly ExposureRow[],
  antenna: number,
  nearest: number | null,
): ExposurePlan {
  const reach = Math.max(0.2, ...rows.map((row) => row.distance ?? 0));
  const half = (plan.bottom - plan.top) / 2;
  const scale = (fill * half) / reach;
  const end = plan.right - reach * scale;
  const room = end - plan.left - reach * scale;
  const broken = antenna * scale > room;
  const start = broken ? plan.left : end - antenna * scale;
  const groups = groupByDistance(rows);
  const contours = groups.map((group, index): Contour => {
    const radius = group.distance * scale;
    const share = groups.length === 1 ? 0.5 : index / (groups.length - 1);
    const angle = (share - 0.5) * (Math.PI / 1.6);
    return {
      ...group,
      path: outline(start, end, radius, broken),
      from: [end + radius * Math.cos(angle), plan.middle + radius * Math.sin(angle)],
      labelY: plan.top + 8 + share * (plan.bottom - plan.top - 12),
    };
  });
  const person = nearest === null ? null : nearest * scale;
  return {
    scale,
    start,
    end,
    broken,
    contours,
    chosen: contours.find((contour) => contour.chosen),
    bar: roundLength(70 / scale),
    person: person !== null && person <= half ? person : null,
  };
}

function groupByDistance(rows: readonly ExposureRow[]) {
  const groups: { bands: number[]; chosen: boolean; distance: number }[] = [];
  rows.forEach(({ distance, chosen }, index) => {
    if (distance === null) return;
    const same = groups.find((group) => group.distance === distance);
    if (same) {
      same.bands.push(index);
      same.chosen ||= chosen;
    } else groups.push({ bands: [index], chosen, distance });
  });
  return groups.map(({ bands, ...group }) => ({ ...group, name: nameOf(bands, rows) }));
}

/** "17 to 12 m" for three and more bands side by side, else "40, 6 m". */
function nameOf(bands: readonly number[], rows: readonly ExposureRow[]): string {
  const names = bands.map((index) => rows[index]?.band ?? '');
  const first = bands[0] ?? 0;
  const sideBySide = bands.every((index, place) => index === first + place);
  if (names.length > 2 && sideBySide) return `${names[0]?.replace(' m', '')} to ${names.at(-1)}`;
  return names.join(', ').replaceAll(' m,', ',');
}

/** A line all round the antenna at a distance: two straights and two half circles, open where the antenna is broken. */
function outline(start: number, end: number, radius: number, broken: boolean): string {
  const top = plan.middle - radius;
  const bottom = plan.middle + radius;
  const cap = `A${radius} ${radius} 0 0 1`;
  if (broken) return `M${start} ${top}H${end}${cap} ${end} ${bottom}H${start}`;
  return `M${start} ${top}H${end}${cap} ${end} ${bottom}H${start}${cap} ${start} ${top}z`;
}

/** The largest 1, 2 or 5 times a power of ten that is not longer. */
function roundLength(length: number): number {
  const power = 10 ** Math.floor(Math.log10(length));
  const step = [5, 2, 1].find((one) => one * power <= length) ?? 1;
  return step * power;
}

/** Where the dimension of a contour stands: over the antenna, clear of its ends. */
export function dimensionPlace(found: ExposurePlan): number {
  return Math.max(found.start + leastBar, (found.start + found.end) / 2 - (found.broken ? 40 : 0));
}
