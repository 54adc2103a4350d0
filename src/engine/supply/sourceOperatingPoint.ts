import { type Note, type Outcome, success } from '../../../shared/outcome.ts';
import { collapse, greatestPower, noDrive } from './constantPower.ts';
import { type ConverterLoss, converterLossAt } from './converterLoss.ts';
import {
  type ConverterModule,
  exhaustionPower,
  inputTooLow,
  moduleCurrent,
  moduleExhausted,
  moduleLimitNote,
  moduleLimits,
  moduleOverloaded,
  railBelowInput,
} from './converterModule.ts';

/** Source and path as the load sees them. */
export interface SupplyPath {
  /** V */
  readonly openVoltage: number;
  /** Of the source, Ω. */
  readonly internalResistance: number;
  /** Wire there and back, connectors, fuse holder, switch, Ω. */
  readonly pathResistance: number;
  /** Series diode, V. */
  readonly seriesDrop: number;
}

export interface OperatingPoint {
  /** At the end of the path: input of the converter, or rail of an amplifier fed directly, V. */
  readonly loadVoltage: number;
  /** Drawn from the source, A. */
  readonly current: number;
  /** Into the converter, or into the amplifier when there is none, A. */
  readonly mainCurrent: number;
  /** Into the other boards, A. */
  readonly boardCurrent: number;
  /** Given by the ideal source behind its resistance, W: openVoltage · current. */
  readonly sourcePower: number;
  /** Heat in the source, W. */
  readonly sourceHeat: number;
  /** Heat in wire and connectors, W. */
  readonly pathHeat: number;
  /** Heat in the series diode, W. */
  readonly diodeHeat: number;
  /** Heat in the converter, W. */
  readonly converterHeat: number;
  /** Power taken at the end of the path over the greatest that source and path can give; 0 without resistance. */
  readonly loading: number;
}

/** No voltage satisfies source and load: the supply collapses. Answer of the number-only functions. */
export const noVoltage = -1;

const mostSteps = 60;

/**
 * Voltage at the input of a converter module behind source and path, V, or `noVoltage`. Numbers only, no allocation.
 *
 * Solves V = V0 − R (Im(V) + Pb/V) for the upper root, with Im from `moduleCurrent`.
 * V0 − V − R I(V) is concave in V, because both currents are convex and fall as V rises; so Newton's method started at
 * V0 comes down to the upper root without passing it, or finds a slope that is no longer negative: then there is none.
 *
 * drive: open voltage less the series drop, V; resistance: source and path, Ω; railPower: output of the module, W;
 * boardPower: other constant-power loads at the same point, W.
 */
export function moduleVoltage(
  drive: number,
  resistance: number,
  loss: ConverterLoss,
  railPower: number,
  boardPower: number,
): number {
  if (drive <= 0) return noVoltage;
  let voltage = drive;
  for (let step = 0; step < mostSteps; step++) {
    const slope = voltage - loss.proportional;
    const power = loss.fixed + railPower;
    const discriminant = slope * slope - 4 * loss.square * power;
    if (slope <= 0 || discriminant < 0) return noVoltage;
    const root = Math.sqrt(discriminant);
    const current = (2 * power) / (slope + root);
    const residual = drive - voltage - resistance * (current + boardPower / voltage);
    // dI/dV of the module is −I/√(…): from b I² + (a − V) I + c = 0.
    const derivative =
      -1 + resistance * (root > 0 ? current / root + boardPower / (voltage * voltage) : Infinity);
    if (Math.abs(residual) <= 1e-13 * drive) return voltage;
    if (!(derivative < 0)) return noVoltage;
    const next = voltage - residual / derivative;
    if (next >= voltage) return voltage;
    if (next <= 0) return noVoltage;
    voltage = next;
  }
  return voltage;
}

/**
 * Voltage at an amplifier that draws a given current straight from source and path, V, or `noVoltage`. Numbers only.
 *
 * V² − (V0 − R I) V + R Pb = 0, upper root. current: A; boardPower: W.
 */
export function directVoltage(
  drive: number,
  resistance: number,
  current: number,
  boardPower: number,
): number {
  const left = drive - resistance * current;
  const discriminant = left * left - 4 * resistance * boardPower;
  if (left <= 0 || discriminant < 0) return noVoltage;
  return (left + Math.sqrt(discriminant)) / 2;
}

/**
 * Operating point of a source that feeds a converter module and other boards.
 *
 * Energy closes: openVoltage · I = I² Rint + I² Rpath + I Vdiode + loadVoltage · I.
 * Errors: `noDrive`, `collapse` (source and path cannot deliver), `moduleExhausted` (the module's own loss ends it),
 * `inputTooLow` (below the module's lowest input), `railBelowInput`. Passed ratings come as notes of kind `limit`.
 */
export function moduleOperatingPoint(
  path: SupplyPath,
  module: ConverterModule,
  railPower: number,
  boardPower: number,
): Outcome<OperatingPoint> {
  const drive = path.openVoltage - path.seriesDrop;
  if (drive <= 0) return noDrive(path.openVoltage, path.seriesDrop);
  if (drive >= module.outputVoltage) return railBelowInput(drive, module.outputVoltage);
  const resistance = path.internalResistance + path.pathResistance;
  const voltage = moduleVoltage(drive, resistance, module.loss, railPower, boardPower);
  if (voltage === noVoltage) return noPoint(drive, resistance, module, railPower, boardPower);
  if (voltage < module.minimumInput) return inputTooLow(voltage, module.minimumInput);
  const mainCurrent = moduleCurrent(module.loss, voltage, railPower);
  const point = collect(path, voltage, mainCurrent, boardPower, converterLossAt(module.loss, mainCurrent));
  return success(point, pointNotes(module, mainCurrent, railPower));
}

/** Called at every node of an envelope: nothing is built while no rating is passed. */
function pointNotes(module: ConverterModule, mainCurrent: number, railPower: number): readonly Note[] {
  if (!moduleOverloaded(module, mainCurrent, railPower)) return module.notes;
  const passed = moduleLimits(module, mainCurrent, railPower).filter((limit) => limit.loading > 1);
  return [...module.notes, ...passed.map(moduleLimitNote)];
}

/**
 * Operating point of a source that feeds the amplifier directly, with a given rail current, and other boards.
 *
 * Errors: `noDrive`, `collapse`.
 */
export function directOperatingPoint(
  path: SupplyPath,
  current: number,
  boardPower: number,
): Outcome<OperatingPoint> {
  const drive = path.openVoltage - path.seriesDrop;
  if (drive <= 0) return noDrive(path.openVoltage, path.seriesDrop);
  const resistance = path.internalResistance + path.pathResistance;
  const voltage = directVoltage(drive, resistance, current, boardPower);
  if (voltage === noVoltage) {
    return collapse(drive * current + boardPower, greatestPower(drive, resistance) ?? 0);
  }
  return success(collect(path, voltage, current, boardPower, 0));
}

function collect(
  path: SupplyPath,
  loadVoltage: number,
  mainCurrent: number,
  boardPower: number,
  converterHeat: number,
): OperatingPoint {
  const boardCurrent = boardPower / loadVoltage;
  const current = mainCurrent + boardCurrent;
  const square = current * current;
  const greatest = greatestPower(
    path.openVoltage - path.seriesDrop,
    path.internalResistance + path.pathResistance,
  );
  return {
    loadVoltage,
    current,
    mainCurrent,
    boardCurrent,
    sourcePower: path.openVoltage * current,
    sourceHeat: square * path.internalResistance,
    pathHeat: square * path.pathResistance,
    diodeHeat: current * path.seriesDrop,
    converterHeat,
    loading: greatest === null ? 0 : (loadVoltage * current) / greatest,
  };
}

/** Which of the two cannot: the module at the full drive voltage, or source and path behind it. */
function noPoint(
  drive: number,
  resistance: number,
  module: ConverterModule,
  railPower: number,
  boardPower: number,
): Outcome<never> {
  const atDrive = exhaustionPower(module.loss, drive);
  if (railPower > atDrive) return moduleExhausted(drive, railPower, atDrive);
  const current = moduleCurrent(module.loss, drive, railPower);
  const taken = railPower + converterLossAt(module.loss, current) + boardPower;
  // At the sagging voltage the converter loses more than here, so it can fail although this sum would still fit.
  return collapse(taken, greatestPower(drive, resistance) ?? 0);
}
