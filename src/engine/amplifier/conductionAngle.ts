/**
 * Currents of a device that conducts i(t) = max(0, Iq + Im cos wt): classes A, AB, B and C by the standing current Iq
 * (per device, negative in class C) and the drive amplitude Im.
 *
 * Validity: piecewise-linear transfer, no current in the knee region, no capacitance; good to a few per cent of the
 * efficiency at HF once the voltage swing is calibrated by a measurement.
 *
 * Source: R. Ludwig and P. Bretchko, RF Circuit Design: Theory and Applications (1999), program for figure 8-31; the
 * same coefficients in H. L. Krauss, C. W. Bostian and F. H. Raab, Solid State Radio Engineering (1980) (from memory).
 */

const maxNewtonSteps = 60;
const newtonTolerance = 1e-14;

/**
 * Half of the conduction angle, radians: pi in class A, acos(-Iq/Im) while part of the cycle is cut off, 0 if no
 * current flows.
 *
 * @param quiescent Iq, amperes, negative in class C
 * @param drive Im, amperes, not negative
 */
export function halfConductionAngle(quiescent: number, drive: number): number {
  if (drive <= quiescent) return Math.PI;
  if (drive <= -quiescent) return 0;
  return Math.acos(-quiescent / drive);
}

/** Mean current I0 = (Iq phi + Im sin phi)/pi, amperes. Arguments as in halfConductionAngle. */
export function meanCurrent(quiescent: number, drive: number): number {
  const phi = halfConductionAngle(quiescent, drive);
  return (quiescent * phi + drive * Math.sin(phi)) / Math.PI;
}

/** Amplitude of the fundamental, I1 = (2 Iq sin phi + Im (phi + sin phi cos phi))/pi, amperes. */
export function fundamentalCurrent(quiescent: number, drive: number): number {
  const phi = halfConductionAngle(quiescent, drive);
  const sine = Math.sin(phi);
  return (2 * quiescent * sine + drive * (phi + sine * Math.cos(phi))) / Math.PI;
}

export interface CurrentRatios {
  /** I0 over the peak current. */
  readonly mean: number;
  /** I1 over the peak current. */
  readonly fundamental: number;
}

/**
 * Mean and fundamental of a truncated cosine over its peak.
 *
 * @param conductionAngle whole angle, radians, above 0 up to 2 pi
 */
export function currentRatios(conductionAngle: number): CurrentRatios {
  const phi = 0.5 * conductionAngle;
  const sine = Math.sin(phi);
  const cosine = Math.cos(phi);
  const scale = Math.PI * (1 - cosine);
  return { mean: (sine - phi * cosine) / scale, fundamental: (phi - sine * cosine) / scale };
}

/**
 * Drain efficiency with the voltage swing equal to the rail:
 * (phi - sin phi cos phi)/(2 (sin phi - phi cos phi)). A smaller swing lowers it in proportion.
 *
 * @param conductionAngle whole angle, radians, above 0 up to 2 pi; 0.5 at 2 pi, pi/4 at pi, toward 1 at 0
 */
export function fullSwingEfficiency(conductionAngle: number): number {
  const { mean, fundamental } = currentRatios(conductionAngle);
  return (0.5 * fundamental) / mean;
}

/**
 * Drive amplitude Im at which the fundamental has a wanted amplitude, amperes.
 *
 * Newton's method with dI1/dIm = (phi + sin phi cos phi)/pi. With Iq > 0 the function is concave and the start lies
 * below the root, with Iq < 0 it is convex and the start lies above, so the steps never overshoot.
 *
 * @param quiescent Iq, amperes, negative in class C
 * @param fundamental wanted I1, amperes, not negative
 */
export function driveForFundamental(quiescent: number, fundamental: number): number {
  if (fundamental <= 0) return quiescent < 0 ? -quiescent : 0;
  if (fundamental <= quiescent) return fundamental;
  if (quiescent === 0) return 2 * fundamental;
  // Straight line that the curve approaches at large drive: I1 = Im/2 + 2 Iq/pi.
  let drive = Math.max(fundamental, 2 * fundamental - (4 / Math.PI) * quiescent);
  for (let step = 0; step < maxNewtonSteps; step++) {
    const cosine = Math.max(-1, Math.min(1, -quiescent / drive));
    const sine = Math.sqrt(1 - cosine * cosine);
    const slope = Math.acos(cosine) + sine * cosine;
    const change = (Math.PI * fundamental - 2 * quiescent * sine - drive * slope) / slope;
    if (!Number.isFinite(change)) break;
    drive += change;
    if (Math.abs(change) <= newtonTolerance * drive) break;
  }
  return drive;
}

/**
 * Drive amplitude Im at which the mean current has a wanted value, amperes. dI0/dIm = sin phi/pi; I0 is convex in Im
 * and lies above its large-drive line Im/pi + Iq/2, so Newton from there never overshoots.
 *
 * @param quiescent Iq, amperes, negative in class C
 * @param mean wanted I0, amperes; a value at or below Iq gives Im = Iq, the end of class A
 */
export function driveForMean(quiescent: number, mean: number): number {
  if (mean <= 0) return quiescent < 0 ? -quiescent : 0;
  if (mean <= quiescent) return quiescent;
  let drive = Math.PI * (mean - 0.5 * quiescent);
  for (let step = 0; step < maxNewtonSteps; step++) {
    const cosine = Math.max(-1, Math.min(1, -quiescent / drive));
    const sine = Math.sqrt(1 - cosine * cosine);
    const change = (Math.PI * mean - quiescent * Math.acos(cosine) - drive * sine) / sine;
    if (!Number.isFinite(change)) break;
    drive += change;
    if (Math.abs(change) <= newtonTolerance * drive) break;
  }
  return Math.max(drive, Math.abs(quiescent));
}
