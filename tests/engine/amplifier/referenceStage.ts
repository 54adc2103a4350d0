import type { LinearStage } from '../../../src/engine/amplifier/linearStage.ts';
import { saturatingStage } from '../../../src/engine/amplifier/saturationKnee.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { resultOf } from '../resultOf.ts';

const { Vdd, Ppep, Iq_total, Vsat, Ron, n } = cases.referenceAmplifier;

/** Invented push-pull pair on 13.8 V, 110 W at the drains, 1 A standing current: the amplifier of the tables. */
export const referenceDevices = {
  class: 'AB',
  power: Ppep,
  rail: Vdd,
  quiescentCurrent: Iq_total,
  deviceCount: n,
  saturationVoltage: Vsat,
  onResistance: Ron,
} as const;

export const referenceStage: LinearStage = resultOf(saturatingStage(referenceDevices));

/** The same pair described by a measured efficiency instead. */
export const referenceMeasurement = {
  class: 'AB',
  ratedPower: 110,
  ratedRail: 13.8,
  efficiency: 0.55,
  quiescentCurrent: 1,
  conductionAngle: Math.PI,
  deviceCount: 2,
} as const;
