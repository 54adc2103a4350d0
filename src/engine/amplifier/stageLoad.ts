import { loadOfTurns } from './turnsRatio.ts';

export type Arrangement = 'parallel' | 'pushPull';

/**
 * Load that each device works into behind an output transformer, ohms. Devices on one side in parallel share the load of
 * the whole primary: n 50/N^2. In push-pull each half of the primary carries half of the devices: n 50/(4 N^2), which is
 * half of the drain-to-drain load for a pair.
 *
 * @param turnsRatio secondary over the whole primary
 */
export function loadPerDeviceOf(arrangement: Arrangement, deviceCount: number, turnsRatio: number): number {
  return loadOfTurns(turnsRatio) * devicesInSeries(arrangement, deviceCount);
}

/** Load across the whole primary for a load per device, ohms: the inverse of loadPerDeviceOf without the transformer. */
export function primaryLoadOf(arrangement: Arrangement, deviceCount: number, loadPerDevice: number): number {
  return loadPerDevice / devicesInSeries(arrangement, deviceCount);
}

/** Load per device over the load across the whole primary. */
export function devicesInSeries(arrangement: Arrangement, deviceCount: number): number {
  return arrangement === 'pushPull' ? deviceCount / 4 : deviceCount;
}
