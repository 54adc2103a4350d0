import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { driveForFundamental } from './conductionAngle.ts';
import { type LinearStage, stageOfSwing } from './linearStage.ts';

export interface SaturatingStage {
  readonly class: 'AB' | 'B';
  /** RF power at the drains at full swing, watts. */
  readonly power: number;
  readonly rail: number;
  /** Standing current of all devices, amperes. */
  readonly quiescentCurrent: number;
  readonly deviceCount: number;
  /** Voltage left across a device at small current, volts: about 1 for bipolar devices, 0 for MOSFETs. */
  readonly saturationVoltage: number;
  /** Resistance in series with a device when it is fully on, feed included, ohms. */
  readonly onResistance: number;
}

const maxSteps = 100;

/**
 * A linear stage that uses all of its swing, from the properties of its devices instead of a measured efficiency:
 * V1 = Vdd - Vsat - Ron Ipk, with the peak current Ipk = Iq + Im at this very swing.
 *
 * The equation may have two roots; the larger swing is the one an amplifier is built for. It is approached from
 * above, where the function is convex, so Newton's method cannot pass it.
 *
 * @returns a reason if no swing gives this power
 */
export function saturatingStage(device: SaturatingStage): Outcome<LinearStage> {
  const { power, rail, deviceCount, saturationVoltage, onResistance } = device;
  const available = rail - saturationVoltage;
  const quiescent = device.class === 'B' ? 0 : device.quiescentCurrent / deviceCount;
  let swing = available;
  for (let step = 0; step < maxSteps && swing > 0; step++) {
    const fundamental = (2 * power) / (deviceCount * swing);
    const drive = driveForFundamental(quiescent, fundamental);
    const error = swing - available + onResistance * (quiescent + drive);
    const slope = 1 - (onResistance * driveSlope(quiescent, drive) * fundamental) / swing;
    if (slope <= 0) break;
    const change = error / slope;
    swing -= change;
    if (Math.abs(change) > 1e-14 * rail) continue;
    const rated = { class: device.class, ratedPower: power, ratedRail: rail, deviceCount };
    return success(stageOfSwing(rated, quiescent, swing));
  }
  return failure(
    'power not reachable',
    `No load gives ${Number(power.toPrecision(3))} W from ${Number(rail.toPrecision(3))} V with this saturation voltage and on-resistance.`,
    { power, rail },
  );
}

/** dIm/dI1 = pi/(phi + sin phi cos phi); 1 in class A. */
function driveSlope(quiescent: number, drive: number): number {
  if (drive <= quiescent) return 1;
  const cosine = -quiescent / drive;
  return Math.PI / (Math.acos(cosine) + cosine * Math.sqrt(1 - cosine * cosine));
}
