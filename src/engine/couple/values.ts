import type { Design } from '../../../shared/design/schema.ts';
import type { Service } from '../../../shared/solution.ts';
import { loadEntries, pepEntries, turnsEntries } from './amplifierValues.ts';
import type { Coupled } from './coupled.ts';
import { junctionToCaseOf } from './deviceStages.ts';
import { type HeatPath, ratingRise } from './heatPath.ts';
import type { Prepared } from './prepare.ts';
import type { CycleState } from './serviceCycle.ts';
import type { Electrics } from './supplySide.ts';

/** Collects named values; what is not a finite number is left out, so that nothing downstream meets NaN. */
export class ValueList {
  readonly values: Record<string, number> = {};

  put(key: string, value: number | null | undefined): void {
    if (typeof value === 'number' && Number.isFinite(value)) this.values[key] = value;
  }

  putAll(entries: Readonly<Record<string, number | null | undefined>>): void {
    for (const key in entries) this.put(key, entries[key]);
  }
}

/** What the builder entered and formulas refer to. */
export function putGiven(list: ValueList, prepared: Prepared): void {
  const { design, limits } = prepared;
  list.putAll({
    sourceVoltage: design.source.openVoltage,
    sourceResistance: design.source.internalResistance,
    wireLength: design.wiring.length,
    boardsPower: design.boards.transmitPower,
    pepAsked: design.amplifier.pep,
    outputLoss: design.amplifier.outputLoss,
    deviceCount: design.device.count,
    drivePower: design.amplifier.drivePower,
    ratedRail: design.amplifier.ratedRail,
    networkHeatToSink: design.amplifier.networkHeatToSink,
    transmitShare: design.service.transmitShare,
    cycle: design.service.cycle,
    ambient: design.surroundings.ambient,
    junctionToCase: junctionToCaseOf(design.device),
    maximumJunction: design.device.maximumJunction,
    designLimit: limits.design,
    feedLineLoss: design.antenna.feedLineLoss,
    antennaGain: design.antenna.gain,
    exposureModeFactor: design.antenna.exposureModeFactor,
    exposureTransmitShare: design.antenna.exposureTransmitShare,
  });
}

/** Wire, operating point at PEP and the final's state there. */
export function putElectrics(list: ValueList, electrics: Electrics, junction: number): void {
  const { wire, loads, pep } = electrics;
  const { final } = loads;
  list.putAll({
    wireResistance20: wire.conductor.resistancePerLength,
    wireTemperature: wire.temperature,
    wireResistanceHot: wireResistanceHot(electrics),
    seriesDrop: wire.path.seriesDrop,
    otherResistance: wire.path.otherResistance,
    pathResistance: wire.path.resistance,
    greatestLoadPower: greatestLoadPower(electrics),
  });
  list.putAll(loadEntries(loads.design, final));
  if (!pep.ok) return;
  const point = pep.value;
  const drop = point.sourceCurrent * wire.path.resistance + electrics.feed.path.seriesDrop;
  const intoFinal = point.dcPower + point.converterHeat;
  list.putAll({
    loadPowerPep: intoFinal + point.boards,
    inputVoltagePep: point.loadVoltage,
    inputCurrentPep: point.sourceCurrent,
    pathDropPep: drop,
    pathDropShare: drop / electrics.feed.path.openVoltage,
    terminalVoltagePep:
      electrics.feed.path.openVoltage - point.sourceCurrent * electrics.feed.path.internalResistance,
    finalInputPowerPep: intoFinal,
    converterLossPep: point.converterHeat,
    converterEfficiencyPep: point.dcPower / intoFinal,
    converterInputCurrentPep: point.mainCurrent,
    railVoltagePep: point.railVoltage,
    railCurrentPep: point.railCurrent,
    dcPowerPep: point.dcPower,
  });
  list.putAll(pepEntries(loads.design, final, point, junction));
  list.putAll(turnsEntries(list.values));
}

function wireResistanceHot({ wire, loads }: Electrics): number {
  const { length } = loads.design.wiring;
  const { resistance, otherResistance } = wire.path;
  return length > 0 ? (resistance - otherResistance) / (2 * length) : wire.conductor.resistancePerLength;
}

function greatestLoadPower({ feed }: Electrics): number | null {
  const drive = feed.path.openVoltage - feed.path.seriesDrop;
  const resistance = feed.path.internalResistance + feed.path.pathResistance;
  return resistance > 0 ? drive ** 2 / (4 * resistance) : null;
}

export function putPath(list: ValueList, path: HeatPath, design: Design): void {
  const { ambient } = design.surroundings;
  const detail = path.sink.heatDetail(ambient + ratingRise, ambient);
  list.putAll({
    padResistance: path.padResistance,
    spreaderResistance: path.spreaderResistance > 0 ? path.spreaderResistance : null,
    spreadingResistance: path.spreading,
    finGap: path.sink.gap,
    sinkMass: path.sink.mass,
    sinkHeatCapacity: path.sink.heatCapacity,
    ratingRise,
    ratingHeat: path.ratingHeat,
    ratingResistance: ratingRise / path.ratingHeat,
    ratingFilm: detail.filmCoefficient,
    ratingFinEfficiency: detail.channel?.finEfficiency,
    ratingRadiantShare: detail.radiation / detail.total,
  });
}

/** Receive state and hottest amplitude: the same for all services. */
export function putCoupled(list: ValueList, coupled: Coupled, junction: number): void {
  const hottest = coupled.hottest(junction);
  list.putAll({
    inputCurrentReceive: coupled.receive.sourceCurrent,
    deviceHeatReceive: coupled.receive.deviceHeat,
    hottestAmplitude: hottest?.amplitude,
    hottestHeat: hottest?.heat,
  });
}

/** Keys of values of a service, put together once: a solution is made at every key stroke. */
const serviceKeys: Readonly<Record<Service, Map<string, string>>> = {
  ssb: new Map(),
  cw: new Map(),
  keyDown: new Map(),
};

function keyOf(service: Service, key: string): string {
  const known = serviceKeys[service].get(key);
  if (known !== undefined) return known;
  const made = `${service}.${key}`;
  serviceKeys[service].set(key, made);
  return made;
}

/** One service in its steady cycle at the planned duty. */
export function putService(
  list: ValueList,
  service: Service,
  state: CycleState,
  coupled: Coupled,
  designLimit: number,
): void {
  const { over, averageRatio } = state.load;
  const put = (key: string, value: number | null | undefined) => list.put(keyOf(service, key), value);
  const entries: Record<string, number | null> = {
    averageRatio,
    inputCurrentMean: over.sourceCurrent,
    inputCurrentRms: Math.sqrt(over.sourceCurrentSquare),
    sourceHeatOver: over.sourceHeat,
    wiringHeatOver: over.wiringHeat,
    sourcePowerOver: over.sourcePower,
    cycleCurrentMean: state.share * over.sourceCurrent + (1 - state.share) * coupled.receive.sourceCurrent,
    converterLossOver: over.converterHeat,
    antennaPowerOver: over.antenna,
    rfPowerOver: over.rfPower,
    networkHeatOver: over.networkHeat,
    dcPowerOver: over.dcPower,
    drivePowerOver: over.drive,
    deviceHeatOver: over.deviceHeat,
    deviceHeatCycle: state.deviceHeatCycle,
    plateHeat: state.plateHeat,
    converterHeatToSink: state.converterHeatToSink,
    sinkAir: state.sinkAir,
    plateMean: state.plateMean,
    sinkResistance: state.plateHeat > 0 ? (state.plateMean - state.sinkAir) / state.plateHeat : null,
    platePeak: state.platePeak,
    junctionMean: state.junctionMean,
    localRise: state.localMean,
    junctionRipple: state.ripple,
    junctionPeak: state.junctionPeak,
    junctionMargin: designLimit - state.junctionPeak,
    caseHeat: state.caseHeat,
  };
  for (const key in entries) put(key, entries[key]);
  const pepHeat = list.values.deviceHeatPep;
  put('heatRatio', pepHeat ? over.deviceHeat / pepHeat : null);
}
