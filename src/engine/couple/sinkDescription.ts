import type { LoggedSink, SinkInput } from '../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../shared/outcome.ts';
import { type AirPath, type Fan, linearFan } from '../heat/fan.ts';
import type { FanOnSink } from '../heat/fanLaws.ts';
import type { Mounting } from '../heat/orientation.ts';
import type { SinkDescription } from '../heat/sink.ts';

/** Shapes along whose fins a fan can blow. */
export function takesFan(shape: SinkInput['shape']): boolean {
  return shape === 'fins' || shape === 'finsBothSides' || shape === 'tunnel';
}

/** Whether the design has a fan that counts. */
export function hasFan(sink: LoggedSink): boolean {
  return sink.fan === 'along' && takesFan(sink.shape);
}

/** Mean fin thickness: as entered, or between root and tip, m. */
export function meanFinThickness(sink: LoggedSink): number {
  return sink.tapered ? (sink.finRoot + sink.finTip) / 2 : sink.finThickness;
}

function mountingOf({ position, tilt }: LoggedSink): Mounting {
  return position === 'tilted' ? { kind: 'tilted', tilt } : { kind: position };
}

function fanCurve(sink: LoggedSink): Outcome<Fan> {
  const { fanFlow, fanPressure, fanMiddleFlow, fanMiddlePressure, fanVoltageShare } = sink;
  if (fanMiddleFlow === null || fanMiddlePressure === null) {
    return success(linearFan(fanPressure, fanFlow, fanVoltageShare));
  }
  if (fanMiddleFlow >= fanFlow || fanMiddlePressure >= fanPressure) {
    return failure(
      'fanCurve',
      'The middle point of the fan must lie between the other two: less flow than the free flow and less pressure than the greatest.',
      { fanMiddleFlow, fanMiddlePressure },
    );
  }
  return success({
    points: [
      { flow: 0, pressure: fanPressure },
      { flow: fanMiddleFlow, pressure: fanMiddlePressure },
      { flow: fanFlow, pressure: 0 },
    ],
    voltageShare: fanVoltageShare,
  });
}

function airPath({ shape, fanPath, bypassSection }: LoggedSink): AirPath {
  if (shape === 'tunnel' || fanPath === 'duct') return { kind: 'duct' };
  return fanPath === 'bypass' ? { kind: 'bypass', section: bypassSection } : { kind: 'open' };
}

/** The fan of a design with the way its air is led; null when there is none. Fails with `fanCurve`. */
export function fanOf(sink: LoggedSink): Outcome<FanOnSink | null> {
  if (!hasFan(sink)) return success(null);
  const fan = fanCurve(sink);
  return fan.ok ? success({ fan: fan.value, path: airPath(sink) }) : fan;
}

/**
 * The sink of a design as the sink model takes it.
 *
 * running: false leaves the fan out, as if it had stopped. conductivity: another than that of the alloy, W/(m K). Fails with `fanCurve` for a fan whose curve does not fall.
 */
export function sinkDescription(
  sink: LoggedSink,
  running = true,
  conductivity?: number,
): Outcome<SinkDescription> {
  const fan = running ? fanOf(sink) : success(null);
  if (!fan.ok) return fan;
  return success({
    shape: sink.shape,
    width: sink.width,
    length: sink.length,
    baseThickness: sink.baseThickness,
    finCount: sink.finCount,
    finHeight: sink.finHeight,
    finThickness: meanFinThickness(sink),
    ...(sink.tapered ? { tipThickness: sink.finTip } : {}),
    alloy: sink.alloy,
    ...(conductivity === undefined ? {} : { conductivity }),
    finish: sink.finish,
    emissivity: sink.emissivity,
    backExposed: sink.backExposed,
    backShare: sink.backShare,
    mass: sink.mass,
    mounting: mountingOf(sink),
    ...(fan.value ? { fan: fan.value } : {}),
    pins: {
      section: sink.pinSection,
      pinThickness: sink.pinThickness,
      pinHeight: sink.pinHeight,
      columns: sink.pinColumns,
      rows: sink.pinRows,
    },
  });
}
