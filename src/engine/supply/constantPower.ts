import { failure, type Outcome, success } from '../../../shared/outcome.ts';

export interface SourcePath {
  /** Open-circuit voltage of the source, V. */
  readonly openVoltage: number;
  /** Voltage of a series diode, V. */
  readonly seriesDrop: number;
  /** Source and path together, Ω. */
  readonly resistance: number;
}

export interface ConstantPowerPoint {
  /** At the load, V. */
  readonly voltage: number;
  readonly current: number;
  /** Greatest power that source and path can deliver, W; null without resistance. */
  readonly greatestPower: number | null;
  /** Power drawn over the greatest power, 0..1. */
  readonly loading: number;
}

/**
 * Voltage at a constant-power load behind a resistance, V, or −1 when there is no such point.
 *
 * V = (V0 + √(V0² − 4 R P))/2: the upper root, the stable one (R < V²/P).
 * drive: V0 = open voltage less the series drop, V; resistance: Ω; power: W.
 */
export function constantPowerVoltage(drive: number, resistance: number, power: number): number {
  const discriminant = drive * drive - 4 * resistance * power;
  if (drive <= 0 || discriminant < 0) return -1;
  return (drive + Math.sqrt(discriminant)) / 2;
}

/** Greatest power a source with resistance can deliver, W: V0²/(4 R), at half the voltage. Null without resistance. */
export function greatestPower(drive: number, resistance: number): number | null {
  if (resistance <= 0) return null;
  return (drive * drive) / (4 * resistance);
}

/** Greatest power while the load keeps at least `lowestVoltage`, W: Vmin (V0 − Vmin)/R above half of V0. */
export function greatestPowerAbove(drive: number, resistance: number, lowestVoltage: number): number | null {
  const whole = greatestPower(drive, resistance);
  if (whole === null || lowestVoltage <= drive / 2) return whole;
  return Math.max(0, (lowestVoltage * (drive - lowestVoltage)) / resistance);
}

/**
 * Operating point of one or several constant-power loads at the end of a path; their powers add.
 *
 * powers: W each, not negative. Errors: `noDrive` when the series drop takes all the voltage, `collapse` when the
 * loads ask for more than V0²/(4 R). Source: own derivation; the time-domain behaviour was checked by simulation.
 */
export function constantPowerPoint(path: SourcePath, powers: readonly number[]): Outcome<ConstantPowerPoint> {
  const drive = path.openVoltage - path.seriesDrop;
  if (drive <= 0) return noDrive(path.openVoltage, path.seriesDrop);
  let power = 0;
  for (const one of powers) power += one;
  const voltage = constantPowerVoltage(drive, path.resistance, power);
  const greatest = greatestPower(drive, path.resistance);
  if (voltage < 0) return collapse(power, greatest ?? 0);
  return success({
    voltage,
    current: power / voltage,
    greatestPower: greatest,
    loading: greatest === null ? 0 : power / greatest,
  });
}

export function noDrive(openVoltage: number, seriesDrop: number): Outcome<never> {
  return failure(
    'noDrive',
    'The series diode drops as much as the source has: nothing is left to drive current.',
    {
      openVoltage,
      seriesDrop,
    },
  );
}

/** The named failure of a supply that cannot deliver the power asked. */
export function collapse(power: number, greatest: number): Outcome<never> {
  const most = `Source and wiring can deliver ${greatest.toPrecision(3)} W at most`;
  const asked = `${power.toPrecision(3)} W are asked`;
  return failure(
    'collapse',
    power > greatest
      ? `${most} and ${asked}: the voltage collapses when the peak comes.`
      : `${asked} at the peak. As the voltage falls, the converter draws ever more current and wastes more, until it collapses: a higher voltage, or less resistance on the way, is needed.`,
    { power, greatestPower: greatest },
  );
}
