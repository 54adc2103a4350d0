import type { Note, Outcome } from '../../../shared/outcome.ts';
import { type Service, services } from '../../../shared/solution.ts';
import { driftMultiplier } from '../amplifier/bias.ts';
import { activationTemperature, allowedDissipation, arrheniusFactor } from '../amplifier/derating.ts';
import { type AmplifierFinding, findingNotes, judgeAmplifier } from './amplifierJudgement.ts';
import { type BiasState, biasState } from './biasState.ts';
import { junctionToCaseOf } from './deviceStages.ts';
import { loadDoubts } from './loadDoubts.ts';
import type { Prepared } from './prepare.ts';
import type { CycleState } from './serviceCycle.ts';
import { turnsAdvice } from './turnsAdvice.ts';
import type { ValueList } from './values.ts';

/** What is said of the final beside its figures. */
export interface FinalSummary {
  /** The worst first. */
  readonly findings: readonly AmplifierFinding[];
  readonly notes: readonly Note[];
}

type Cycles = Readonly<Record<Service, Outcome<CycleState>>>;

/**
 * The figures of the final that need the heat path: bias stability, derating, ageing and doubts; and what is not fine
 * about it, the worst first.
 */
export function summariseFinal(list: ValueList, prepared: Prepared, cycles: Cycles): FinalSummary {
  const { design, limits } = prepared;
  const doubts = loadDoubts(design);
  list.putAll({
    closeLimit: limits.close,
    stopLimit: limits.stop,
    activationTemperature,
    efficiencyDoubt: doubts.efficiency,
    speechHeatDoubt: doubts.speechHeat,
  });
  const bias = biasOf(prepared, list);
  putBias(list, bias);
  for (const service of services) {
    const cycle = cycles[service];
    if (cycle.ok) putLimits(list, prepared, service, cycle.value);
  }
  const findings = judgeAmplifier(design, list.values, bias);
  return { findings, notes: [...findingNotes(findings), ...turnsAdvice(design, list.values)] };
}

function biasOf({ electrics, path, design, limits }: Prepared, list: ValueList): BiasState | null {
  const rail = list.values.railVoltagePep;
  if (!electrics.ok || !path.ok || rail === undefined) return null;
  return biasState(design, electrics.value.loads.final, path.value, rail, limits.design);
}

function putBias(list: ValueList, bias: BiasState | null): void {
  if (!bias) return;
  const multiplier = driftMultiplier(bias.loopGain);
  list.putAll({
    standingPerDevice: bias.current,
    biasDrift: bias.current > 0 ? bias.drift / bias.current : null,
    biasPath: bias.resistance,
    biasLoopGain: bias.current > 0 ? bias.loopGain : null,
    biasMultiplier: multiplier.ok && bias.current > 0 ? multiplier.value : null,
  });
}

/** Where the device stands on its derating line and how fast it ages, in one service at the planned duty. */
function putLimits(list: ValueList, { design, limits }: Prepared, service: Service, state: CycleState): void {
  const { device } = design;
  const node = state.nodes.find((one) => one.key === 'case');
  const rating = {
    maximumPower: device.maximumHeat ?? Number.POSITIVE_INFINITY,
    maximumJunction: device.maximumJunction,
    junctionToCase: junctionToCaseOf(device),
  };
  list.put(`${service}.heatPerDevice`, state.load.over.deviceHeat / device.count);
  if (node) {
    list.put(`${service}.casePeak`, node.peak);
    list.put(`${service}.allowedHeat`, allowedDissipation(rating, node.peak));
  }
  list.put(`${service}.ageingFactor`, arrheniusFactor(limits.design, state.junctionPeak));
}
