import type { Design } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import {
  calibrateLinearStage,
  type LinearStage,
  railLimitedPower,
  stageCurrent,
} from '../amplifier/linearStage.ts';
import { drainPower } from '../amplifier/outputNetwork.ts';
import {
  calibrateSwitchingStage,
  rematchedStage,
  type SwitchingStage,
  switchingPoint,
} from '../amplifier/switchingStage.ts';

/** What the final does at one instant of the envelope. Watts, amperes, volts. */
export interface FinalPoint {
  /** RF power at the devices. */
  readonly rfPower: number;
  /** Rail current, all devices. */
  readonly railCurrent: number;
  /** The rail could not support the amplitude asked for. */
  readonly limited: boolean;
}

/** The final amplifier behind one face, linear or switching. */
export interface Final {
  /** Output follows the envelope (classes A, AB, B); only then is SSB possible. */
  readonly followsEnvelope: boolean;
  /** RF power at the devices at PEP if the rail supports it, W. */
  readonly powerAtPep: number;
  /** RF drive absorbed at PEP, W; it scales with the square of the amplitude. */
  readonly drivePower: number;
  /** Heat depends on junction temperature (on-resistance with a coefficient). */
  readonly feelsTemperature: boolean;
  readonly linear: LinearStage | null;
  /** State at envelope amplitude 0..1 (relative to PEP), rail and junction temperature. Amplitude 0 is bias without drive. */
  at(amplitude: number, rail: number, junction: number): FinalPoint;
}

function linearFinal(
  stage: LinearStage,
  powerAtPep: number,
  drivePower: number,
  followsEnvelope: boolean,
): Final {
  return {
    followsEnvelope,
    powerAtPep,
    drivePower,
    feelsTemperature: false,
    linear: stage,
    at(amplitude, rail) {
      const wanted = amplitude * amplitude * powerAtPep;
      const greatest = railLimitedPower(stage, rail);
      const limited = wanted > greatest * (1 + 1e-9);
      const rfPower = limited ? greatest : wanted;
      return { rfPower, railCurrent: stageCurrent(stage, rfPower), limited };
    },
  };
}

function switchingFinal(
  stage: SwitchingStage,
  powerAtPep: number,
  drivePower: number,
  feelsTemperature: boolean,
): Final {
  const off: FinalPoint = { rfPower: 0, railCurrent: 0, limited: false };
  return {
    followsEnvelope: false,
    powerAtPep,
    drivePower,
    feelsTemperature,
    linear: null,
    at(amplitude, rail, junction) {
      if (amplitude === 0) return off;
      const point = switchingPoint(stage, { rail, junctionTemperature: junction });
      return { rfPower: point.rfPower, railCurrent: point.dcCurrent, limited: false };
    },
  };
}

/**
 * Prepares the final of a design: calibrated once at its rated power and rail, then run at its PEP.
 * A switching stage cannot back off on a fixed rail: another PEP means another load, which is taken to scale.
 */
export function prepareFinal(design: Design): Outcome<Final> {
  const { amplifier, device } = design;
  const powerAtPep = drainPower(amplifier.pep, amplifier.outputLoss);
  const ratedPower = drainPower(amplifier.ratedPep, amplifier.outputLoss);
  const drive = amplifier.drivePower;
  if (amplifier.class === 'D' || amplifier.class === 'E' || amplifier.class === 'F') {
    const stage = calibrateSwitchingStage({
      class: amplifier.class,
      ratedPower,
      ratedRail: amplifier.ratedRail,
      efficiency: amplifier.efficiency,
      onResistance: amplifier.onResistance,
      onResistanceCoefficient: amplifier.onResistanceCoefficient,
      deviceCount: device.count,
    });
    if (!stage.ok) return stage;
    const feels = amplifier.onResistance > 0 && amplifier.onResistanceCoefficient > 0;
    return success(
      switchingFinal(rematchedStage(stage.value, powerAtPep), powerAtPep, drive, feels),
      stage.notes,
    );
  }
  const stage = calibrateLinearStage({
    class: amplifier.class,
    ratedPower,
    ratedRail: amplifier.ratedRail,
    efficiency: amplifier.efficiency,
    quiescentCurrent: amplifier.quiescentCurrent,
    conductionAngle: amplifier.conductionAngle,
    deviceCount: device.count,
  });
  if (!stage.ok) return stage;
  return success(linearFinal(stage.value, powerAtPep, drive, amplifier.class !== 'C'), stage.notes);
}
