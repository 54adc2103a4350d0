import type { Design } from '../../../shared/design/schema.ts';
import { type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import {
  calibrateMeasuredStage,
  type MeasuredStage,
  measuredCurrent,
  type StageReading,
} from '../amplifier/calibrationTable.ts';
import {
  classAEnd,
  type LinearClass,
  type LinearStage,
  railLimitedPower,
  stageCurrent,
} from '../amplifier/linearStage.ts';
import { foldbackShare, networkTransmission, swrAtDrains } from '../amplifier/mismatch.ts';
import { drainPower } from '../amplifier/outputNetwork.ts';
import { switchingEstimate } from '../amplifier/switchingEstimate.ts';
import {
  calibrateSwitchingStage,
  rematchedStage,
  type SwitchingClass,
  type SwitchingStage,
  switchingPoint,
} from '../amplifier/switchingStage.ts';
import { bandTopEdge } from '../hazard/amateurBands.ts';
import { linearStageOf, type WarmStage } from './finalStage.ts';

/** What the final does at one instant of the envelope. Watts, amperes, volts. */
export interface FinalPoint {
  /** RF power that leaves the devices; with a mismatch the net power. */
  readonly rfPower: number;
  /** Rail current, all devices. */
  readonly railCurrent: number;
  /** The rail could not support the amplitude asked for. */
  readonly limited: boolean;
}

/** The load as the devices see it through the output network, at the worst phase. */
export interface SeenLoad {
  /** Standing-wave ratio at the devices. */
  readonly swr: number;
  /** Share of the net power leaving the devices that goes on to the antenna. */
  readonly transmission: number;
  /** Share of the forward power that the protection leaves. */
  readonly foldback: number;
}

/** The final amplifier behind one face, linear or switching, computed or measured. */
export interface Final {
  /** Output follows the envelope (classes A, AB, B); only then is SSB possible. */
  readonly followsEnvelope: boolean;
  /** RF power into a matched load at the devices at PEP if the rail supports it, W. */
  readonly powerAtPep: number;
  /** RF drive absorbed at PEP, W; it scales with the square of the amplitude. */
  readonly drivePower: number;
  /** Heat depends on junction temperature (on-resistance with a coefficient). */
  readonly feelsTemperature: boolean;
  readonly load: SeenLoad;
  /** The stage of a linear class at a junction temperature, K; null for switching and measured finals. */
  stageAt(junction: number): LinearStage | null;
  /** Amplitudes at which the rail current has a kink, at a junction temperature. */
  breaks(junction: number): readonly number[];
  /** State at envelope amplitude 0..1 (relative to PEP), rail and junction temperature. Amplitude 0 is bias without drive. */
  at(amplitude: number, rail: number, junction: number): FinalPoint;
}

type Common = Pick<Final, 'powerAtPep' | 'drivePower' | 'load' | 'followsEnvelope'>;

function linearFinal(common: Common, stage: WarmStage): Final {
  const { powerAtPep, load } = common;
  return {
    ...common,
    feelsTemperature: stage.feelsTemperature,
    stageAt: stage.at,
    breaks(junction) {
      const end = classAEnd(stage.at(junction), powerAtPep);
      return end > 0 && end < 1 ? [end] : [];
    },
    at(amplitude, rail, junction) {
      const now = stage.at(junction);
      const wanted = amplitude * amplitude * powerAtPep;
      const greatest = railLimitedPower(now, rail);
      const limited = wanted > greatest * (1 + 1e-9);
      const forward = limited ? greatest : wanted;
      return {
        rfPower: forward / load.swr,
        railCurrent: stageCurrent(now, forward),
        limited: limited || (amplitude > 0 && stage.lost(junction)),
      };
    },
  };
}

const noBreaks: readonly number[] = [];

function switchingFinal(common: Common, stage: SwitchingStage, feelsTemperature: boolean): Final {
  const off: FinalPoint = { rfPower: 0, railCurrent: 0, limited: false };
  return {
    ...common,
    feelsTemperature,
    stageAt: () => null,
    breaks: () => noBreaks,
    at(amplitude, rail, junction) {
      if (amplitude === 0) return off;
      const point = switchingPoint(stage, { rail, junctionTemperature: junction });
      return { rfPower: point.rfPower / common.load.swr, railCurrent: point.dcCurrent, limited: false };
    },
  };
}

function measuredFinal(common: Common, stage: MeasuredStage): Final {
  return {
    ...common,
    feelsTemperature: false,
    stageAt: () => null,
    breaks: () => noBreaks,
    at(amplitude, rail) {
      const wanted = amplitude * amplitude * common.powerAtPep;
      // On a lower rail than that of the readings the output ends sooner, as the square of the rail.
      const sag = Math.min(1, rail / stage.rail);
      const greatest = sag < 1 ? stage.greatestPower * sag * sag : Number.POSITIVE_INFINITY;
      const limited = wanted > greatest * (1 + 1e-9);
      const forward = limited ? greatest : wanted;
      // Between and beyond readings a curve may promise more than the rail delivers: nothing is better than lossless.
      const least = rail > 0 ? forward / rail : 0;
      return {
        rfPower: rail > 0 ? forward / common.load.swr : 0,
        railCurrent: Math.max(measuredCurrent(stage, forward), least),
        limited,
      };
    },
  };
}

/** Whether a class switches: full output or none. */
export function isSwitching(name: Design['amplifier']['class']): name is SwitchingClass {
  return name === 'D' || name === 'E' || name === 'F';
}

/** Whether the output of a class follows its drive. */
export function isLinearClass(name: Design['amplifier']['class']): boolean {
  return name === 'A' || name === 'AB' || name === 'B';
}

function commonOf({ amplifier }: Design): Common {
  const followsEnvelope = isLinearClass(amplifier.class);
  // Only a stage that follows its drive can be turned down on a fixed rail.
  const foldback = followsEnvelope ? foldbackShare(amplifier.swr, amplifier.foldbackSwr) : 1;
  return {
    followsEnvelope,
    powerAtPep: foldback * drainPower(amplifier.pep, amplifier.outputLoss),
    drivePower: foldback * amplifier.drivePower,
    load: {
      swr: swrAtDrains(amplifier.swr, amplifier.outputLoss),
      transmission: networkTransmission(amplifier.swr, amplifier.outputLoss),
      foldback,
    },
  };
}

/**
 * Prepares the final of a design: calibrated once at its rated power and rail, then run at its PEP.
 * A switching stage cannot back off on a fixed rail: another PEP means another load, which is taken to scale.
 */
export function prepareFinal(design: Design): Outcome<Final> {
  const found = finalOf(design);
  return found.ok ? success(found.value, [...found.notes, ...loadNotes(design)]) : found;
}

function finalOf(design: Design): Outcome<Final> {
  const { amplifier } = design;
  const common = commonOf(design);
  if (isSwitching(amplifier.class)) return switchingOf(design, amplifier.class, common);
  if (amplifier.calibration === 'readings') return measuredOf(design, common);
  const stage = linearStageOf(design, amplifier.class as LinearClass);
  return stage.ok ? success(linearFinal(common, stage.value), stage.notes) : stage;
}

/** Readings carried to the plane of the devices; classes without bias need none at rest. */
export function readingsAtDevices({ amplifier }: Design): readonly StageReading[] {
  const readings = amplifier.readings.map(({ power, current }) => ({
    rfPower: drainPower(power, amplifier.outputLoss),
    dcCurrent: current,
  }));
  const restless = amplifier.class !== 'A' && amplifier.class !== 'AB';
  const atRest = readings.some((reading) => reading.rfPower === 0);
  return restless && !atRest ? [{ rfPower: 0, dcCurrent: 0 }, ...readings] : readings;
}

function measuredOf(design: Design, common: Common): Outcome<Final> {
  const { amplifier } = design;
  const stage = calibrateMeasuredStage(readingsAtDevices(design), amplifier.ratedRail);
  if (!stage.ok) return stage;
  const beyond = common.powerAtPep > stage.value.greatestPower * (1 + 1e-9);
  const notes: readonly Note[] = beyond
    ? [
        note(
          'outside validity',
          'beyondReadings',
          'The power asked for is above the highest reading; the current goes on in a straight line over the amplitude.',
        ),
      ]
    : [];
  return success(measuredFinal(common, stage.value), [...stage.notes, ...notes]);
}

function switchingOf(design: Design, className: SwitchingClass, common: Common): Outcome<Final> {
  const { amplifier, device } = design;
  const rated = switchingRating(design, className);
  if (!rated.ok) return rated;
  const stage = calibrateSwitchingStage({
    class: className,
    ratedPower: rated.value.power,
    ratedRail: amplifier.ratedRail,
    efficiency: rated.value.efficiency,
    onResistance: amplifier.onResistance,
    onResistanceCoefficient: amplifier.onResistanceCoefficient,
    deviceCount: device.count,
  });
  if (!stage.ok) return stage;
  const feels = amplifier.onResistance > 0 && amplifier.onResistanceCoefficient > 0;
  return success(switchingFinal(common, rematchedStage(stage.value, common.powerAtPep), feels), stage.notes);
}

/** Efficiency of a switching stage and the power at the devices where it holds, W. */
function switchingRating(
  design: Design,
  className: SwitchingClass,
): Outcome<{ power: number; efficiency: number }> {
  const { amplifier, device } = design;
  const power = drainPower(amplifier.ratedPep, amplifier.outputLoss);
  if (amplifier.calibration === 'efficiency') return success({ power, efficiency: amplifier.efficiency });
  if (amplifier.calibration === 'devices') {
    const found = switchingEstimate({
      class: className,
      power,
      rail: amplifier.ratedRail,
      deviceCount: device.count,
      onResistance: amplifier.onResistance,
      outputCapacitance: amplifier.outputCapacitance,
      frequency: bandTopEdge(design.antenna.band),
      otherLoss: amplifier.otherLoss,
    });
    return found.ok ? success({ power, efficiency: found.value.efficiency }, found.notes) : found;
  }
  const stage = calibrateMeasuredStage(readingsAtDevices(design), amplifier.ratedRail);
  if (!stage.ok) return stage;
  const { greatestPower } = stage.value;
  const current = measuredCurrent(stage.value, greatestPower);
  return success({ power: greatestPower, efficiency: greatestPower / (amplifier.ratedRail * current) });
}

function loadNotes({ amplifier, device }: Design): readonly Note[] {
  const notes: Note[] = [];
  if (amplifier.swr > 1 && !isLinearClass(amplifier.class)) {
    notes.push(
      note(
        'outside validity',
        'mismatchOfSwitching',
        `A class ${amplifier.class} stage into a mismatch leaves its waveforms; heat is taken as for a linear stage at the worst phase and can be higher.`,
      ),
    );
  }
  if (amplifier.arrangement === 'pushPull' && device.count % 2 === 1) {
    notes.push(
      note(
        'assumed',
        'oddPushPull',
        'A push-pull stage has an even number of devices; the load is shared as if it had.',
      ),
    );
  }
  return notes;
}
