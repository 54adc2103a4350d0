import type { Design } from '../../../shared/design/schema.ts';
import type { ConverterCurves, EfficiencyCurve } from '../../../shared/supplyCurves.ts';
import type { LossTerm } from '../supply/boostLosses.ts';
import { phasedPoint, phasedWaveforms } from '../supply/boostPhases.ts';
import { moduleInputCurrent } from '../supply/converterModule.ts';
import type { DesignedConverter } from './designedConverter.ts';
import type { Feed, PowerPoint } from './feed.ts';
import { highestVoltage } from './supplyVoltage.ts';

const points = 41;
/** The curves go on above PEP by this much. */
const beyond = 1.2;

export const lossNames: Readonly<Record<LossTerm, string>> = {
  inductorCopper: 'inductor copper',
  core: 'core',
  switchConduction: 'switch conducting',
  switchOverlap: 'switch overlap',
  switchCapacitance: 'switch capacitance',
  gate: 'gate drive',
  rectifier: 'rectifier',
  recovery: 'recovery',
  deadTime: 'dead time',
  capacitors: 'capacitors',
  fixed: 'controller',
};

/** Efficiency, waveforms and losses of the converter at its place; null without one. */
export function converterCurves(design: Design, feed: Feed, point: PowerPoint): ConverterCurves | null {
  if (!feed.module) return null;
  const pepCurrent = point.railCurrent;
  if (!(pepCurrent > 0)) return null;
  const railCurrent = Array.from(
    { length: points },
    (_, index) => pepCurrent * beyond * Math.max(index / (points - 1), 0.01),
  );
  const { minimumInput } = design.converter;
  const voltages = [minimumInput, point.loadVoltage, highestVoltage(design)]
    .filter((voltage) => voltage < design.converter.outputVoltage)
    .sort((a, b) => a - b)
    .filter((voltage, index, all) => index === 0 || voltage - all[index - 1]! > 0.05);
  return {
    railCurrent,
    pepCurrent,
    curves: voltages.map((voltage) => efficiencyCurve(design, feed, voltage, railCurrent)),
    waveforms: feed.designed ? waveformsOf(feed.designed) : null,
    losses: feed.designed ? lossesOf(feed.designed) : [],
  };
}

function efficiencyCurve(
  design: Design,
  feed: Feed,
  inputVoltage: number,
  railCurrent: readonly number[],
): EfficiencyCurve {
  const rail = design.converter.outputVoltage;
  const found = railCurrent.map((current) => {
    if (feed.designed) {
      const point = phasedPoint(feed.designed.parts, inputVoltage, rail, current);
      return point.ok ? { efficiency: point.value.efficiency, loss: point.value.total } : null;
    }
    const point = moduleInputCurrent(feed.module!, inputVoltage, rail * current);
    return point.ok ? { efficiency: point.value.efficiency, loss: point.value.loss } : null;
  });
  return {
    inputVoltage,
    efficiency: found.map((one) => one?.efficiency ?? null),
    loss: found.map((one) => one?.loss ?? null),
  };
}

function waveformsOf(converter: DesignedConverter) {
  const { parts, pep, outputCurrent } = converter;
  return { ...phasedWaveforms(parts, pep, outputCurrent), phases: parts.phases };
}

function lossesOf({ pep }: DesignedConverter): ConverterCurves['losses'] {
  return (Object.entries(pep.terms) as [LossTerm, number][])
    .map(([term, power]) => ({ label: lossNames[term], power }))
    .filter((one) => one.power > 0)
    .sort((a, b) => b.power - a.power);
}
