import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { type PathRow, type Service, services } from '../../../shared/solution.ts';
import { fuseMeltingIntegral } from '../supply/fuse.ts';
import type { Inrush } from '../supply/inrush.ts';
import type { DesignedConverter } from './designedConverter.ts';
import type { PowerPoint } from './feed.ts';
import type { Prepared } from './prepare.ts';
import type { CycleState } from './serviceCycle.ts';
import { type InputFilter, inputFilter, switchOn } from './supplyFilter.ts';
import { allowedPulse, judgeSupply, type SupplyFinding } from './supplyJudgement.ts';
import { pathRows } from './supplyPath.ts';
import { type Electrics, type Protection, protect } from './supplySide.ts';
import { type EmptyState, emptyState } from './supplyStates.ts';

type Cycles = Readonly<Record<Service, Outcome<CycleState>>>;

/** Junctions of a converter designed from parts in one service, K. */
export interface ServiceJunctions {
  readonly switch: number;
  readonly rectifier: number;
}

/** The 12 V side of a design that has an operating point, found and judged. */
export interface SupplyReport {
  readonly protection: Protection;
  readonly rows: readonly PathRow[];
  readonly findings: readonly SupplyFinding[];
  readonly empty: Outcome<EmptyState> | null;
  readonly filter: InputFilter | null;
  /** Input and output capacitors of the converter, F; null when not known. */
  readonly inputCapacitance: number | null;
  readonly outputCapacitance: number | null;
  readonly inrush: Inrush | null;
  readonly melting: number | null;
  readonly allowedInrush: number | null;
  readonly junctions: Readonly<Record<Service, ServiceJunctions | null>>;
}

/** Root mean square of the source current over the longest over, A: speech when the transmitter is locked to SSB. */
function longRms(cycles: Cycles, point: PowerPoint, ssbOnly: boolean): number {
  const ssb = cycles.ssb;
  return ssbOnly && ssb.ok ? Math.sqrt(ssb.value.load.over.sourceCurrentSquare) : point.sourceCurrent;
}

/**
 * Finds and judges the 12 V side. caseAir: mean air inside the case in a service at the planned duty, K.
 */
export function supplyReport(
  prepared: Prepared,
  electrics: Electrics,
  point: PowerPoint,
  cycles: Cycles,
  caseAir: (state: CycleState) => number,
): SupplyReport {
  const { design } = prepared;
  const rms = longRms(cycles, point, design.wiring.ssbOnly);
  const protection = protect(design, electrics.wire, point.sourceCurrent, rms, prepared.pressure);
  const longCurrent = design.wiring.ssbOnly ? rms : point.sourceCurrent;
  const rows = pathRows(protection.path, point.sourceCurrent, longCurrent);
  const capacitances = capacitancesOf(design, electrics);
  const melting =
    protection.fuseRating === null ? null : fuseMeltingIntegral(design.wiring.fuse, protection.fuseRating);
  const charged = (capacitances.input ?? 0) + (capacitances.output ?? 0);
  const { path } = electrics.feed;
  const junctions = junctionsOf(design, electrics.feed.designed, cycles, caseAir);
  const facts = {
    rows,
    empty: emptyState(design, electrics, prepared.limits.design),
    filter:
      design.converter.kind === 'none'
        ? null
        : inputFilter(
            design,
            path,
            point.loadVoltage,
            point.dcPower + point.converterHeat,
            capacitances.input,
          ),
    inputCapacitance: capacitances.input,
    inrush: charged > 0 ? switchOn(design, path, charged) : null,
    allowedInrush: allowedPulse(melting),
    junctions: worstOf(junctions),
  };
  return {
    ...facts,
    protection,
    melting,
    junctions,
    outputCapacitance: capacitances.output,
    findings: judgeSupply(design, electrics, point, protection, rms, facts),
  };
}

function capacitancesOf({ converter, hazards }: Design, { feed }: Electrics) {
  const used = feed.designed?.suggestion.parts;
  if (used) return { input: used.inputCapacitance, output: used.outputCapacitance };
  if (converter.kind === 'none') return { input: null, output: null };
  return {
    input: converter.inputCapacitance,
    output: hazards.railCapacitance > 0 ? hazards.railCapacitance : null,
  };
}

/**
 * Junctions in one service: the sink under the mean heat of an over that does not end, the junction over it under the
 * heat at PEP, because a junction follows the envelope and no averaging is due to it.
 */
function junctionsOf(
  design: Design,
  converter: DesignedConverter | null,
  cycles: Cycles,
  caseAir: (state: CycleState) => number,
): Readonly<Record<Service, ServiceJunctions | null>> {
  const found: Record<Service, ServiceJunctions | null> = { ssb: null, cw: null, keyDown: null };
  if (!converter) return found;
  const { parts, heatTo } = design.converter;
  for (const service of services) {
    const cycle = cycles[service];
    if (!cycle.ok) continue;
    const state = cycle.value;
    const heat = converter.siliconShare * state.load.over.converterHeat;
    const air = heatTo === 'caseAir' ? caseAir(state) : design.surroundings.ambient;
    const sink = heatTo === 'amplifierSink' ? state.platePeak : air + parts.ownSink * heat;
    // On the plate of the final it is warmer under each part than on the mean.
    const [underSwitch = 0, underRectifier = 0] = state.converterRises;
    found[service] = {
      switch: sink + underSwitch + parts.switchToSink * converter.switchLoss,
      rectifier: sink + underRectifier + parts.rectifierToSink * converter.rectifierLoss,
    };
  }
  return found;
}

function worstOf(junctions: Readonly<Record<Service, ServiceJunctions | null>>): ServiceJunctions | null {
  let worst: ServiceJunctions | null = null;
  for (const service of services) {
    const one = junctions[service];
    if (!one) continue;
    worst = worst
      ? {
          switch: Math.max(worst.switch, one.switch),
          rectifier: Math.max(worst.rectifier, one.rectifier),
        }
      : one;
  }
  return worst;
}
