import type { Design } from '../../../shared/design/schema.ts';
import { type Outcome, success } from '../../../shared/outcome.ts';
import type { Service } from '../../../shared/solution.ts';
import { type HottestPoint, hottestOf } from '../amplifier/linearStage.ts';
import type { PowerPoint } from './feed.ts';
import type { Final } from './final.ts';
import type { HeatPath } from './heatPath.ts';
import { tabulatedLoads } from './loadTable.ts';
import { type Loads, receivePoint, type ServiceLoad, serviceLoad } from './serviceLoad.ts';
import type { Store } from './store.ts';

/** A design ready to be asked for any service at any duty. */
export interface Coupled {
  readonly design: Design;
  readonly loads: Loads;
  readonly path: HeatPath;
  readonly store: Store;
  readonly receive: PowerPoint;
  /** Junction temperatures are settled to this, K, before the heat of a temperature-dependent final is believed. */
  readonly settleTolerance: number;
  /** Hottest amplitude of a final that follows its envelope, at its PEP rail and a junction temperature; null for the others. */
  hottest(junction: number): HottestPoint | null;
  /** Load of a service at a junction temperature, kept when it does not depend on it. */
  load(service: Service, junction: number): Outcome<ServiceLoad>;
}

/** Of the design itself; far below what is shown. */
const usualSettleTolerance = 1e-5;

export function couple(
  design: Design,
  loads: Loads,
  path: HeatPath,
  store: Store,
  railAtPep: number,
): Outcome<Coupled> {
  const receive = receivePoint(loads, design.surroundings.ambient);
  if (!receive.ok) return receive;
  const kept = new Map<Service, Outcome<ServiceLoad>>();
  const table = tabulatedLoads(loads);
  const { final } = loads;
  return success({
    design,
    loads,
    path,
    store,
    receive: receive.value,
    settleTolerance: usualSettleTolerance,
    hottest: (junction) => hottestAmplitude(final, railAtPep, junction),
    load(service, junction) {
      if (final.feelsTemperature) return table(service, junction);
      const known = kept.get(service) ?? serviceLoad(loads, service, junction);
      kept.set(service, known);
      return known;
    },
  });
}

function hottestAmplitude(final: Final, rail: number, junction: number): HottestPoint | null {
  if (!final.followsEnvelope) return null;
  return hottestOf((r) => {
    const point = final.at(r, rail, junction);
    return rail * point.railCurrent - point.rfPower + final.drivePower * r * r;
  });
}
