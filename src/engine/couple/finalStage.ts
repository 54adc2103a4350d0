import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { onResistanceAt } from '../amplifier/bias.ts';
import {
  calibrateLinearStage,
  type LinearClass,
  type LinearStage,
  railLimitedPower,
} from '../amplifier/linearStage.ts';
import { antennaPower, drainPower } from '../amplifier/outputNetwork.ts';
import { type SaturatingDevices, saturatingOnLoad, saturatingStage } from '../amplifier/saturationKnee.ts';
import { loadPerDeviceOf, primaryLoadOf } from '../amplifier/stageLoad.ts';
import { buildableTurns, reloadedStage, type Turns } from '../amplifier/turnsRatio.ts';
import { joinUnit, writeNumber } from '../quantity/write.ts';
import { seriesDropOf } from './supplyVoltage.ts';

/** A linear stage that may change with the temperature of its junctions. */
export interface WarmStage {
  readonly feelsTemperature: boolean;
  /** The stage at a junction temperature, K. */
  at(junction: number): LinearStage;
  /** Whether the power of the load is out of reach with a junction this hot, K. */
  lost(junction: number): boolean;
}

/** On-resistance of data sheets holds here, K. */
const sheetTemperature = 298.15;
const bisections = 40;

/** Rail that the final finds without load, V: the converter's output, or the source itself. */
export function nominalRail(design: Design): number {
  const { converter, source } = design;
  if (converter.kind !== 'none') return converter.outputVoltage;
  return Math.max(0, source.openVoltage - seriesDropOf(design));
}

/**
 * The stage of a linear class from whatever the builder knows of it: one efficiency, or the data of its devices. A turns
 * ratio fixes the load; without one the load is taken as wound for the stated power.
 *
 * Fails by name when the figures contradict each other or the ratio cannot make the power.
 */
export function linearStageOf(design: Design, className: LinearClass): Outcome<WarmStage> {
  const stage =
    design.amplifier.calibration === 'devices'
      ? stageOfDevices(design, className)
      : stageOfEfficiency(design, className);
  if (!stage.ok) return stage;
  const unfit = ratioUnfit(design, stage.value.at(sheetTemperature));
  return unfit ?? stage;
}

function stageOfEfficiency(design: Design, className: LinearClass): Outcome<WarmStage> {
  const { amplifier, device } = design;
  const found = calibrateLinearStage({
    class: className,
    ratedPower: drainPower(amplifier.ratedPep, amplifier.outputLoss),
    ratedRail: amplifier.ratedRail,
    efficiency: amplifier.efficiency,
    quiescentCurrent: amplifier.quiescentCurrent,
    conductionAngle: amplifier.conductionAngle,
    deviceCount: device.count,
  });
  if (!found.ok) return found;
  const load = woundLoad(design);
  const stage = load === null ? found.value : reloadedStage(found.value, load);
  return success({ feelsTemperature: false, at: () => stage, lost: () => false }, found.notes);
}

/** Load per device of the transformer as wound, Ω; null if its ratio is not given. */
function woundLoad({ amplifier, device }: Design): number | null {
  if (amplifier.turnsRatio === null) return null;
  return loadPerDeviceOf(amplifier.arrangement, device.count, amplifier.turnsRatio);
}

function devicesAt(design: Design, className: LinearClass, junction: number): SaturatingDevices {
  const { amplifier, device } = design;
  return {
    class: className,
    rail: amplifier.ratedRail,
    quiescentCurrent: amplifier.quiescentCurrent,
    deviceCount: device.count,
    saturationVoltage: amplifier.saturationVoltage,
    onResistance: onResistanceAt(amplifier.onResistance, amplifier.onResistanceCoefficient, junction),
    conductionAngle: amplifier.conductionAngle,
  };
}

function stageOfDevices(design: Design, className: LinearClass): Outcome<WarmStage> {
  const load = woundLoad(design);
  const { amplifier } = design;
  const power = drainPower(amplifier.ratedPep, amplifier.outputLoss);
  const feels = amplifier.onResistance > 0 && amplifier.onResistanceCoefficient > 0;
  const stageAt = (junction: number) => {
    const devices = devicesAt(design, className, junction);
    return load === null ? saturatingStage({ ...devices, power }) : saturatingOnLoad(devices, load);
  };
  const cold = stageAt(sheetTemperature);
  if (!cold.ok) return cold;
  if (!feels) {
    return success({ feelsTemperature: false, at: () => cold.value, lost: () => false }, cold.notes);
  }
  const hottest = hottestReached(stageAt);
  const stageWithin = (junction: number): LinearStage => {
    const found = stageAt(Math.min(junction, hottest()));
    if (!found.ok) return cold.value;
    // On a wound load only the knee moves: bias and load stay as they were built.
    return load === null ? found.value : { ...cold.value, knee: found.value.knee };
  };
  return success(
    { feelsTemperature: true, at: remembered(stageWithin), lost: (junction) => junction > hottest() },
    cold.notes,
  );
}

/** A junction no device survives, K. */
const beyondAll = 1000;

/** The hottest junction at which a stage still exists, K; searched once, when it is first asked for. */
function hottestReached(stageAt: (junction: number) => Outcome<LinearStage>): () => number {
  let known: number | undefined;
  return () => {
    if (known !== undefined) return known;
    let reached = sheetTemperature;
    let lost = beyondAll;
    if (stageAt(beyondAll).ok) reached = beyondAll;
    else {
      for (let i = 0; i < bisections; i += 1) {
        const middle = 0.5 * (reached + lost);
        if (stageAt(middle).ok) reached = middle;
        else lost = middle;
      }
    }
    known = reached;
    return known;
  };
}

/** A whole envelope is asked for at one temperature, so the last answer is kept. */
function remembered(make: (junction: number) => LinearStage): (junction: number) => LinearStage {
  let last = Number.NaN;
  let stage: LinearStage | undefined;
  return (junction) => {
    if (stage === undefined || junction !== last) {
      stage = make(junction);
      last = junction;
    }
    return stage;
  };
}

const watts = (value: number) => joinUnit(writeNumber(value, 3, true), 'W');
const volts = (value: number) => joinUnit(writeNumber(value, 3, true), 'V');

/** Turns as a builder says them: secondary over primary. */
export function turnsText(turns: Turns): string {
  return `${turns.secondary} : ${turns.primary}`;
}

function ratioUnfit(design: Design, stage: LinearStage): Outcome<never> | null {
  const { amplifier, device } = design;
  if (amplifier.turnsRatio === null) return null;
  const rail = nominalRail(design);
  const asked = drainPower(amplifier.pep, amplifier.outputLoss);
  const greatest = railLimitedPower(stage, rail);
  if (asked <= greatest * (1 + 1e-9)) return null;
  const primary = primaryLoadOf(amplifier.arrangement, device.count, stage.loadPerDevice);
  const wanted = greatest > 0 ? Math.sqrt((50 / primary) * (asked / greatest)) : Number.NaN;
  const reaching = Number.isFinite(wanted) ? buildableTurns(wanted).reaching : null;
  const cure = reaching
    ? ` Secondary to primary ${turnsText(reaching)} would make it; so would a higher rail.`
    : ' A higher rail or less power would help.';
  return failure(
    'ratioCannotMakePower',
    `This turns ratio of ${writeNumber(amplifier.turnsRatio, 3, true)} cannot make ${watts(amplifier.pep)}: from ${volts(rail)} it ends at ${watts(antennaPower(greatest, amplifier.outputLoss))}.${cure}`,
    { asked: amplifier.pep, greatest: antennaPower(greatest, amplifier.outputLoss), rail },
  );
}
