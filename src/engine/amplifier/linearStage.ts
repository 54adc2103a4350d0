import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import {
  currentRatios,
  driveForFundamental,
  driveForMean,
  fundamentalCurrent,
  halfConductionAngle,
  meanCurrent,
} from './conductionAngle.ts';

export type LinearClass = 'A' | 'AB' | 'B' | 'C';

/** A stage whose output follows its drive: fixed load and bias, found once at the power of the measurement. */
export interface LinearStage {
  readonly class: LinearClass;
  readonly deviceCount: number;
  /** RF power at the drains during the measurement, watts. */
  readonly ratedPower: number;
  /** Rail during the measurement, volts. */
  readonly ratedRail: number;
  /** Standing current per device, amperes; negative in class C (bias below cut-off). */
  readonly quiescentPerDevice: number;
  /** Fundamental load per device, ohms; a push-pull pair sees twice this from drain to drain. */
  readonly loadPerDevice: number;
  /** Amplitude of the drain voltage at the rated power, volts. */
  readonly ratedVoltage: number;
  /** Part of the rail the swing cannot use, volts. */
  readonly knee: number;
}

export interface StagePoint {
  /** Rail current of all devices, amperes. */
  readonly dcCurrent: number;
  /** Amplitude of the drain voltage, volts. */
  readonly fundamentalVoltage: number;
  /** Whole conduction angle, radians. */
  readonly conductionAngle: number;
}

export interface StageMeasurement {
  readonly class: LinearClass;
  /** RF power at the drains, key down, watts. */
  readonly ratedPower: number;
  /** Rail at the drains then, volts. */
  readonly ratedRail: number;
  /** RF power at the drains over rail voltage times rail current. */
  readonly efficiency: number;
  /** Rail current of all devices without drive, amperes; read in class AB only. */
  readonly quiescentCurrent: number;
  /** Whole conduction angle at the rated power, radians; read in class C only. */
  readonly conductionAngle: number;
  readonly deviceCount: number;
}

/** Relative slack for a swing that reaches the rail exactly. */
const slack = 1e-9;

/**
 * Finds load and knee of a linear stage from one measurement, so that the model has exactly the measured efficiency
 * at the measured power.
 *
 * The mean current per device is I0 = P/(n eta Vdd); the drive that gives it gives the fundamental I1, the swing
 * V1 = 2 P/(n I1), the load V1/I1 and the knee Vdd - V1. Class A: the least standing current,
 * IqT = P/(eta Vdd) and V1 = 2 eta Vdd. Class B: V1 = (4/pi) eta Vdd. Class C: bias from the conduction angle.
 * All loss that theory does not explain is thereby put into the devices, the cautious side.
 *
 * @returns a reason if the efficiency is above what the class can reach with this bias
 */
export function calibrateLinearStage(measurement: StageMeasurement): Outcome<LinearStage> {
  const { ratedPower, ratedRail, efficiency, deviceCount } = measurement;
  if (!(ratedPower > 0 && ratedRail > 0 && efficiency > 0 && deviceCount >= 1)) {
    return failure('no measurement', 'Power, rail, efficiency and number of devices must be above zero.');
  }
  const mean = ratedPower / (efficiency * ratedRail * deviceCount);
  const quiescent = standingCurrent(measurement, mean);
  if (quiescent > mean * (1 + slack)) return standingCurrentTooHigh(measurement);
  const fundamental = fundamentalCurrent(quiescent, driveForMean(quiescent, mean));
  const swing = (2 * ratedPower) / (deviceCount * fundamental);
  if (swing > ratedRail * (1 + slack)) return efficiencyTooHigh(measurement, quiescent);
  return success(stageOfSwing(measurement, quiescent, Math.min(swing, ratedRail)));
}

/** Builds a stage from its swing at the rated power: load per device V1/I1 with I1 = 2 P/(n V1). */
export function stageOfSwing(
  rated: Pick<StageMeasurement, 'class' | 'ratedPower' | 'ratedRail' | 'deviceCount'>,
  quiescentPerDevice: number,
  swing: number,
): LinearStage {
  return {
    class: rated.class,
    deviceCount: rated.deviceCount,
    ratedPower: rated.ratedPower,
    ratedRail: rated.ratedRail,
    quiescentPerDevice,
    loadPerDevice: (rated.deviceCount * swing * swing) / (2 * rated.ratedPower),
    ratedVoltage: swing,
    knee: rated.ratedRail - swing,
  };
}

/**
 * Operating point at an instantaneous RF power: V1 = sqrt(2 P R/n), I1 = V1/R, and the drive that gives this I1. The
 * rail current does not depend on the rail voltage.
 *
 * @param rfPower at the drains, watts, not negative; the caller keeps it below railLimitedPower
 */
export function stagePoint(stage: LinearStage, rfPower: number): StagePoint {
  const fundamentalVoltage = swingAt(stage, rfPower);
  const quiescent = stage.quiescentPerDevice;
  const drive = driveForFundamental(quiescent, fundamentalVoltage / stage.loadPerDevice);
  return {
    dcCurrent: stage.deviceCount * meanCurrent(quiescent, drive),
    fundamentalVoltage,
    conductionAngle: 2 * halfConductionAngle(quiescent, drive),
  };
}

/** Rail current of all devices at an instantaneous RF power at the drains, amperes: stagePoint without the rest. */
export function stageCurrent(stage: LinearStage, rfPower: number): number {
  const quiescent = stage.quiescentPerDevice;
  const drive = driveForFundamental(quiescent, swingAt(stage, rfPower) / stage.loadPerDevice);
  return stage.deviceCount * meanCurrent(quiescent, drive);
}

/** Rail current of all devices with bias on and no drive, amperes: 0 in classes B and C. */
export function standingRailCurrent(stage: LinearStage): number {
  return stage.deviceCount * Math.max(0, stage.quiescentPerDevice);
}

/**
 * Greatest RF power at the drains that a rail supports with this load: n (rail - knee)^2/(2 R), watts; 0 if the rail
 * is below the knee.
 *
 * @param rail at the drains, volts
 */
export function railLimitedPower(stage: LinearStage, rail: number): number {
  const swing = Math.max(0, rail - stage.knee);
  return (stage.deviceCount * swing * swing) / (2 * stage.loadPerDevice);
}

/**
 * Amplitude at which a conducting device leaves class A, over the amplitude at a peak power: the kink of the rail
 * current, a panel end for averages. 0 in classes B and C; may exceed 1 (class A throughout).
 *
 * @param peakPower PEP at the drains, watts, above 0
 */
export function classAEnd(stage: LinearStage, peakPower: number): number {
  return (Math.max(0, stage.quiescentPerDevice) * stage.loadPerDevice) / swingAt(stage, peakPower);
}

export interface HottestPoint {
  /** Amplitude over the amplitude at the peak power. */
  readonly amplitude: number;
  /** Heat of all devices there, watts. */
  readonly heat: number;
}

/**
 * Amplitude at which the devices are hottest: the greatest of rail times current minus RF power for amplitudes from 0
 * to that of the peak power. In class B with a full swing it is 2/pi and the heat is 40.5 % of the peak power.
 *
 * @param rail at the drains, volts
 * @param peakPower PEP at the drains, watts
 * @see R. L. Boylestad and L. Nashelsky, Electronic Devices and Circuit Theory, chapter 12 (class B maximum)
 */
export function hottestPoint(stage: LinearStage, rail: number, peakPower: number): HottestPoint {
  return hottestOf((r) => rail * stageCurrent(stage, r * r * peakPower) - r * r * peakPower);
}

/** Greatest value of a heat over the amplitudes 0 to 1; the curve has one inner maximum or none. */
export function hottestOf(heatAt: (amplitude: number) => number): HottestPoint {
  const samples = 40;
  let best = 0;
  for (let i = 1; i <= samples; i++) if (heatAt(i / samples) > heatAt(best / samples)) best = i;
  if (best === 0 || best === samples) return { amplitude: best / samples, heat: heatAt(best / samples) };
  return goldenMaximum(heatAt, (best - 1) / samples, (best + 1) / samples);
}

function goldenMaximum(f: (x: number) => number, from: number, to: number): HottestPoint {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = from;
  let high = to;
  while (high - low > 1e-6) {
    const width = ratio * (high - low);
    if (f(high - width) > f(low + width)) high = low + width;
    else low = high - width;
  }
  const amplitude = 0.5 * (low + high);
  return { amplitude, heat: f(amplitude) };
}

function swingAt(stage: LinearStage, rfPower: number): number {
  return Math.sqrt((2 * Math.max(0, rfPower) * stage.loadPerDevice) / stage.deviceCount);
}

function standingCurrent(measurement: StageMeasurement, mean: number): number {
  if (measurement.class === 'A') return mean;
  if (measurement.class === 'B') return 0;
  if (measurement.class === 'AB') return Math.max(0, measurement.quiescentCurrent) / measurement.deviceCount;
  const ratio = currentRatios(measurement.conductionAngle);
  const cosine = Math.cos(0.5 * measurement.conductionAngle);
  return ((-mean / ratio.mean) * cosine) / (1 - cosine);
}

function standingCurrentTooHigh(measurement: StageMeasurement): Outcome<LinearStage> {
  const railCurrent = measurement.ratedPower / (measurement.efficiency * measurement.ratedRail);
  return failure(
    'standing current above rail current',
    `The quiescent current of ${round(measurement.quiescentCurrent)} A is above the ${round(railCurrent)} A that the efficiency gives at full output. One of the two figures is wrong, or the stage is class A.`,
    { quiescentCurrent: measurement.quiescentCurrent, railCurrent },
  );
}

function efficiencyTooHigh(measurement: StageMeasurement, quiescent: number): Outcome<LinearStage> {
  const greatest = greatestEfficiency(measurement, quiescent);
  return failure(
    'efficiency above the class',
    `A drain efficiency of ${round(100 * measurement.efficiency)} % is above what class ${measurement.class} with this bias can reach (${round(100 * greatest)} % with no knee at all). Check the measurement, or choose another class.`,
    { efficiency: measurement.efficiency, greatest },
  );
}

/** Efficiency of a stage whose swing equals the rail, with this bias. */
function greatestEfficiency(measurement: StageMeasurement, quiescent: number): number {
  if (measurement.class === 'A') return 0.5;
  const { ratedPower, ratedRail, deviceCount } = measurement;
  if (measurement.class === 'C') {
    const ratio = currentRatios(measurement.conductionAngle);
    return (0.5 * ratio.fundamental) / ratio.mean;
  }
  const drive = driveForFundamental(quiescent, (2 * ratedPower) / (deviceCount * ratedRail));
  return ratedPower / (deviceCount * ratedRail * meanCurrent(quiescent, drive));
}

function round(value: number): number {
  return Number(value.toPrecision(3));
}
