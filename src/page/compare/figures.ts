import type { Dimension } from '../../../shared/design/fields.ts';
import { type Solution, services } from '../../../shared/solution.ts';
import { quantities } from '../../engine/catalogue/index.ts';
import { joinUnit, minus, writeDuration, writeNumber, writeQuantity } from '../../engine/quantity/write.ts';

/** The figures worth comparing, by catalogue key. */
const chief = [
  'inputCurrentPep',
  'fuseRating',
  'pathDropPep',
  'inputVoltagePep',
  'railVoltagePep',
  'deviceHeatPep',
  'ratingResistance',
  'touchTemperature',
  'exposureDistance',
];
const perService = ['junctionPeak', 'platePeak', 'deviceHeatOver', 'safeDuty', 'holdTime', 'runTime'];

export interface FigureLine {
  readonly key: string;
  readonly label: string;
  /** Mine less theirs, as text; a word where there is no number on one side, empty where both are alike. */
  readonly difference: string;
}

function sized(size: number, dimension: Dimension): string {
  if (dimension === 'share') return joinUnit(writeNumber(size * 100, 2, true), '%');
  if (dimension === 'time') return writeDuration(size);
  if (dimension === 'temperature' || dimension === 'temperatureDifference')
    return writeQuantity(Math.round(size * 10) / 10, 'temperatureDifference', 'K', 2);
  return writeQuantity(size, dimension, undefined, 2);
}

/** A difference too small to be seen in the figures themselves, as part of their size. */
const unseen = 0.002;

/** "+12 K", "−0.3 V": mine less theirs; shares differ by points. */
export function writeDifference(mine: number, theirs: number, dimension: Dimension): string {
  const step = mine - theirs;
  const size =
    dimension === 'temperature' ? 300 * unseen * 0.2 : unseen * Math.max(Math.abs(mine), Math.abs(theirs));
  if (!Number.isFinite(step) || Math.abs(step) <= size) return '';
  const points = dimension === 'share' ? ' points' : '';
  const text = sized(Math.abs(step), dimension);
  return `${step > 0 ? '+' : minus}${points ? text.replace(/\s*%$/, '') : text}${points}`;
}

function isEndless(solution: Solution, key: string): boolean {
  const [service, name] = key.split('.');
  const found = services.find((each) => each === service);
  const result = found && name === 'holdTime' ? solution.services[found] : undefined;
  return result?.ok === true && result.value.holdTime === null;
}

function differenceOf(mine: Solution, theirs: Solution, key: string, dimension: Dimension): string {
  const here = mine.values[key];
  const there = theirs.values[key];
  if (here !== undefined && there !== undefined) return writeDifference(here, there, dimension);
  const endless = [isEndless(mine, key), isEndless(theirs, key)];
  if (endless[0] && there !== undefined) return 'longer';
  if (endless[1] && here !== undefined) return 'shorter';
  if (here !== undefined) return 'only here';
  return there !== undefined ? 'only there' : '';
}

/** The chief figures that at least one side has, each with the difference. */
export function figureLines(mine: Solution, theirs: Solution): readonly FigureLine[] {
  const keys = [...services.flatMap((service) => perService.map((name) => `${service}.${name}`)), ...chief];
  return keys.flatMap((key) => {
    const [service, name] = key.split('.');
    const entry = quantities[name ?? key];
    const any = [mine, theirs].some((each) => each.values[key] !== undefined || isEndless(each, key));
    if (!entry || !any) return [];
    const found = services.find((each) => each === service);
    const label = found ? `${mine.words[found].name}: ${entry.label}` : entry.label;
    return [{ key, label, difference: differenceOf(mine, theirs, key, entry.dimension) }];
  });
}
