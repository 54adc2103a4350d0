import type { DeviceInput, LimitsInput } from '../../../shared/design/schema.ts';
import type { State } from '../../../shared/solution.ts';

/** Temperatures at which the judgement of a junction changes, K. */
export interface JunctionLimits {
  /** Fine up to here. */
  readonly design: number;
  /** Close up to here, over above. */
  readonly close: number;
  /** Above here: stop. */
  readonly stop: number;
  readonly maximum: number;
}

/** 125 °C: where MIL-PRF-19500/498E says most users want to limit the junction. */
const usualLimit = 398.15;
/** Distances from the data sheet's maximum; choices of this sheet. */
const designDistance = 40;
const closeDistance = 25;
const stopDistance = 10;

/** Design limit and the two steps above it. The builder's own limit replaces the first and never lies above the second. */
export function junctionLimits(device: DeviceInput, limits: LimitsInput): JunctionLimits {
  const maximum = device.maximumJunction;
  const design = limits.designJunction ?? Math.min(usualLimit, maximum - designDistance);
  return {
    design,
    close: Math.max(design, maximum - closeDistance),
    stop: Math.max(design, maximum - stopDistance),
    maximum,
  };
}

/** How a junction temperature stands against its limits. */
export function junctionState(temperature: number, limits: JunctionLimits): State {
  if (temperature <= limits.design) return 'fine';
  return temperature <= limits.close ? 'close' : 'over';
}

/** The worse of several states. */
export function worst(states: readonly State[]): State {
  if (states.includes('over')) return 'over';
  return states.includes('close') ? 'close' : 'fine';
}
