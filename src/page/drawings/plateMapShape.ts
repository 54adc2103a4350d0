import type { PlatePart } from '../../../shared/plateLayout.ts';
import type { PlateMap as WarmPlate } from '../../../shared/solution.ts';
import { writeNumber, writeQuantity } from '../../engine/quantity/write.ts';
import { niceTicks } from '../parts/plot/data.ts';
import { type CellField, labelPlace, type Point, regionAbove } from './isotherms.ts';

const icePoint = 273.15;
export const left = 40;
export const top = 14;
const widest = 340;
const tallest = 250;
const isothermCount = 9;
/** Least clear distance of the figure on an isotherm, in drawing units. */
const labelRoom = 11;
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What stands on parts that are no devices. */
export const marks: Readonly<Partial<Record<PlatePart['key'], string>>> = {
  converter: 'C',
  switch: 'S',
  rectifier: 'D',
};

export interface Isotherm {
  readonly celsius: number;
  readonly path: string;
  readonly figure: Point | null;
}

/** How the plate lies on the drawing. */
export interface View {
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

export function viewOf({ width, length }: { width: number; length: number }): View {
  const scale = Math.min(widest / width, tallest / length);
  return { scale, width: width * scale, height: length * scale };
}

/** Plain numbers and words in the same order. */
export const sameValues = (before: unknown, now: unknown) => JSON.stringify(before) === JSON.stringify(now);

export const degrees = (kelvin: number) => writeQuantity(kelvin, 'temperature', undefined, 4);

export function finding(map: WarmPlate | undefined): string {
  if (!map || map.parts.length === 0) return '';
  const hottest = map.parts.reduce((most, part) => (part.peak > most.peak ? part : most));
  const above = writeQuantity(hottest.peak - map.plateMean, 'temperatureDifference', 'K', 2);
  return `Hottest under ${hottest.label}: ${degrees(hottest.peak)}, ${above} over the plate’s mean, when the junction is hottest.`;
}

export function isothermsOf(map: WarmPlate, view: View, layout: readonly PlatePart[]): Isotherm[] {
  const field: CellField = {
    columns: map.columns,
    rows: map.rows,
    values: map.temperature.map((kelvin) => kelvin - icePoint),
    width: view.width,
    height: view.height,
  };
  const taken = layout.map(({ source }) => ({
    x: source.x * view.scale,
    y: source.y * view.scale,
    width: source.width * view.scale,
    height: source.length * view.scale,
  }));
  const size = { width: view.width, height: view.height };
  return niceTicks(map.lowest - icePoint, map.highest - icePoint, isothermCount).map((celsius) => {
    const loops = regionAbove(field, celsius);
    const figure = labelPlace(loops, size, taken, labelRoom);
    if (figure) taken.push({ x: figure[0], y: figure[1], width: 26, height: 12 });
    return { celsius, path: loops.map(closed).join(''), figure };
  });
}

function closed(loop: readonly Point[]): string {
  return `M${loop.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}z`;
}

export function rangeWords(map: WarmPlate | undefined): string {
  return map ? `Isotherms from ${degrees(map.lowest)} to ${degrees(map.highest)}.` : 'No temperatures yet.';
}

export function plainDegrees(celsius: number): string {
  return writeNumber(celsius, celsius % 1 === 0 ? 3 : 4, true);
}

export function shortName(part: PlatePart, index: number): string {
  return part.key === 'device'
    ? `${index + 1} device`
    : `${marks[part.key]} ${part.label.replace('the ', '')}`;
}
