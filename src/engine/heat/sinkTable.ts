import { type HeatTable, tabulateHeat } from './heatTable.ts';
import type { Sink } from './sink.ts';

/**
 * Heat of a sink against the rise of its plate, for one temperature of air and surroundings, as a fast table.
 *
 * @param air K
 */
export function tabulateSink(sink: Pick<Sink, 'branches'>, air: number): HeatTable {
  return tabulateHeat(sink.branches.map((law) => (rise: number) => law(air + rise, air)));
}

/** Heat of a sink against rise and air temperature: for a sink that breathes the air of a closed case. */
export interface SinkAirTable {
  /** W at a rise of the plate over the air, K, and an air temperature, K. */
  readonly heat: (rise: number, air: number) => number;
  /** ∂Q/∂(rise), W/K. */
  readonly riseSlope: (rise: number, air: number) => number;
  /** ∂Q/∂(air) at constant rise, W/K. */
  readonly airSlope: (rise: number, air: number) => number;
}

/** Distance between tabulated air temperatures, K. */
const airStep = 25;

/**
 * Tables at even air temperatures, joined by cubic interpolation between them; within 3e-4 of the heat (tested). Air
 * outside the range reads the end of the range.
 *
 * Near the change from one channel correlation to the other the tables of neighbouring air temperatures change over at
 * different rises; each correlation is therefore interpolated over air on its own and the smaller taken after.
 *
 * @param airLow K, coolest air
 * @param airHigh K, warmest air
 */
export function tabulateSinkOverAir(
  sink: Pick<Sink, 'branches'>,
  airLow: number,
  airHigh: number,
): SinkAirTable {
  const intervals = Math.max(3, Math.ceil((airHigh - airLow) / airStep));
  const step = Math.max((airHigh - airLow) / intervals, 1);
  const branches = sink.branches.map((law) =>
    Array.from({ length: intervals + 1 }, (_, k) => {
      const air = airLow + k * step;
      return tabulateHeat([(rise: number) => law(air + rise, air)]);
    }),
  );

  const place = (air: number) => {
    const position = Math.min(Math.max((air - airLow) / step, 0), intervals);
    const first = Math.min(Math.max(Math.floor(position) - 1, 0), intervals - 3);
    return { first, t: position - first };
  };
  const heatOf = (tables: readonly HeatTable[], rise: number, first: number, t: number) =>
    lagrange(
      tables[first]!.heat(rise),
      tables[first + 1]!.heat(rise),
      tables[first + 2]!.heat(rise),
      tables[first + 3]!.heat(rise),
      t,
    );
  const lowest = (rise: number, first: number, t: number) => {
    let best = branches[0]!;
    let least = Infinity;
    for (const tables of branches) {
      const value = Math.abs(heatOf(tables, rise, first, t));
      if (value < least) {
        least = value;
        best = tables;
      }
    }
    return best;
  };
  return {
    heat: (rise, air) => {
      const { first, t } = place(air);
      return heatOf(lowest(rise, first, t), rise, first, t);
    },
    riseSlope: (rise, air) => {
      const { first, t } = place(air);
      const tables = lowest(rise, first, t);
      return lagrange(
        tables[first]!.slope(rise),
        tables[first + 1]!.slope(rise),
        tables[first + 2]!.slope(rise),
        tables[first + 3]!.slope(rise),
        t,
      );
    },
    airSlope: (rise, air) => {
      const { first, t } = place(air);
      const tables = lowest(rise, first, t);
      const slope = lagrangeSlope(
        tables[first]!.heat(rise),
        tables[first + 1]!.heat(rise),
        tables[first + 2]!.heat(rise),
        tables[first + 3]!.heat(rise),
        t,
      );
      return slope / step;
    },
  };
}

/** Cubic through four even points at t = 0, 1, 2, 3, in forward differences. */
function lagrange(a: number, b: number, c: number, d: number, t: number): number {
  const second = a - 2 * b + c;
  const third = d - 3 * c + 3 * b - a;
  return a + t * (b - a + ((t - 1) / 2) * (second + ((t - 2) / 3) * third));
}

function lagrangeSlope(a: number, b: number, c: number, d: number, t: number): number {
  const second = a - 2 * b + c;
  const third = d - 3 * c + 3 * b - a;
  return b - a + ((2 * t - 1) / 2) * second + ((3 * t * t - 6 * t + 2) / 6) * third;
}
