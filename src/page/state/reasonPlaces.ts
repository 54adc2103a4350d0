import type { Design } from '../../../shared/design/schema.ts';
import { applies } from './applies.ts';
import { knownField } from './fields.ts';

/** The stations that can be the cause of there being no result. */
export type CauseStation = 'source' | 'converter' | 'amplifier' | 'devices' | 'sink';

interface Cause {
  readonly station: CauseStation;
  /** Fields that mend it, the likeliest first. */
  readonly fields?: readonly string[];
}

const fins = ['sink.finCount', 'sink.finThickness', 'sink.finRoot', 'sink.width'];
const pins = ['sink.pinColumns', 'sink.pinRows', 'sink.pinThickness', 'sink.width', 'sink.length'];
const fan = ['sink.fanMiddleFlow', 'sink.fanMiddlePressure'];
const face = ['device.count', 'device.contactWidth', 'device.contactLength', 'sink.width', 'sink.length'];
const spreader = ['device.spreaderWidth', 'device.spreaderLength'];
const rail = ['converter.outputVoltage'];
const supply = ['source.openVoltage', 'source.internalResistance', 'wiring.size', 'wiring.length'];

/** Where the cause of a reason stands. What is not named here the amplifier asks for and cannot be. */
const causes: Readonly<Record<string, Cause>> = {
  finsDoNotFit: { station: 'sink', fields: fins },
  pinsDoNotFit: { station: 'sink', fields: pins },
  fanCurve: { station: 'sink', fields: fan },
  devicesDoNotFit: { station: 'devices', fields: face },
  partOffPlate: { station: 'devices', fields: face.slice(1) },
  sourceOffPlate: { station: 'devices', fields: face.slice(1) },
  partsOverlap: { station: 'devices' },
  spreaderTooSmall: { station: 'devices', fields: spreader },
  impedancePoints: { station: 'devices' },
  notALadder: { station: 'devices' },
  collapse: { station: 'source', fields: supply },
  noDrive: { station: 'source', fields: supply.slice(0, 1) },
  wireMelts: { station: 'source', fields: ['wiring.size'] },
  inputTooLow: { station: 'converter', fields: ['converter.minimumInput', ...supply.slice(0, 1)] },
  railBelowInput: { station: 'converter', fields: rail },
  ratioNotReachable: { station: 'converter', fields: rail },
  moduleExhausted: { station: 'converter', fields: ['converter.powerLimit', 'converter.inputCurrentLimit'] },
  ratioCannotMakePower: { station: 'amplifier', fields: ['amplifier.turnsRatio', 'amplifier.pep'] },
};

const unnamed: Cause = { station: 'amplifier' };

export function causeStation(key: string): CauseStation {
  return (causes[key] ?? unnamed).station;
}

/** Fields in sight that can mend what a reason says, each with its label. */
export function causeFields(
  key: string,
  design: Design,
): readonly { readonly path: string; readonly label: string }[] {
  return (causes[key]?.fields ?? [])
    .filter((path) => applies(design, path))
    .map((path) => ({ path, label: knownField(path).label }));
}

/** Every field that a reason can lead to. */
export const causePaths: readonly string[] = Object.values(causes).flatMap(({ fields }) => fields ?? []);
