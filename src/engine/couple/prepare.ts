import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { pressureAtAltitude } from '../heat/air.ts';
import { insideStore } from './caseStore.ts';
import { type Coupled, couple } from './coupled.ts';
import type { DesignedConverter } from './designedConverter.ts';
import { type Final, prepareFinal } from './final.ts';
import { type HeatPath, prepareHeatPath, withConverterShares } from './heatPath.ts';
import { type JunctionLimits, junctionLimits } from './limits.ts';
import { openStore } from './store.ts';
import { type Electrics, prepareElectrics } from './supplySide.ts';

/** Every part of a design made ready. A part that cannot be made is a named reason and the others still stand. */
export interface Prepared {
  readonly design: Design;
  readonly pressure: number;
  readonly limits: JunctionLimits;
  readonly final: Outcome<Final>;
  readonly electrics: Outcome<Electrics>;
  readonly path: Outcome<HeatPath>;
  /** Present only when final, supply and heat path all are. */
  readonly coupled: Outcome<Coupled>;
}

/** The heat of a designed converter on the plate, divided among switches and rectifiers as at PEP. */
function dividedPath(path: HeatPath, designed: DesignedConverter | null): HeatPath {
  if (!designed) return path;
  const { switchLoss, rectifierLoss } = designed;
  const sum = switchLoss + rectifierLoss;
  return sum > 0 ? withConverterShares(path, [switchLoss / sum, rectifierLoss / sum]) : path;
}

function coupledOf(
  design: Design,
  electrics: Outcome<Electrics>,
  path: Outcome<HeatPath>,
  pressure: number,
): Outcome<Coupled> {
  if (!electrics.ok) return electrics;
  if (!path.ok) return path;
  const { pep, loads } = electrics.value;
  if (!pep.ok) return pep;
  const whole = dividedPath(path.value, loads.feed.designed);
  const store =
    design.sink.placement === 'inside'
      ? insideStore(design, whole, pressure)
      : openStore(whole, design.surroundings.ambient);
  return couple(design, loads, whole, store, pep.value.railVoltage);
}

/** The same design with its fan stopped; the electrical side is the one already found. */
export function withFanStopped(prepared: Prepared): Prepared {
  const { design, pressure, electrics } = prepared;
  const path = prepareHeatPath(design, pressure, false);
  return { ...prepared, path, coupled: coupledOf(design, electrics, path, pressure) };
}

/** Makes a design ready for `solve`, `sweep` and the rest. */
export function prepare(design: Design): Prepared {
  const pressure = pressureAtAltitude(design.surroundings.altitude);
  const limits = junctionLimits(design.device, design.limits);
  const final = prepareFinal(design);
  const electrics = final.ok ? prepareElectrics(design, final.value, pressure, limits.design) : final;
  const path = prepareHeatPath(design, pressure);
  return {
    design,
    pressure,
    limits,
    final,
    electrics,
    path,
    coupled: coupledOf(design, electrics, path, pressure),
  };
}

/** Notes of all parts, each key once. */
export function notesOf(outcomes: readonly Outcome<unknown>[]) {
  const seen = new Set<string>();
  return outcomes
    .flatMap((outcome) => (outcome.ok ? outcome.notes : []))
    .filter((item) => {
      if (seen.has(item.key)) return false;
      seen.add(item.key);
      return true;
    });
}
