import type { DeviceInput } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import { type FosterStage, ladderResistance, singleStage } from '../heat/deviceLadder.ts';
import { fosterOf } from '../heat/fosterCauer.ts';
import { fitImpedance } from '../heat/impedanceFit.ts';

/** Stages fitted to points reach the stated resistance within a per cent; this makes it exact. */
function scaledTo(stages: readonly FosterStage[], resistance: number): readonly FosterStage[] {
  const factor = resistance / ladderResistance(stages);
  return stages.map((stage) => ({ ...stage, resistance: stage.resistance * factor }));
}

function fittedStages(device: DeviceInput): Outcome<readonly FosterStage[]> {
  const points = [...device.impedancePoints].sort((a, b) => a.time - b.time);
  const fit = fitImpedance(points, device.junctionToCase);
  return fit.ok ? success(scaledTo(fit.value.stages, device.junctionToCase), fit.notes) : fit;
}

/** Steady junction to case of one device, K/W: as stated, or the sum of its ladder. */
export function junctionToCaseOf(device: DeviceInput): number {
  if (device.ladder === 'foster') return ladderResistance(device.fosterStages);
  if (device.ladder === 'cauer') return device.cauerStages.reduce((sum, stage) => sum + stage.resistance, 0);
  return device.junctionToCase;
}

/**
 * Junction over case of one device as curve-fit stages, whatever way the design knows it: one value, points of the
 * transient curve, or a ladder.
 *
 * Fails with `impedancePoints` when the points are no rising curve below the stated resistance.
 */
export function deviceStages(device: DeviceInput): Outcome<readonly FosterStage[]> {
  switch (device.ladder) {
    case 'foster':
      return success(device.fosterStages);
    case 'cauer':
      return success(fosterOf(device.cauerStages));
    case 'points':
      return fittedStages(device);
    default:
      return success(singleStage(device.junctionToCase, device.junctionTime));
  }
}
