import type { Design } from '../../../shared/design/schema.ts';
import type { CautionFigures } from '../hazard/cautionFigures.ts';
import { lineImpedance } from '../hazard/cautionsRadio.ts';
import { shareInWindow } from '../hazard/exposureDistance.ts';
import { exemptionPower } from '../hazard/exposureTable.ts';
import { forwardCurrent, forwardPeakVoltage, reflection } from '../hazard/outputVoltage.ts';
import { redHeatRise, ringBurnTime, ringSection, skinBurnRise } from '../hazard/ringHeating.ts';
import { bleederFor, storedEnergy } from '../hazard/storedEnergy.ts';
import { type PeopleFigures, railAtRest } from './people.ts';
import type { ValueList } from './values.ts';

/** Named quantities of touch, exposure, output, supply current and stored energy. */
export function putPeople(
  list: ValueList,
  design: Design,
  people: PeopleFigures,
  figures: CautionFigures,
): void {
  putTouch(list, people, figures);
  putExposure(list, design, people);
  putOutput(list, design, figures);
  putSupplyDangers(list, design, figures);
}

function putTouch(list: ValueList, { touch }: PeopleFigures, figures: CautionFigures): void {
  list.putAll({
    touchTemperature: touch.temperature,
    touchThreshold: touch.threshold,
    burnTime: touch.burnTime,
    coolingTime: figures.coolingTime,
  });
}

function putExposure(list: ValueList, { antenna, amplifier }: Design, people: PeopleFigures): void {
  const chosen = people.bands.find((row) => row.chosen);
  const input = { ...antenna, pep: amplifier.pep };
  list.putAll({
    exposureOver: antenna.exposureBy === 'overs' ? antenna.exposureOver : null,
    exposurePause: antenna.exposureBy === 'overs' ? antenna.exposurePause : null,
    nearestPerson: antenna.nearestPerson,
    exposureTransmitShare: people.exposure.ok
      ? people.exposure.value.transmitShare
      : shareInWindow(input, 1800),
    exposurePower: chosen?.averagePower,
    exposureFrequency: chosen?.frequency,
    exposureLimit: chosen?.density,
    exposureLimitElectric: chosen?.electric,
    exposureLimitMagnetic: chosen?.magnetic,
    exposureNearZone: chosen?.nearZone,
    exposureDistance: chosen?.distance,
    exemptionPower: antenna.limitSet === 'fcc' ? exemptionPower(input) : null,
    exemptionDistance: antenna.limitSet === 'fcc' ? chosen?.exemptFrom : null,
  });
  if (people.exposure.ok) list.put('exposureEirp', people.exposure.value.eirp);
}

function putOutput(list: ValueList, { amplifier }: Design, { fingerLevel }: CautionFigures): void {
  const { pep, swr } = amplifier;
  const current = forwardCurrent(pep, lineImpedance, swr);
  list.putAll({
    reflection: reflection(swr),
    outputVoltagePeak: forwardPeakVoltage(pep, lineImpedance, swr),
    outputCurrent: current,
    contactLevel: fingerLevel,
    contactRatio: fingerLevel === null ? null : current / fingerLevel,
    dummyLoadPower: pep,
  });
}

function putSupplyDangers(list: ValueList, design: Design, figures: CautionFigures): void {
  const { faultCurrent } = figures;
  const rail = railAtRest(design);
  const { railCapacitance, bleederTime, greatestRail } = design.hazards;
  list.putAll({
    railAtRest: rail,
    railCapacitance,
    railEnergy: storedEnergy(railCapacitance, rail),
    greatestRail: design.converter.kind === 'none' ? null : greatestRail,
  });
  if (railCapacitance > 0) {
    const bleeder = bleederFor(railCapacitance, rail, bleederTime);
    list.putAll({ bleederTime, bleeder: bleeder.resistance, bleederPower: bleeder.power });
  }
  if (faultCurrent === null || !(faultCurrent > 0)) return;
  list.putAll({
    faultPower: faultCurrent * design.source.openVoltage,
    ringBurnTime: magnitude(ringBurnTime('goldAlloy', faultCurrent, ringSection, skinBurnRise)),
    ringRedTime: magnitude(ringBurnTime('goldAlloy', faultCurrent, ringSection, redHeatRise)),
  });
}

/** One figure: nothing more is known of it. */
function magnitude(value: number): number {
  return Number(value.toPrecision(1));
}
