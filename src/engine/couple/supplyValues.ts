import type { Design } from '../../../shared/design/schema.ts';
import { services } from '../../../shared/solution.ts';
import { boundaryCurrent, saturationMargin } from '../supply/boost.ts';
import { loadStepDroop, rightHalfPlaneZero, usableCrossover } from '../supply/boostControl.ts';
import { phasedPoint } from '../supply/boostPhases.ts';
import { equivalentCurrent } from '../supply/peukert.ts';
import type { DesignedConverter } from './designedConverter.ts';
import type { SupplyReport } from './supplyReport.ts';
import { hasState } from './supplyVoltage.ts';
import type { ValueList } from './values.ts';

/** A syllable at 4 per second, and the dip of the rail that it may make. Own choice after speech-intelligibility work. */
const syllable = 0.125;
const syllableDip = 0.05;

/** Source, path and protection; the values per service of the cycle must be in the list already. */
export function putSupply(list: ValueList, design: Design, report: SupplyReport): void {
  const { protection, inrush, filter, empty } = report;
  list.putAll({
    fuseLoad: protection.fuseNeeded,
    fuseRating: protection.fuseRating,
    wireAmpacity: protection.ampacity.limit,
    faultCurrent: protection.nearFault?.current,
    farFaultCurrent: protection.farFault?.current,
    weakestRating: protection.weakest?.rating,
    fuseMelting: report.melting,
    inputCapacitance: report.inputCapacitance,
    outputCapacitance: report.outputCapacitance,
    inputVoltageEmpty: empty?.ok ? empty.value.inputVoltage : null,
    inputCurrentEmpty: empty?.ok ? empty.value.current : null,
    highestVoltage: hasState(design) ? design.source.chargingVoltage : null,
  });
  if (filter) {
    list.putAll({
      supplyInductance: filter.inductance,
      inputResistance: filter.negativeResistance,
      leastInputCapacitance: filter.leastCapacitance,
      dampingCapacitance: filter.branch?.capacitance,
      dampingResistance: filter.branch?.resistance,
      filterImpedance: filter.branch?.peakImpedance,
    });
  }
  if (inrush) {
    list.putAll({
      switchedCapacitance: (report.inputCapacitance ?? 0) + (report.outputCapacitance ?? 0),
      inrushPeak: inrush.peakCurrent,
      inrushIntegral: inrush.meltingIntegral,
      inrushVoltage: inrush.peakVoltage,
      inrushAllowed: report.allowedInrush,
    });
  }
  putRunTime(list, design);
  putSyllable(list, design);
}

/** How long the battery lasts in each service at the planned duty. */
function putRunTime(list: ValueList, design: Design): void {
  const { capacity, capacityTime, peukertExponent } = design.source;
  if (capacity === null || !hasState(design)) return;
  list.putAll({ capacity, capacityTime, peukertExponent });
  const { values } = list;
  const receive = values.inputCurrentReceive ?? 0;
  const share = design.service.transmitShare;
  const timeAt = (current: number) =>
    current > 0 ? capacityTime * (capacity / (capacityTime * current)) ** peukertExponent : null;
  for (const service of services) {
    const mean = values[`${service}.cycleCurrentMean`];
    const over = values[`${service}.inputCurrentMean`];
    if (mean === undefined || over === undefined) continue;
    const shares = [
      { current: over, share },
      { current: receive, share: 1 - share },
    ];
    list.put(`${service}.runTime`, timeAt(mean));
    list.put(`${service}.runTimeCautious`, timeAt(equivalentCurrent(shares, peukertExponent)));
  }
}

/** Capacitance that would carry the rail through a syllable of SSB. */
function putSyllable(list: ValueList, design: Design): void {
  const { railCurrentPep: peak, railVoltagePep: rail } = list.values;
  const power = list.values['ssb.dcPowerOver'];
  if (design.converter.kind === 'none' || peak === undefined || rail === undefined || power === undefined)
    return;
  const capacitance = ((peak - power / rail) * syllable) / (syllableDip * rail);
  list.put('ssb.syllableCapacitance', capacitance);
  list.put('ssb.syllableEnergy', 0.5 * capacitance * rail * rail);
}

/** A converter designed from parts: what it is made of, its currents, losses and control. */
export function putDesigned(list: ValueList, design: Design, converter: DesignedConverter): void {
  const { parts, pep, suggestion } = converter;
  const { phase, terms } = pep;
  const rail = design.converter.outputVoltage;
  list.putAll({
    phases: parts.phases,
    switchingFrequency: parts.frequency,
    inductance: parts.inductance,
    inductorResistance: parts.inductorResistance,
    saturationCurrent: converter.saturationCurrent,
    currentLimit: converter.currentLimit,
    switchResistanceCold: suggestion.parts.switchResistance,
    switchResistanceHot: parts.switchResistance,
    outputCapacitorResistance: parts.capacitorResistance,
    switchDuty: phase.switchDuty,
    conductionShare: Math.min(1, phase.switchDuty + phase.rectifierDuty),
    boundaryCurrent: parts.synchronous
      ? null
      : parts.phases * boundaryCurrent(parts, converter.inputVoltage, rail),
    inductorMean: phase.inductorMean,
    inductorRipple: phase.inductorRipple,
    inductorPeak: phase.inductorPeak,
    inductorRms: phase.inductorRms,
    switchRms: phase.switchRms,
    switchStress: phase.switchVoltage,
    rectifierRms: phase.rectifierRms,
    inputRipple: pep.inputRipple,
    inputCapacitorRms: pep.inputCapacitorRms,
    outputCapacitorRms: pep.outputCapacitorRms,
    outputRipple: pep.outputRipple,
    saturationMargin: saturationMargin(converter.saturationCurrent, phase.inductorPeak),
    lossInductor: terms.inductorCopper,
    lossCore: terms.core,
    lossSwitch: terms.switchConduction,
    lossOverlap: terms.switchOverlap,
    lossCapacitance: terms.switchCapacitance,
    lossGate: terms.gate,
    lossRectifier: terms.rectifier,
    lossRecovery: terms.recovery,
    lossDeadTime: terms.deadTime,
    lossCapacitors: terms.capacitors,
    lossFixed: terms.fixed,
    switchVoltageRating: suggestion.ratings.switchVoltage,
    rectifierVoltageRating: suggestion.ratings.rectifierVoltage,
    rectifierCurrentRating: suggestion.ratings.rectifierCurrent,
    outputCapacitorVoltage: suggestion.ratings.capacitorVoltage,
    inputCapacitorVoltage: suggestion.ratings.inputCapacitorVoltage,
    converterFitError: converter.fitError,
  });
  putLowest(list, design, converter);
}

/** At the lowest input and PEP: where stresses are greatest and the control is slowest. */
function putLowest(list: ValueList, design: Design, converter: DesignedConverter): void {
  const { parts, outputCurrent } = converter;
  const { minimumInput, outputVoltage } = design.converter;
  const low = phasedPoint(parts, minimumInput, outputVoltage, outputCurrent);
  if (!low.ok || !(outputCurrent > 0)) return;
  const { phase } = low.value;
  const zero = rightHalfPlaneZero(
    outputVoltage,
    outputCurrent / parts.phases,
    phase.switchDuty,
    parts.inductance,
  );
  const crossover = usableCrossover(zero, parts.frequency).cautious;
  list.putAll({
    lowestInput: minimumInput,
    switchDutyLowest: phase.switchDuty,
    inductorPeakLowest: phase.inductorPeak,
    efficiencyLowest: low.value.efficiency,
    rightHalfPlaneZero: zero,
    crossover,
    railDroop: loadStepDroop(outputCurrent, crossover, parts.capacitance, parts.capacitorResistance),
  });
}

/** Junctions of the converter, one service after the other. */
export function putConverterJunctions(list: ValueList, report: SupplyReport): void {
  for (const service of services) {
    const found = report.junctions[service];
    if (!found) continue;
    list.put(`${service}.switchJunction`, found.switch);
    list.put(`${service}.rectifierJunction`, found.rectifier);
  }
}
