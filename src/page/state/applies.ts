import type { Design } from '../../../shared/design/schema.ts';
import { benchApplies } from './benchApplies.ts';
import { heatConditions } from './heatApplies.ts';
import { supplyApplies } from './supplyApplies.ts';

type Condition = (design: Design) => boolean;

const raised: Condition = (design) => design.converter.kind !== 'none';
const switching: Condition = (design) => ['D', 'E', 'F'].includes(design.amplifier.class);
const biased: Condition = (design) => ['A', 'AB'].includes(design.amplifier.class);
const linear: Condition = (design) => ['A', 'AB', 'B'].includes(design.amplifier.class);
const byEfficiency: Condition = (design) => design.amplifier.calibration === 'efficiency';
const byReadings: Condition = (design) => design.amplifier.calibration === 'readings';
const byDevices: Condition = (design) => design.amplifier.calibration === 'devices';
const wound: Condition = (design) => !switching(design) && !byReadings(design);
const resistive: Condition = (design) => switching(design) || byDevices(design);
const fieldEffect: Condition = (design) => design.amplifier.deviceKind === 'mosfet';
const looped: Condition = (design) => design.antenna.kind === 'smallLoop';
const byOvers: Condition = (design) => design.antenna.exposureBy === 'overs';

/** Fields that mean something only in some designs. A field not named here always applies. */
const conditions: Readonly<Record<string, Condition>> = {
  ...heatConditions,
  'amplifier.ratedPep': (design) => !byReadings(design),
  'amplifier.quiescentCurrent': (design) => design.amplifier.class === 'AB' && !byReadings(design),
  'amplifier.conductionAngle': (design) => design.amplifier.class === 'C' && !byReadings(design),
  'amplifier.arrangement': wound,
  'amplifier.turnsRatio': wound,
  'amplifier.biasInReceive': biased,
  'amplifier.biasKeyed': biased,
  'amplifier.efficiency': byEfficiency,
  'amplifier.efficiencyMeasured': byEfficiency,
  'amplifier.saturationVoltage': (design) => byDevices(design) && !switching(design),
  'amplifier.onResistance': resistive,
  'amplifier.onResistanceCoefficient': (design) => resistive(design) && design.amplifier.onResistance > 0,
  'amplifier.outputCapacitance': (design) => byDevices(design) && switching(design),
  'amplifier.otherLoss': (design) => byDevices(design) && switching(design),
  'amplifier.foldbackSwr': (design) => linear(design) && design.amplifier.swr > 1,
  'amplifier.transconductance': fieldEffect,
  'amplifier.thresholdDrift': fieldEffect,
  'service.speechKind': linear,
  'service.speechActivity': linear,
  'service.averageToPeak': (design) => linear(design) && design.service.speechKind === 'own',
  'service.modulationDepth': (design) => design.service.keyDownMode === 'am',
  'antenna.efficiency': (design) => design.antenna.kind === 'smallLoaded',
  'antenna.loopRadius': looped,
  'antenna.loopResistance': looped,
  'antenna.groundFactor': (design) => design.antenna.kind !== 'other',
  'antenna.exposureTransmitShare': (design) => design.antenna.exposureBy === 'share',
  'antenna.exposureOver': byOvers,
  'antenna.exposurePause': byOvers,
  'hazards.bleederTime': (design) => design.hazards.railCapacitance > 0,
  'hazards.greatestRail': raised,
  'limits.touchGoverns': (design) => design.limits.touchedBy !== 'nobody',
};

/** Rows of lists, by the beginning of their paths. */
const rows: readonly (readonly [string, Condition])[] = [
  ['amplifier.readings.', byReadings],
  ['device.fosterStages.', (design) => design.device.ladder === 'foster'],
  ['device.cauerStages.', (design) => design.device.ladder === 'cauer'],
  ['device.impedancePoints.', (design) => design.device.ladder === 'points'],
];

/** Whether a field has a meaning in this design; the page hides those that do not. */
export function applies(design: Design, path: string): boolean {
  if (path.startsWith('bench.')) return benchApplies(design, path);
  const row = rows.find(([beginning]) => path.startsWith(beginning));
  if (row) return row[1](design);
  return supplyApplies(design, path) ?? conditions[path]?.(design) ?? true;
}
