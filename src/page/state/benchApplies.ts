import type { Design } from '../../../shared/design/schema.ts';

/** Whether a field of a bench run means something: a cool-down has no power and no resistor. */
export function benchApplies(design: Design, path: string): boolean {
  const [, index, field] = path.split('.');
  const run = design.bench[Number(index)];
  if (run === undefined) return false;
  const needsPower = field === 'power' || field === 'powerDoubt';
  const needsFoot = field === 'sensorPlace' || field === 'resistorWidth' || field === 'resistorLength';
  return run.kind !== 'coolDown' || !(needsPower || needsFoot);
}
