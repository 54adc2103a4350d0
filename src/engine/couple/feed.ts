import type { Design } from '../../../shared/design/schema.ts';
import { failure, type Note, type Outcome, type Reason, success } from '../../../shared/outcome.ts';
import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { type ConverterModule, converterModule } from '../supply/converterModule.ts';
import {
  directOperatingPoint,
  directVoltage,
  moduleOperatingPoint,
  type OperatingPoint,
  type SupplyPath,
} from '../supply/sourceOperatingPoint.ts';
import { type DesignedConverter, designedConverter } from './designedConverter.ts';
import type { Final } from './final.ts';
import type { SupplyPieces } from './supplyPath.ts';

/**
 * Every power at one instant, W (currents A, voltages V). The balance
 *   sourcePower = sourceHeat + wiringHeat + converterHeat + boards + (dcPower), dcPower + drive = rfPower + deviceHeat,
 *   rfPower = antenna + networkHeat
 * holds at each instant and therefore for every average.
 */
export interface PowerPoint {
  readonly sourceCurrent: number;
  readonly loadVoltage: number;
  readonly mainCurrent: number;
  readonly railVoltage: number;
  readonly railCurrent: number;
  readonly sourcePower: number;
  readonly sourceHeat: number;
  readonly wiringHeat: number;
  readonly converterHeat: number;
  readonly boards: number;
  readonly dcPower: number;
  readonly drive: number;
  readonly rfPower: number;
  readonly deviceHeat: number;
  readonly networkHeat: number;
  readonly antenna: number;
  readonly limited: boolean;
}

/** Source, wire and converter ready to feed the final. */
export interface Feed {
  readonly path: SupplyPath;
  readonly module: ConverterModule | null;
  /** Set when the converter is designed from parts; `module` is then its fitted loss curve. */
  readonly designed: DesignedConverter | null;
  /** Why the converter cannot be; every point of the supply fails with it. */
  readonly failed: Reason | null;
  /** Parts of the converter's heat that go into the sink of the final and into the case air. */
  readonly heatToSink: number;
  readonly heatToCase: number;
  readonly notes: readonly Note[];
}

/**
 * Makes source, path and converter ready.
 *
 * junction: K, at which the rail current at PEP is taken for a converter designed from parts; peakOnly: its loss is
 * wanted at PEP alone.
 */
export function prepareFeed(
  design: Design,
  pieces: Pick<SupplyPieces, 'resistance' | 'seriesDrop'>,
  final: Final,
  junction: number,
  peakOnly = false,
): Feed {
  const { source, converter } = design;
  const path: SupplyPath = {
    openVoltage: source.openVoltage,
    internalResistance: source.internalResistance,
    pathResistance: pieces.resistance,
    seriesDrop: pieces.seriesDrop,
  };
  if (converter.kind !== 'designed') {
    const module = converter.kind === 'module' ? converterModule(converter) : null;
    const shares = heatShares(converter.heatTo, 1);
    return { path, module, designed: null, failed: null, ...shares, notes: module?.notes ?? [] };
  }
  const railCurrent = final.at(1, converter.outputVoltage, junction).railCurrent;
  const designed = designedConverter(design, path, railCurrent, peakOnly);
  const base = { path, ...heatShares(converter.heatTo, designed.ok ? designed.value.siliconShare : 1) };
  if (!designed.ok) return { ...base, module: null, designed: null, failed: designed.reason, notes: [] };
  const { module } = designed.value;
  return { ...base, module, designed: designed.value, failed: null, notes: module.notes };
}

/**
 * Where the heat of the converter goes. placed: the part of it that goes where the builder says, all of a bought
 * module, of a design from parts that of switches and rectifiers; coils, capacitors and control warm the case air.
 */
function heatShares(heatTo: Design['converter']['heatTo'], placed: number) {
  return {
    heatToSink: heatTo === 'amplifierSink' ? placed : 0,
    heatToCase: heatTo === 'caseAir' ? 1 : 1 - placed,
  };
}

/**
 * Solves source, wire, converter and final together at one envelope amplitude.
 *
 * amplitude: 0..1 of the PEP amplitude; 0 with `bias` off means nothing drawn by the final. boards: W.
 * Fails by name when the source cannot deliver, the converter cuts out or is exhausted.
 */
export function powerPoint(
  feed: Feed,
  final: Final,
  amplitude: number,
  junction: number,
  boards: number,
  bias = true,
): Outcome<PowerPoint> {
  if (feed.failed) return { ok: false, reason: feed.failed };
  const found = feed.module
    ? throughModule(feed, feed.module, final, amplitude, junction, boards, bias)
    : direct(feed, final, amplitude, junction, boards, bias);
  if (!found.ok) return found;
  const { point, railVoltage, railCurrent, rfPower, limited } = found.value;
  const dcPower = railVoltage * railCurrent;
  const drive = final.drivePower * amplitude * amplitude;
  const antenna = rfPower * final.load.transmission;
  return success(
    {
      sourceCurrent: point.current,
      loadVoltage: point.loadVoltage,
      mainCurrent: point.mainCurrent,
      railVoltage,
      railCurrent,
      sourcePower: point.sourcePower,
      sourceHeat: point.sourceHeat,
      wiringHeat: point.pathHeat + point.diodeHeat,
      converterHeat: point.converterHeat,
      boards,
      dcPower,
      drive,
      rfPower,
      deviceHeat: dcPower - rfPower + drive,
      networkHeat: rfPower - antenna,
      antenna,
      limited,
    },
    found.notes,
  );
}

interface Solved {
  readonly point: OperatingPoint;
  readonly railVoltage: number;
  readonly railCurrent: number;
  readonly rfPower: number;
  readonly limited: boolean;
}

const nothingDrawn = { rfPower: 0, railCurrent: 0, limited: false };

function throughModule(
  feed: Feed,
  module: ConverterModule,
  final: Final,
  amplitude: number,
  junction: number,
  boards: number,
  bias: boolean,
): Outcome<Solved> {
  const rail = module.outputVoltage;
  const state = bias || amplitude > 0 ? final.at(amplitude, rail, junction) : nothingDrawn;
  const point = moduleOperatingPoint(feed.path, module, rail * state.railCurrent, boards);
  if (!point.ok) return point;
  return success({ point: point.value, railVoltage: rail, ...state }, point.notes);
}

function direct(
  feed: Feed,
  final: Final,
  amplitude: number,
  junction: number,
  boards: number,
  bias: boolean,
): Outcome<Solved> {
  const { path } = feed;
  const drive = path.openVoltage - path.seriesDrop;
  const resistance = path.internalResistance + path.pathResistance;
  const stateAt = (rail: number) =>
    bias || amplitude > 0 ? final.at(amplitude, rail, junction) : nothingDrawn;
  const answer = (rail: number) => directVoltage(drive, resistance, stateAt(rail).railCurrent, boards);
  // Unless the rail limits the output, the current does not depend on it and the first answer is the operating point.
  const first = answer(drive);
  const rail = first > 0 && answer(first) === first ? first : settledRail(answer, drive);
  const state = stateAt(rail);
  const point = directOperatingPoint(path, state.railCurrent, boards);
  if (!point.ok) return point;
  return success({
    point: point.value,
    railVoltage: point.value.loadVoltage,
    railCurrent: state.railCurrent,
    rfPower: state.rfPower,
    limited: state.limited,
  });
}

/**
 * The rail at which the final draws just the current that leaves this rail, V. More rail means more current, more
 * current less rail: the mismatch falls throughout and has one root between zero and the open voltage.
 */
function settledRail(answer: (rail: number) => number, drive: number): number {
  const root = bracketedRoot((rail) => answer(rail) - rail, 0, drive, { tolerance: 1e-11 * drive });
  return root.ok ? root.value.root : 0;
}

/** Weighted sum of power points: the average over an envelope, a keying pattern or a cycle. */
export function averagePoints(points: readonly PowerPoint[], weights: readonly number[]): AveragePower {
  const sum = {
    sourceCurrent: 0,
    sourceCurrentSquare: 0,
    sourcePower: 0,
    sourceHeat: 0,
    wiringHeat: 0,
    converterHeat: 0,
    boards: 0,
    dcPower: 0,
    drive: 0,
    rfPower: 0,
    deviceHeat: 0,
    networkHeat: 0,
    antenna: 0,
  };
  points.forEach((point, index) => {
    const weight = weights[index] ?? 0;
    sum.sourceCurrent += weight * point.sourceCurrent;
    sum.sourceCurrentSquare += weight * point.sourceCurrent * point.sourceCurrent;
    sum.sourcePower += weight * point.sourcePower;
    sum.sourceHeat += weight * point.sourceHeat;
    sum.wiringHeat += weight * point.wiringHeat;
    sum.converterHeat += weight * point.converterHeat;
    sum.boards += weight * point.boards;
    sum.dcPower += weight * point.dcPower;
    sum.drive += weight * point.drive;
    sum.rfPower += weight * point.rfPower;
    sum.deviceHeat += weight * point.deviceHeat;
    sum.networkHeat += weight * point.networkHeat;
    sum.antenna += weight * point.antenna;
  });
  return sum;
}

/** What an average leaves of a `PowerPoint`: powers, W, mean current, A, and mean square current, A². */
export type AveragePower = Omit<
  PowerPoint,
  'loadVoltage' | 'mainCurrent' | 'railVoltage' | 'railCurrent' | 'limited'
> & { readonly sourceCurrentSquare: number };

/** A failure of the supply, retold for the service in which it appears. */
export function inService(reason: Reason, service: string): Outcome<never> {
  return failure(reason.key, `${service}: ${reason.sentence}`, reason.numbers);
}
