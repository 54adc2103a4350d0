import type { UnitSystem } from '../../engine/quantity/units.ts';
import { joinUnit, writeNumber } from '../../engine/quantity/write.ts';

const foot = 0.3048;

/** A distance people keep: rounded up in the unit it is read in, to a tenth below 10 and to two figures from there on. */
export function writeDistanceUp(metres: number, system: UnitSystem): string {
  const value = system === 'inch' ? metres / foot : metres;
  const step = value < 10 ? 0.1 : 10 ** (Math.floor(Math.log10(value)) - 1);
  const rounded = Math.ceil(value / step - 1e-6) * step;
  return joinUnit(writeNumber(rounded, rounded < 1 ? 1 : 2), system === 'inch' ? 'ft' : 'm');
}

/** How near people come, as entered. */
export function writeNearest(metres: number, system: UnitSystem): string {
  return system === 'inch'
    ? joinUnit(writeNumber(metres / foot, 3, true), 'ft')
    : joinUnit(writeNumber(metres, 3, true), 'm');
}
