import { startDesign } from '../../../shared/design/start.ts';
import type { ExposureInput } from '../../../src/engine/hazard/exposureDistance.ts';

/** A half-wave wire on 20 m, 100 W all the time, US general population. */
export const wireOn20: ExposureInput = {
  ...startDesign.antenna,
  kind: 'halfWaveWire',
  band: '20 m',
  gain: 2.15,
  efficiency: 1,
  loopRadius: 0.5,
  loopResistance: 0,
  feedLineLoss: 0,
  exposureModeFactor: 1,
  exposureBy: 'share',
  exposureTransmitShare: 1,
  limitSet: 'fcc',
  tier: 'general',
  groundFactor: 'usual',
  nearestPerson: null,
  pep: 100,
};
