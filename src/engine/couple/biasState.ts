import type { Design } from '../../../shared/design/schema.ts';
import { biasLoopGain, bipolarDrift, mosfetDrift } from '../amplifier/bias.ts';
import { ladderResistance } from '../heat/deviceLadder.ts';
import type { Final } from './final.ts';
import { type HeatPath, ratingRise } from './heatPath.ts';

/** How the quiescent current and the temperature of a device answer each other. */
export interface BiasState {
  /** Standing current of one device, A. */
  readonly current: number;
  /** Its rise with temperature, A/K. */
  readonly drift: number;
  /** From the junction to what the bias follows, K/W. */
  readonly resistance: number;
  /** Stability factor S; at 1 and above the current runs away. */
  readonly loopGain: number;
}

/** Standing current of one device as the design has it, A; null without bias or where nobody knows. */
function standingCurrent(design: Design, final: Final, junction: number): number | null {
  const { amplifier, device } = design;
  if (amplifier.class !== 'A' && amplifier.class !== 'AB') return null;
  const stage = final.stageAt(junction);
  if (stage) return Math.max(0, stage.quiescentPerDevice);
  const atRest = amplifier.readings.find((reading) => reading.power === 0);
  return atRest ? atRest.current / device.count : null;
}

function driftOf({ amplifier }: Design, current: number): number {
  if (amplifier.deviceKind === 'bipolar') {
    return bipolarDrift({ current, emitterResistance: amplifier.biasResistance });
  }
  return mosfetDrift({
    current,
    transconductance: amplifier.transconductance,
    sourceResistance: amplifier.biasResistance,
    thresholdDrift: amplifier.thresholdDrift,
  });
}

/** From the junction to the place of the sensor, per device, K/W; without one the whole way to the air. */
function trackedResistance(design: Design, path: HeatPath): number {
  const { biasTracking } = design.amplifier;
  if (biasTracking === 'case') return path.junctionToCase;
  const toPlate = ladderResistance(path.stages) + path.spreading;
  if (biasTracking === 'plate') return toPlate;
  return toPlate + (path.deviceCount * ratingRise) / path.ratingHeat;
}

/** Stability of the bias of classes A and AB on a rail, V; null for classes without a standing current. */
export function biasState(
  design: Design,
  final: Final,
  path: HeatPath,
  rail: number,
  junction: number,
): BiasState | null {
  const current = standingCurrent(design, final, junction);
  if (current === null) return null;
  const drift = driftOf(design, current);
  const resistance = trackedResistance(design, path);
  return { current, drift, resistance, loopGain: biasLoopGain(rail, drift, resistance) };
}
