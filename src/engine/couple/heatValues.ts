import type { Design } from '../../../shared/design/schema.ts';
import { type Note, note } from '../../../shared/outcome.ts';
import type { PlatePart } from '../../../shared/plateLayout.ts';
import { type PlacedPart, services } from '../../../shared/solution.ts';
import { writeQuantity } from '../quantity/write.ts';
import { type HeatPath, ratingRise } from './heatPath.ts';
import { type Prepared, withFanStopped } from './prepare.ts';
import { cycleAt, holdTimeOf } from './serviceCycle.ts';
import { hasFan } from './sinkDescription.ts';
import type { ValueList } from './values.ts';

export function placedPart({ key, label, face, source }: PlatePart): PlacedPart {
  const larger = source.width > face.width || source.length > face.length;
  return { key, label, ...face, spreader: larger ? { width: source.width, length: source.length } : null };
}

/** Parts on the plate as the page draws them. */
export function placesOf(path: HeatPath): readonly PlacedPart[] {
  return path.parts.map(placedPart);
}

/** Masses and, with a fan, its operating point in room air. */
export function putSink(list: ValueList, { sink }: HeatPath, design: Design): void {
  const point = sink.blown?.(design.surroundings.ambient);
  list.putAll({
    sinkDrawnMass: sink.drawnMass,
    massRatio: design.sink.mass === null ? null : sink.mass / sink.drawnMass,
    fanFlow: point?.channelFlow,
    fanDrop: point?.pressure.drop,
  });
}

/**
 * What becomes of the design when its fan stops: rating, junctions and hold times, always found beside the fan's own.
 *
 * Returns a note when a junction would pass its design limit.
 */
export function stillFigures(list: ValueList, prepared: Prepared): readonly Note[] {
  const { design, limits } = prepared;
  if (!hasFan(design.sink)) return [];
  const { path, coupled } = withFanStopped(prepared);
  if (path.ok) list.put('ratingResistanceStill', ratingRise / path.value.ratingHeat);
  if (!coupled.ok) return [];
  let hottest = 0;
  for (const service of services) {
    const state = cycleAt(coupled.value, service, design.service.transmitShare);
    const hold = holdTimeOf(coupled.value, service, limits.design);
    if (hold.ok) list.put(`${service}.holdTimeStill`, hold.value);
    if (!state.ok) continue;
    list.put(`${service}.junctionPeakStill`, state.value.junctionPeak);
    hottest = Math.max(hottest, state.value.junctionPeak);
  }
  return hottest > limits.design ? [stoppedNote(hottest)] : [];
}

function stoppedNote(hottest: number): Note {
  return note(
    'limit',
    'fanStoppedHot',
    `With the fan stopped a junction would reach ${writeQuantity(hottest, 'temperature')} in the planned duty. Let something notice a stopped fan.`,
    { hottest },
  );
}
