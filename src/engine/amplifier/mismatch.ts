import { classE } from './switchingTheory.ts';

/**
 * Heat of an amplifier whose load is not the one it was built for.
 *
 * Model: drive and bias stay, harmonics are shorted, and the matched load uses the full swing. With the load z
 * (over the matched one) the device is limited by its current while |z| <= 1 and by its voltage above. What is not
 * radiated is heat in the devices: reflected power is neither created nor lost.
 *
 * Validity: the plane is that of the drains, after the output capacitance is tuned out. A filter with open harmonics, a
 * stage with feedback and class E behave differently; data-sheet ruggedness is survival for a limited time, not this.
 *
 * Source: the two regions of S. C. Cripps, IEEE MTT-S Digest (1983) (from memory); equations derived.
 */

/** Above this ratio the load takes nothing. */
const openSwr = 1e12;

/** Magnitude of the reflection coefficient, 0 to 1: (S - 1)/(S + 1). A ratio below 1 is taken as its inverse. */
export function reflectionOfSwr(swr: number): number {
  if (!(swr < openSwr)) return 1;
  return Math.abs(swr - 1) / (swr + 1);
}

/** Standing-wave ratio of a reflection magnitude, at most 1e12. */
export function swrOfReflection(reflection: number): number {
  const magnitude = Math.min(1, Math.abs(reflection));
  return Math.min(openSwr, (1 + magnitude) / (1 - magnitude));
}

/**
 * Standing-wave ratio that the drains see behind a lossy output network: the reflection passes the loss twice,
 * |G_D| = |G_A| 10^(-L/10).
 *
 * @param swr at the antenna connector, 1 or above
 * @param outputLoss matched loss of the network, decibels
 */
export function swrAtDrains(swr: number, outputLoss: number): number {
  return swrOfReflection(reflectionOfSwr(swr) * 10 ** (-outputLoss / 10));
}

/**
 * Share of the power entering a matched-loss network that leaves it with a mismatch behind it:
 * a (1 - |G|^2)/(1 - a^2 |G|^2), a = 10^(-L/10). Exact for a line of real impedance; an estimate for a filter.
 *
 * @param swr at the antenna connector, 1 or above
 * @param outputLoss matched loss, decibels
 * @see The ARRL Antenna Book, additional line loss due to SWR (from memory)
 */
export function networkTransmission(swr: number, outputLoss: number): number {
  const gain = 10 ** (-outputLoss / 10);
  const square = reflectionOfSwr(swr) ** 2;
  if (square === 1) return 0;
  return (gain * (1 - square)) / (1 - gain * gain * square);
}

export interface MismatchedPoint {
  /** DC input over the matched RF output. */
  readonly dcPower: number;
  /** RF power leaving the devices over the matched RF output. */
  readonly rfPower: number;
  /** Heat over the matched RF output. */
  readonly heat: number;
}

/**
 * Powers at full drive with a mismatched load of known phase, over the matched output P0:
 * |z| <= 1: Pdc = 1/eta0, Prf = Re z; |z| > 1: Pdc = 1/(eta0 |z|), Prf = Re z/|z|^2.
 *
 * @param swr at the drains, 1 or above
 * @param phase of the reflection coefficient at the drains, radians; pi is the low real load, the hottest
 * @param efficiency eta0, matched, 0 to 1
 */
export function mismatchedPoint(swr: number, phase: number, efficiency: number): MismatchedPoint {
  // z = (1 + G)/(1 - G): Re z = (1 - g^2)/|1 - G|^2, |z| = |1 + G|/|1 - G|; written so that nothing cancels near g = 1.
  const g = reflectionOfSwr(swr);
  const rest = 2 / (1 + Math.max(1, swr));
  const plus = rest * rest + 4 * g * Math.cos(0.5 * phase) ** 2;
  const minus = rest * rest + 4 * g * Math.sin(0.5 * phase) ** 2;
  const real = rest * (1 + g);
  const currentLimited = plus <= minus;
  const dcPower = (currentLimited ? 1 : Math.sqrt(Math.max(0, minus / plus))) / efficiency;
  const rfPower = real / (currentLimited ? minus : plus);
  return { dcPower, rfPower, heat: dcPower - rfPower };
}

/**
 * RF power that leaves the devices at the worst phase: forward power over S. The rail current stays that of the matched
 * load, so heat is Pdc - P/S at any amplitude of a linear stage; a load of 1/S keeps the device current-limited.
 *
 * @param rfPower matched RF power at the drains, watts
 * @param swr at the drains, 1 or above
 */
export function worstPhasePower(rfPower: number, swr: number): number {
  return swr < openSwr ? rfPower / Math.max(1, swr) : 0;
}

/**
 * Heat at the worst phase over the matched heat, at full drive: (1/eta0 - 1/S)/(1/eta0 - 1). It grows without limit as
 * eta0 approaches 1.
 *
 * @param swr at the drains, 1 or above
 * @param efficiency matched, above 0 and below 1
 */
export function worstPhaseRatio(swr: number, efficiency: number): number {
  return (1 / efficiency - worstPhasePower(1, swr)) / (1 / efficiency - 1);
}

/**
 * Share of the forward power that a protection leaves which holds the reflected power at that of its threshold:
 * (|G_f|/|G|)^2, 1 up to the threshold. A usual way to build it; own choice as a model.
 *
 * @param swr at the antenna connector, 1 or above
 * @param fromSwr where the protection begins, above 1; null if there is none
 */
export function foldbackShare(swr: number, fromSwr: number | null): number {
  if (fromSwr === null || swr <= fromSwr) return 1;
  return (reflectionOfSwr(fromSwr) / reflectionOfSwr(swr)) ** 2;
}

/**
 * Upper estimate of the peak voltage at a drain or collector, volts: rail plus swing times (1 + |G|), in class E
 * 3.562 times the rail and in class D twice the rail. With shorted harmonics the peak of classes A to C stays near
 * twice the rail; a filter that does not short them can come to this value.
 *
 * @param swing amplitude of the drain voltage with the load matched, volts; not read in classes D and E
 * @param swr at the drains, 1 or above
 */
export function drainPeakVoltage(
  amplifierClass: 'A' | 'AB' | 'B' | 'C' | 'D' | 'E' | 'F',
  rail: number,
  swing: number,
  swr: number,
): number {
  const raised = 1 + reflectionOfSwr(swr);
  if (amplifierClass === 'D') return 2 * rail;
  if (amplifierClass === 'E') return classE.peakVoltage * rail * raised;
  return rail + swing * raised;
}
