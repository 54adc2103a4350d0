import { type Note, note } from '../../../shared/outcome.ts';
import { airProperties } from './air.ts';
import type { PreparedFinArray } from './finArray.ts';
import {
  channelSection,
  type ForcedHeat,
  forcedHeat,
  forcedRange,
  laminarReynolds,
  type PressureDrop,
  pressureDrop,
} from './forcedAir.ts';
import { risingRoot } from './monotoneRoot.ts';

/**
 * A fan at its rated voltage: points of its curve, flow in m³/s rising, pressure in Pa falling, joined by straight lines.
 * Two points, (0, p0) and (q0, 0), underrate a real axial fan in mid-range, which is cautious.
 */
export interface Fan {
  readonly points: readonly { readonly flow: number; readonly pressure: number }[];
  /** Running over rated voltage: flow goes with it, pressure with its square. */
  readonly voltageShare: number;
}

/** How the air is led: all of it through the channels, past them too with a known or an unknown free section. */
export type AirPath =
  | { readonly kind: 'duct' }
  /** Free section beside the channels inside the duct, m². */
  | { readonly kind: 'bypass'; readonly section: number }
  | { readonly kind: 'open' };

/** Part of the ducted flow that is left in the channels of a fan that just blows at a sink (own choice). */
const openShare = 0.5;

/** Of the fastest flow; fine, because a wide bypass leaves little for the channels. */
const velocityTolerance = 1e-13;

/** The fan of two figures of its data sheet. */
export function linearFan(stalledPressure: number, freeFlow: number, voltageShare = 1): Fan {
  return {
    points: [
      { flow: 0, pressure: stalledPressure },
      { flow: freeFlow, pressure: 0 },
    ],
    voltageShare,
  };
}

/** Flow at which a fan against no resistance ends, m³/s. */
export function freeFlow(fan: Fan): number {
  const last = fan.points.at(-1);
  return (last?.flow ?? 0) * fan.voltageShare;
}

/** Pressure of the fan at a flow, Pa; negative beyond its free flow, along the last line. */
export function fanPressure(fan: Fan, flow: number): number {
  const share = fan.voltageShare;
  if (!(share > 0) || fan.points.length < 2) return 0;
  const rated = flow / share;
  const last = fan.points.length - 2;
  let k = 0;
  while (k < last && rated > fan.points[k + 1]!.flow) k++;
  const a = fan.points[k]!;
  const b = fan.points[k + 1]!;
  const width = b.flow - a.flow;
  const slope = width > 0 ? (b.pressure - a.pressure) / width : 0;
  return (a.pressure + slope * (rated - a.flow)) * share * share;
}

export interface FanPoint {
  /** Through the channels, m³/s. */
  readonly channelFlow: number;
  /** Of the fan, m³/s. */
  readonly fanFlow: number;
  /** Mean in the channels, m/s. */
  readonly velocity: number;
  readonly pressure: PressureDrop;
}

/**
 * Where fan and sink agree: the flow at which the fan's pressure is the pressure drop of the sink. One point, since the
 * one falls and the other rises. With a known bypass the same pressure drives one velocity head through it; with an open
 * sink half of the ducted flow is taken.
 *
 * @param filmTemperature of the air in the channels, K
 * @returns zero flow for a stopped fan
 */
export function operatingPoint(
  prepared: PreparedFinArray,
  fan: Fan,
  path: AirPath,
  filmTemperature: number,
  pressure: number,
): FanPoint {
  const air = airProperties(filmTemperature, pressure);
  const section = channelSection(prepared);
  const bypass = path.kind === 'bypass' ? Math.max(path.section, 0) : 0;
  const fanFlowAt = (velocity: number, drop: number) =>
    velocity * section + bypass * Math.sqrt((2 * drop) / air.density);
  const excess = (velocity: number) => {
    const { drop } = pressureDrop(prepared, velocity, air);
    return drop - fanPressure(fan, fanFlowAt(velocity, drop));
  };
  const fastest = freeFlow(fan) / section;
  const ducted = fastest > 0 ? risingRoot(excess, 0, fastest / 2, velocityTolerance * fastest, fastest) : 0;
  const velocity = path.kind === 'open' ? openShare * ducted : ducted;
  const drop = pressureDrop(prepared, velocity, air);
  return {
    channelFlow: velocity * section,
    fanFlow: path.kind === 'open' ? ducted * section : fanFlowAt(velocity, drop.drop),
    velocity,
    pressure: drop,
  };
}

export interface FanCooling extends ForcedHeat {
  readonly point: FanPoint;
  readonly notes: readonly Note[];
}

/**
 * Heat of a fan-cooled sink at a plate temperature, W, with the operating point for the air of that state.
 *
 * @param prepared fins along the air
 * @param inlet temperature of the air that enters, K
 */
export function fanCooling(
  prepared: PreparedFinArray,
  fan: Fan,
  path: AirPath,
  plate: number,
  inlet: number,
  pressure: number,
): FanCooling {
  const point = operatingPoint(prepared, fan, path, (plate + inlet) / 2, pressure);
  const heat = forcedHeat(prepared, point.velocity, plate, inlet, pressure);
  return { ...heat, point, notes: fanNotes(point, heat, path) };
}

function fanNotes(point: FanPoint, heat: ForcedHeat, path: AirPath): readonly Note[] {
  const notes: Note[] = [];
  if (point.velocity <= 0) {
    notes.push(note('limit', 'fanStopped', 'The fan moves no air; see the sink without it.'));
  }
  if (point.pressure.reynolds > laminarReynolds) {
    notes.push(
      note(
        'outside validity',
        'flowTurbulent',
        'The air between the fins is so fast that it turns turbulent; flow and cooling are extrapolated.',
        { reynolds: point.pressure.reynolds },
      ),
    );
  }
  if (heat.reynolds > forcedRange.highest || (heat.reynolds > 0 && heat.reynolds < forcedRange.lowest)) {
    notes.push(
      note(
        'outside validity',
        'forcedRange',
        'The flow is outside the range in which the correlation for blown fins was tested.',
        { reynolds: heat.reynolds },
      ),
    );
  }
  if (path.kind === 'open') {
    notes.push(
      note(
        'assumed',
        'openFan',
        'Without a duct much of the air goes round the fins; half of the ducted flow is taken.',
      ),
    );
  }
  return notes;
}
