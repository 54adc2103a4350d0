import type { Design } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import { converterFields, converterKeys } from '../../../shared/plateLayout.ts';
import type { PlateMap, Service, SuggestedPlaces, WarmPart } from '../../../shared/solution.ts';
import { ladderResistance } from '../heat/deviceLadder.ts';
import { suggestPlaces } from '../heat/placement.ts';
import { type HeatPath, plateOf } from './heatPath.ts';
import { placedPart } from './heatValues.ts';
import { prepare } from './prepare.ts';
import { type CycleState, cycleAt } from './serviceCycle.ts';

/** Cells of the map along the longer and the shorter side of a usual plate. */
export const mapColumns = 160;
export const mapRows = 100;

/** Heat of each part when the junction is hottest, W. */
function heatsOf(path: HeatPath, state: CycleState): number[] {
  const devices = path.parts.length - path.converterShares.length;
  return path.parts.map((_, i) =>
    i < devices ? state.heatAtPeak : path.converterShares[i - devices]! * state.converterHeatAtPeak,
  );
}

function stateOf(design: Design, service: Service): Outcome<{ path: HeatPath; state: CycleState }> {
  const { path, coupled } = prepare(design);
  if (!path.ok) return path;
  if (!coupled.ok) return coupled;
  const state = cycleAt(coupled.value, service, design.service.transmitShare);
  return state.ok ? success({ path: coupled.value.path, state: state.value }) : state;
}

/** Hottest cell under a part, and its middle, K over the plate's mean. */
function peakUnder(
  path: HeatPath,
  index: number,
  heats: readonly number[],
  rises: Float64Array,
  grid: { columns: number; rows: number; width: number; length: number },
): number {
  const { source } = path.parts[index]!;
  const { columns, rows, width, length } = grid;
  let peak = path.spread.pointRise(source.x, source.y, heats);
  for (let j = 0; j < rows; j += 1) {
    if (Math.abs(((j + 0.5) * length) / rows - source.y) > source.length / 2) continue;
    for (let i = 0; i < columns; i += 1) {
      if (Math.abs(((i + 0.5) * width) / columns - source.x) > source.width / 2) continue;
      peak = Math.max(peak, rises[j * columns + i]!);
    }
  }
  return peak;
}

function warmParts(
  path: HeatPath,
  state: CycleState,
  heats: readonly number[],
  peakOf: (index: number) => number,
): WarmPart[] {
  return path.parts.map((part, i) => {
    const mean = path.spread.meanMatrix[i]!.reduce((sum, perWatt, j) => sum + perWatt * heats[j]!, 0);
    return {
      ...placedPart(part),
      heat: heats[i]!,
      mean: state.plateAtPeak + mean,
      peak: state.plateAtPeak + peakOf(i),
    };
  });
}

/**
 * Temperature of the plate all over when the junction is hottest in the planned duty of a service, and mean and peak
 * under every part. Heat that has no place (the output network) warms the plate evenly.
 *
 * columns, rows: cells of the map.
 */
export function plateMap(
  design: Design,
  service: Service,
  columns = mapColumns,
  rows = mapRows,
): Outcome<PlateMap> {
  const found = stateOf(design, service);
  if (!found.ok) return found;
  const { path, state } = found.value;
  const heats = heatsOf(path, state);
  const rises = path.spread.field(heats, columns, rows);
  const grid = { columns, rows, width: design.sink.width, length: design.sink.length };
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  const temperature = rises.map((rise) => {
    lowest = Math.min(lowest, rise);
    highest = Math.max(highest, rise);
    return state.plateAtPeak + rise;
  });
  const parts = warmParts(path, state, heats, (i) => peakUnder(path, i, heats, rises, grid));
  return success({
    service,
    columns,
    rows,
    temperature,
    lowest: state.plateAtPeak + lowest,
    highest: Math.max(state.plateAtPeak + highest, ...parts.map((part) => part.peak)),
    plateMean: state.plateAtPeak,
    parts,
  });
}

/** Least distance of parts from the edge and from each other, m; own choice: room for a screw and a pad. */
const edgeRoom = 0.002;
const partRoom = 0.003;

/**
 * Places for all parts that keep the hottest junction (or, of the converter, the plate under it) as cool as found, on
 * the plate and apart.
 *
 * effort: work the search may take, as in `PlacementRules`. Fails with `partsDoNotFit` where they cannot stand with that
 * much room.
 */
export function suggestedPlaces(design: Design, service: Service, effort?: number): Outcome<SuggestedPlaces> {
  // Parts that stand wrong now must not keep the sheet from finding better places.
  const freed = withoutPlaces(design);
  const before = stateOf(design, service);
  const found = before.ok ? before : stateOf(freed, service);
  if (!found.ok) return found;
  const { path, state } = found.value;
  const heats = heatsOf(path, state);
  const aboveFace = ladderResistance(path.stages);
  const placement = suggestPlaces(
    plateOf(design, path),
    path.parts.map(({ key, source }, i) => ({
      width: source.width,
      length: source.length,
      power: heats[i]!,
      ownRise: key === 'device' ? heats[i]! * aboveFace : 0,
    })),
    {
      edge: edgeRoom,
      apart: partRoom,
      present: path.parts.map(({ source }) => ({ x: source.x, y: source.y })),
      ...(effort === undefined ? {} : { effort }),
    },
  );
  if (!placement.ok) return placement;
  const { places } = placement.value;
  const after = stateOf(withPlaces(design, places), service);
  const saved = before.ok && after.ok ? before.value.state.junctionPeak - after.value.state.junctionPeak : 0;
  return success({ places, saved: Math.max(0, saved) });
}

function withoutPlaces(design: Design): Design {
  let { sink } = design;
  for (const key of converterKeys(design)) {
    const field = converterFields[key];
    sink = { ...sink, [field]: { ...sink[field], x: null, y: null } };
  }
  return { ...design, device: { ...design.device, places: [] }, sink };
}

/** The design with its parts at these places, devices first. */
function withPlaces(design: Design, places: readonly { x: number; y: number }[]): Design {
  const { count } = design.device;
  let { sink } = design;
  converterKeys(design).forEach((key, k) => {
    const field = converterFields[key];
    sink = { ...sink, [field]: { ...sink[field], ...places[count + k]! } };
  });
  return {
    ...design,
    device: { ...design.device, places: places.slice(0, count).map(({ x, y }) => ({ x, y })) },
    sink,
  };
}
