import type { Design } from '../../../shared/design/schema.ts';

type Condition = (design: Design) => boolean;

const stored: Condition = ({ source }) => source.kind !== 'mainsSupply';
const withCapacity: Condition = (design) => stored(design) && design.source.capacity !== null;
const module: Condition = ({ converter }) => converter.kind === 'module';
const designed: Condition = ({ converter }) => converter.kind === 'designed';
const synchronous: Condition = (design) =>
  designed(design) && design.converter.parts.rectifier === 'synchronous';
const cored: Condition = (design) => designed(design) && design.converter.parts.core !== 'none';

/** Fields of source and converter that mean something only in some designs. */
export const supplyConditions: Readonly<Record<string, Condition>> = {
  'source.capacity': stored,
  'source.capacityTime': withCapacity,
  'source.peukertExponent': withCapacity,
  'source.emptyVoltage': stored,
  'source.emptyResistanceFactor': (design) => stored(design) && design.source.emptyVoltage !== null,
  'source.chargingVoltage': stored,
  'converter.kind': () => true,
  'converter.points': module,
  'converter.noLoadPower': module,
  'converter.inputCurrentLimit': module,
  'converter.outputCurrentLimit': module,
  'converter.powerLimit': module,
  'converter.powerShare': module,
  'converter.outputCapacitance': designed,
  'converter.clockTolerance': (design) => designed(design) || design.converter.frequency !== null,
  'converter.region': (design) => designed(design) || design.converter.frequency !== null,
  'converter.filterResistance': ({ converter }) =>
    converter.kind !== 'none' && converter.filterInductance > 0,
  'converter.parts.coreTurns': cored,
  'converter.parts.coreArea': cored,
  'converter.parts.coreLength': cored,
  'converter.parts.rectifierDrop': (design) =>
    designed(design) && design.converter.parts.rectifier === 'diode',
  'converter.parts.recoveryCharge': synchronous,
  'converter.parts.deadTime': synchronous,
  'converter.parts.bodyDrop': synchronous,
  'converter.parts.ownSink': (design) => designed(design) && design.converter.heatTo !== 'amplifierSink',
};

/** What each kind of part in the path is described by. */
const pathFields: Readonly<Record<string, readonly string[]>> = {
  fuse: ['count', 'resistance', 'rating'],
  connector: ['connector', 'count', 'aged', 'resistance', 'rating'],
  switch: ['count', 'resistance', 'rating'],
  relay: ['count', 'resistance', 'rating'],
  joint: ['count', 'resistance'],
  transistor: ['resistance', 'rating'],
  diode: ['drop', 'resistance', 'rating'],
  wire: ['size', 'length'],
  other: ['resistance', 'rating'],
};

/** Whether a field of the source, the path or the converter has a meaning; undefined for any other field. */
export function supplyApplies(design: Design, path: string): boolean | undefined {
  const piece = /^wiring\.path\.(\d+)\.(\w+)$/.exec(path);
  if (piece) {
    const kind = design.wiring.path[Number(piece[1])]?.kind;
    if (kind === undefined) return false;
    return piece[2] === 'kind' || (pathFields[kind]?.includes(piece[2]!) ?? false);
  }
  const known = supplyConditions[path];
  if (known) return known(design);
  if (path.startsWith('converter.parts.')) return designed(design);
  if (path.startsWith('converter.points.')) return module(design);
  if (path.startsWith('converter.')) return design.converter.kind !== 'none';
  return undefined;
}
