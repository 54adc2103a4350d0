import type { Design } from '../../../shared/design/schema.ts';
import type { Service } from '../../../shared/solution.ts';
import type { SupplyCurves } from '../../../shared/supplyCurves.ts';
import { converterCurves } from './converterCurves.ts';
import { switchingNoise } from './noise.ts';
import { type Prepared, prepare } from './prepare.ts';
import { type CycleState, cycleAt } from './serviceCycle.ts';
import { protect } from './supplySide.ts';
import { timeCurrent } from './timeCurrent.ts';

const nothing: SupplyCurves = { timeCurrent: null, converter: null, noise: null };

/** What the plots of source and converter show; parts that cannot be had are null, and `solve` says why. */
export function supplyCurves(design: Design): SupplyCurves {
  const prepared = prepare(design);
  const { electrics } = prepared;
  if (!electrics.ok) return nothing;
  const { feed, wire, pep } = electrics.value;
  const noise = switchingNoise(design, feed);
  if (!pep.ok) return { ...nothing, noise };
  const cycles = cyclesOf(prepared);
  const rms = cycles.ssb ? Math.sqrt(cycles.ssb.load.over.sourceCurrentSquare) : pep.value.sourceCurrent;
  const protection = protect(design, wire, pep.value.sourceCurrent, rms, prepared.pressure);
  return {
    timeCurrent: timeCurrent(design, wire.conductor, protection, pep.value, cycles),
    converter: converterCurves(design, feed, pep.value),
    noise,
  };
}

function cyclesOf({ coupled, design }: Prepared): Readonly<Record<Service, CycleState | null>> {
  const stateOf = (service: Service) => {
    if (!coupled.ok) return null;
    const found = cycleAt(coupled.value, service, design.service.transmitShare);
    return found.ok ? found.value : null;
  };
  return { ssb: stateOf('ssb'), cw: stateOf('cw'), keyDown: stateOf('keyDown') };
}
