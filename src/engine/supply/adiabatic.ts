import { copperResistivity, copperVolumetricHeat } from './conductor.ts';

const zeroCelsius = 273.15;
/** The formula is meant for currents that end within this time, s. IEC 60364-5-54. */
export const longestAdiabaticTime = 5;

/** 1/0.00393 − 20: the temperature in °C, sign reversed, at which copper would have no resistance. */
const beta = 234.5;

/** Insulation up to this limit is taken as PVC, which may reach 160 °C for a moment. */
const pvcLimit = 105 + zeroCelsius;
const pvcShort = 160 + zeroCelsius;
const crossLinkedShort = 250 + zeroCelsius;
const siliconeLimit = 180 + zeroCelsius;
const siliconeShort = 350 + zeroCelsius;

/**
 * k of the adiabatic formula I² t = (k S)², A √s/m².
 *
 * k = √(Qc (β + 20)/ρ20 · ln((β + Tf)/(β + Ti))), temperatures in °C inside; here K.
 * Reproduces the k values of IEC 60364-5-54 (copper) within 0.4 %. Zero when the start is at or above the end.
 */
export function adiabaticConstant(initial: number, final: number): number {
  if (final <= initial) return 0;
  const start = beta + initial - zeroCelsius;
  const end = beta + final - zeroCelsius;
  return Math.sqrt(((copperVolumetricHeat * (beta + 20)) / copperResistivity) * Math.log(end / start));
}

/**
 * Temperature that insulation bears for a moment, K, from its continuous limit: up to 105 °C as PVC (160 °C), up to
 * 180 °C as cross-linked (250 °C), above as silicone (350 °C). Own choice after the tables of IEC 60364-5-54.
 */
export function shortTimeLimit(insulationLimit: number): number {
  if (insulationLimit <= pvcLimit) return pvcShort;
  if (insulationLimit < siliconeLimit) return crossLinkedShort;
  return siliconeShort;
}

/** What a conductor bears, A² s: (k S)². area: m²; initial, final: K. */
export function adiabaticWithstand(area: number, initial: number, final: number): number {
  return (adiabaticConstant(initial, final) * area) ** 2;
}

/**
 * Time in which a fault current brings a conductor from `initial` to `final`, s.
 *
 * t = (k S/I)². Above 5 s heat already leaves the wire and the time is on the cautious side. current > 0.
 */
export function adiabaticTime(area: number, current: number, initial: number, final: number): number {
  return adiabaticWithstand(area, initial, final) / (current * current);
}
