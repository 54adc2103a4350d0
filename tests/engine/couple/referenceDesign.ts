import { startDesign } from '../../../shared/design/start.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { change } from './designs.ts';

const { Vdd, Ppep, Iq_total, Vsat, Ron, n } = cases.referenceAmplifier;

/** The invented push-pull pair of the tables as a whole design on a rail that holds: no loss behind it but that of the devices. */
export const referenceDesign = change(startDesign, {
  source: { openVoltage: 13, internalResistance: 0, continuousCurrent: null, peakCurrent: null },
  wiring: { length: 0, path: [], size: 'AWG 4' },
  converter: { kind: 'module', outputVoltage: Vdd },
  boards: { transmitPower: 0, receivePower: 0 },
  amplifier: {
    class: 'AB',
    calibration: 'devices',
    pep: Ppep,
    ratedPep: Ppep,
    ratedRail: Vdd,
    quiescentCurrent: Iq_total,
    saturationVoltage: Vsat,
    onResistance: Ron,
    onResistanceCoefficient: 0,
    outputLoss: 0,
    drivePower: 0,
    biasInReceive: false,
    biasKeyed: false,
    turnsRatio: null,
    swr: 1,
  },
  device: { count: n, junctionToCase: 0.6, maximumJunction: 473.15, package: 'flangeCeramic', pad: 'grease' },
  sink: { width: 0.25, length: 0.2, baseThickness: 0.01, finCount: 20, finHeight: 0.05 },
});
