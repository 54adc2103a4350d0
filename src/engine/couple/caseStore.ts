import type { Design } from '../../../shared/design/schema.ts';
import { type ClosedCase, caseHeatCapacity, steadyCaseAir, tabulateCase } from '../heat/caseAir.ts';
import type { HeatTable } from '../heat/heatTable.ts';
import { periodicInCase, type SinkInCase, steadyInCase, warmUpInCase } from '../heat/sinkInCase.ts';
import { tabulateSinkOverAir } from '../heat/sinkTable.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import type { HeatPath } from './heatPath.ts';
import { coolingTime, type Store, type StoreSegment } from './store.ts';

/** Wall of a small metal case, m, and heat per volume of aluminium, J/(m³ K): they set how slowly the case air follows. Own choice. */
const wallThickness = 1.5e-3;
const wallVolumetricHeat = 2.43e6;
/** Emissivity of the outside of the case by finish; the rows of the emissivity table rounded. */
const caseEmissivity = { bare: 0.1, painted: 0.9 } as const;
/** Hottest case air that is tabulated over the room, K. */
const widestAirRise = 120;

/** Between low and high vents, part of the height of the case. Own choice, cautious. */
const ventHeightShare = 0.5;

/** The case of a design, with its vents if it has some. */
export function closedCaseOf(design: Design): ClosedCase {
  const { surroundings } = design;
  return {
    width: surroundings.caseWidth,
    depth: surroundings.caseDepth,
    height: surroundings.caseHeight,
    emissivity: caseEmissivity[surroundings.caseFinish],
    bottomFree: false,
    ...(surroundings.caseVents === 'vented'
      ? { vents: { area: surroundings.ventArea, height: ventHeightShare * surroundings.caseHeight } }
      : {}),
  };
}

/** Heat that air and walls of the case hold, J/K. */
export function caseCapacityOf(design: Design, pressure: number): number {
  const { ambient } = design.surroundings;
  return caseHeatCapacity(closedCaseOf(design), wallThickness, wallVolumetricHeat, ambient, pressure);
}

/** Mean air temperature inside the case for heat released in it, K. heat: W. */
export function caseAirAt(design: Design, heat: number, pressure: number): number {
  return steadyCaseAir(closedCaseOf(design), Math.max(0, heat), design.surroundings.ambient, pressure).air;
}

/** Heat of the case against the rise of its air over the room. */
export function caseTableOf(design: Design, pressure: number): HeatTable {
  return tabulateCase(closedCaseOf(design), design.surroundings.ambient, pressure);
}

/** A case that sheds more or less heat at every rise. */
export function scaledTable(table: HeatTable, factor: number): HeatTable {
  return {
    heat: (rise) => factor * table.heat(rise),
    slope: (rise) => factor * table.slope(rise),
    rise: (heat) => table.rise(heat / factor),
  };
}

/**
 * A sink inside the closed case: plate and case air are two stores, the second is the air of the first.
 *
 * box: heat of the case against the rise of its air.
 */
export function insideStore(
  design: Design,
  path: HeatPath,
  pressure: number,
  box = caseTableOf(design, pressure),
): Store {
  const ambient = design.surroundings.ambient;
  const model: SinkInCase = {
    sink: tabulateSinkOverAir(path.sink, ambient, ambient + widestAirRise),
    sinkCapacity: path.sink.heatCapacity,
    box,
    boxCapacity: caseCapacityOf(design, pressure),
    ambient,
  };
  const cold = { plate: 0, air: 0 };
  const segmentsOf = (segments: readonly StoreSegment[]) =>
    segments.map(({ duration, plate, caseAir }) => ({ duration, sinkPower: plate, casePower: caseAir }));
  const after = (start: typeof cold, plate: number, caseAir: number, duration: number) =>
    warmUpInCase(model, start, [{ sinkPower: plate, casePower: caseAir, duration }])[0]?.plate ?? start.plate;
  return {
    periodic(segments, guess) {
      const state = periodicInCase(model, segmentsOf(segments), guess);
      return {
        ends: state.ends.map((rises) => rises.plate + ambient),
        highest: state.highest.plate + ambient,
        mean: state.mean.plate + ambient,
        air: state.mean.air + ambient,
        iterations: state.iterations,
        guess: state.start,
      };
    },
    timeToLimit({ plate, caseAir }, limit, added) {
      const settled = steadyInCase(model, plate, caseAir).plate;
      const longest = settledTime(model, plate + caseAir, settled);
      const excess = (time: number) => ambient + after(cold, plate, caseAir, time) + added(time) - limit;
      if (ambient + added(0) >= limit) return 0;
      if (ambient + settled + added(longest) <= limit) return null;
      if (excess(longest) <= 0) return null;
      const found = bracketedRoot(excess, 0, longest, { tolerance: 1e-3 });
      return found.ok ? found.value.root : null;
    },
    warmUp: (segments) =>
      warmUpInCase(model, cold, segmentsOf(segments)).map((rises) => rises.plate + ambient),
    coolingTime: (from, to, air) =>
      coolingTime(
        (time) => ambient + after({ plate: from - ambient, air: air - ambient }, 0, 0, time),
        from,
        to,
        ambient,
      ),
  };
}

/** Longest time to a limit that is looked for, s: nobody holds a key for a month. */
const longestHold = 30 * 86_400;

/** A time in which sink and case together have all but settled, s. */
function settledTime(model: SinkInCase, heat: number, rise: number): number {
  const time = (20 * (model.sinkCapacity + model.boxCapacity) * rise) / heat;
  return heat > 0 ? Math.min(time, longestHold) : longestHold;
}
