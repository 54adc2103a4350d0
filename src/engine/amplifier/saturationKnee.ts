import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { currentRatios, driveForFundamental } from './conductionAngle.ts';
import { type LinearClass, type LinearStage, stageOfSwing } from './linearStage.ts';

/** Devices and bias of a stage whose swing ends where the devices are fully on. */
export interface SaturatingDevices {
  readonly class: LinearClass;
  readonly rail: number;
  /** Standing current of all devices, amperes; read in class AB only. */
  readonly quiescentCurrent: number;
  readonly deviceCount: number;
  /** Voltage left across a device at small current, volts: about 1 for bipolar devices, 0 for MOSFETs. */
  readonly saturationVoltage: number;
  /** Resistance in series with a device when it is fully on, feed included, ohms. */
  readonly onResistance: number;
  /** Whole conduction angle, radians; read in class C only. */
  readonly conductionAngle?: number;
}

export interface SaturatingStage extends SaturatingDevices {
  /** RF power at the drains at full swing, watts. */
  readonly power: number;
}

const maxSteps = 100;
const usualClassC = (2 * Math.PI) / 3;

/**
 * A linear stage that uses all of its swing, from the properties of its devices instead of a measured efficiency:
 * V1 = Vdd - Vsat - Ron Ipk, with the peak current Ipk = Iq + Im at this very swing. Class A stands at the least
 * current that carries the power (Ipk = 2 I1); class C has its conduction angle at this power.
 *
 * The equation may have two roots; the larger swing is the one an amplifier is built for. In classes AB and B it is
 * approached from above, where the function is convex, so Newton's method cannot pass it.
 *
 * @returns a reason if no swing gives this power
 */
export function saturatingStage(device: SaturatingStage): Outcome<LinearStage> {
  const swing = fixedAngle(device) ? closedSwing(device) : searchedSwing(device);
  if (!(swing > 0)) return notReachable(device);
  const fundamental = (2 * device.power) / (device.deviceCount * swing);
  const rated = {
    class: device.class,
    ratedPower: device.power,
    ratedRail: device.rail,
    deviceCount: device.deviceCount,
  };
  return success(stageOfSwing(rated, standing(device, fundamental), swing));
}

/**
 * The same devices on a given load: the swing that ends where they are fully on, V1 + Ron Ipk(V1/R) = Vdd - Vsat. Class
 * A then stands at the least current that carries this swing, class C has its conduction angle there.
 *
 * @param loadPerDevice fundamental load of each device, ohms, above 0
 * @returns a reason if nothing of the rail is left for a swing
 */
export function saturatingOnLoad(device: SaturatingDevices, loadPerDevice: number): Outcome<LinearStage> {
  const available = device.rail - device.saturationVoltage;
  const quiescent = quiescentOf(device);
  const left = (swing: number) =>
    available - swing - device.onResistance * peakCurrent(device, quiescent, swing / loadPerDevice);
  if (!(available > 0 && left(0) > 0)) return notReachable({ ...device, power: 0 });
  const found = bracketedRoot(left, 0, available, { tolerance: 1e-13 * available });
  const swing = found.ok ? found.value.root : 0;
  if (!(swing > 0)) return notReachable({ ...device, power: 0 });
  const rated = {
    class: device.class,
    ratedPower: (device.deviceCount * swing * swing) / (2 * loadPerDevice),
    ratedRail: device.rail,
    deviceCount: device.deviceCount,
  };
  return success(stageOfSwing(rated, standing(device, swing / loadPerDevice), swing));
}

function fixedAngle(device: SaturatingDevices): boolean {
  return device.class === 'A' || device.class === 'C';
}

/** Peak current over the fundamental where the conduction angle is fixed. */
function peakRatio(device: SaturatingDevices): number {
  return device.class === 'A' ? 2 : 1 / currentRatios(device.conductionAngle ?? usualClassC).fundamental;
}

function quiescentOf(device: SaturatingDevices): number {
  return device.class === 'AB' ? device.quiescentCurrent / device.deviceCount : 0;
}

function peakCurrent(device: SaturatingDevices, quiescent: number, fundamental: number): number {
  if (fixedAngle(device)) return peakRatio(device) * fundamental;
  return quiescent + driveForFundamental(quiescent, fundamental);
}

/** Standing current of one device, amperes: that of its class at this fundamental. */
function standing(device: SaturatingDevices, fundamental: number): number {
  if (device.class === 'A') return fundamental;
  if (device.class !== 'C') return quiescentOf(device);
  const cosine = Math.cos(0.5 * (device.conductionAngle ?? usualClassC));
  return (-peakRatio(device) * fundamental * cosine) / (1 - cosine);
}

/** Larger root of V1^2 - (Vdd - Vsat) V1 + Ron k 2 P/n = 0, k the peak over the fundamental; NaN if there is none. */
function closedSwing(device: SaturatingStage): number {
  const available = device.rail - device.saturationVoltage;
  if (!(available > 0)) return Number.NaN;
  const lost = (8 * device.onResistance * peakRatio(device) * device.power) / device.deviceCount;
  return 0.5 * (available + Math.sqrt(available * available - lost));
}

function searchedSwing(device: SaturatingStage): number {
  const { power, rail, deviceCount, onResistance } = device;
  const available = rail - device.saturationVoltage;
  const quiescent = quiescentOf(device);
  let swing = available;
  for (let step = 0; step < maxSteps && swing > 0; step++) {
    const fundamental = (2 * power) / (deviceCount * swing);
    const drive = driveForFundamental(quiescent, fundamental);
    const error = swing - available + onResistance * (quiescent + drive);
    const slope = 1 - (onResistance * driveSlope(quiescent, drive) * fundamental) / swing;
    if (slope <= 0) return Number.NaN;
    const change = error / slope;
    swing -= change;
    if (Math.abs(change) <= 1e-14 * rail) return swing;
  }
  return Number.NaN;
}

function notReachable({ power, rail }: Pick<SaturatingStage, 'power' | 'rail'>): Outcome<LinearStage> {
  const round = (value: number) => Number(value.toPrecision(3));
  const what = power > 0 ? `${round(power)} W` : 'output';
  return failure(
    'power not reachable',
    `No load gives ${what} from ${round(rail)} V with this saturation voltage and on-resistance.`,
    { power, rail },
  );
}

/** dIm/dI1 = pi/(phi + sin phi cos phi); 1 in class A. */
function driveSlope(quiescent: number, drive: number): number {
  if (drive <= quiescent) return 1;
  const cosine = -quiescent / drive;
  return Math.PI / (Math.acos(cosine) + cosine * Math.sqrt(1 - cosine * cosine));
}
