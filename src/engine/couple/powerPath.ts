import type { Outcome } from '../../../shared/outcome.ts';
import { type PowerStep, type Service, services } from '../../../shared/solution.ts';
import type { AveragePower, PowerPoint } from './feed.ts';
import type { CycleState } from './serviceCycle.ts';

type Powers = Pick<
  AveragePower,
  | 'sourcePower'
  | 'sourceHeat'
  | 'wiringHeat'
  | 'converterHeat'
  | 'boards'
  | 'dcPower'
  | 'drive'
  | 'rfPower'
  | 'deviceHeat'
  | 'networkHeat'
  | 'antenna'
>;

/**
 * Watts from station to station. What comes in equals what goes on plus the heat; between the wiring and the next step
 * the other boards take theirs, and at the final the drive is added.
 */
function stepsOf(power: Powers): readonly PowerStep[] {
  const terminals = power.sourcePower - power.sourceHeat;
  const load = terminals - power.wiringHeat;
  const intoFinal = load - power.boards;
  return [
    {
      key: 'source',
      label: 'source',
      powerIn: power.sourcePower,
      added: 0,
      powerOut: terminals,
      heat: power.sourceHeat,
    },
    {
      key: 'wiring',
      label: 'input wiring',
      powerIn: terminals,
      added: 0,
      powerOut: load,
      heat: power.wiringHeat,
    },
    {
      key: 'converter',
      label: 'converter',
      powerIn: intoFinal,
      added: 0,
      powerOut: power.dcPower,
      heat: power.converterHeat,
    },
    {
      key: 'amplifier',
      label: 'final',
      powerIn: power.dcPower + power.drive,
      added: power.drive,
      powerOut: power.rfPower,
      heat: power.deviceHeat,
    },
    {
      key: 'network',
      label: 'output network',
      powerIn: power.rfPower,
      added: 0,
      powerOut: power.antenna,
      heat: power.networkHeat,
    },
    { key: 'antenna', label: 'antenna', powerIn: power.antenna, added: 0, powerOut: power.antenna, heat: 0 },
  ];
}

/** Power path at PEP and averaged over one over of each service; empty where there is no operating point. */
export function powerPaths(
  pep: PowerPoint | null,
  cycles: Readonly<Record<Service, Outcome<CycleState>>>,
): Readonly<Record<'pep' | Service, readonly PowerStep[]>> {
  const paths: Record<'pep' | Service, readonly PowerStep[]> = {
    pep: pep ? stepsOf(pep) : [],
    ssb: [],
    cw: [],
    keyDown: [],
  };
  for (const service of services) {
    const cycle = cycles[service];
    if (cycle.ok) paths[service] = stepsOf(cycle.value.load.over);
  }
  return paths;
}
