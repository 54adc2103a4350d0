import type { Design } from '../../../shared/design/schema.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import type { PathRow, State } from '../../../shared/solution.ts';
import { joinUnit, writeNumber, writeQuantity } from '../quantity/write.ts';
import { pulseShare } from '../supply/inrush.ts';
import { usualDropShare } from '../supply/wireTable.ts';
import { type ConverterJunctions, judgeConverter } from './converterJudgement.ts';
import type { PowerPoint } from './feed.ts';
import { worst } from './limits.ts';
import { fallsShort } from './reachedPower.ts';
import type { InputFilter } from './supplyFilter.ts';
import type { Electrics, Protection } from './supplySide.ts';
import type { EmptyState } from './supplyStates.ts';

/** One thing the 12 V side is found to be, with how it stands. */
export interface SupplyFinding {
  readonly key: string;
  readonly state: State;
  readonly sentence: string;
  /** It forbids transmitting at any duty, not only for a long time. */
  readonly forbids: boolean;
}

/** Above this drop even lamps are commonly not wired; ABYC practice as quoted for non-critical circuits. */
const greatestDropShare = 0.1;

const amperes = (value: number) => joinUnit(writeNumber(value, 3, true), 'A');
const percent = (share: number) => joinUnit(writeNumber(share * 100, 2, true), '%');

function sourceFindings(design: Design, point: PowerPoint, longCurrent: number): SupplyFinding[] {
  const { continuousCurrent, peakCurrent } = design.source;
  const found: SupplyFinding[] = [];
  const atPeak = peakCurrent ?? continuousCurrent;
  if (atPeak !== null && point.sourceCurrent > atPeak) {
    found.push({
      key: 'sourcePeakCurrent',
      state: 'over',
      sentence: `The peak asks for ${amperes(point.sourceCurrent)} and the source cuts out at ${amperes(atPeak)}.`,
      forbids: true,
    });
  }
  if (continuousCurrent !== null && longCurrent > continuousCurrent) {
    found.push({
      key: 'sourceContinuousCurrent',
      state: 'over',
      sentence: `A long transmission draws ${amperes(longCurrent)}; the source gives ${amperes(continuousCurrent)} for long.`,
      forbids: true,
    });
  }
  return found;
}

function dropFinding(design: Design, electrics: Electrics, point: PowerPoint): SupplyFinding[] {
  const { resistance, seriesDrop } = electrics.wire.path;
  const drop = point.sourceCurrent * resistance + seriesDrop;
  const share = drop / design.source.openVoltage;
  if (share <= usualDropShare) return [];
  return [
    {
      key: 'drop',
      state: share > greatestDropShare ? 'over' : 'close',
      sentence: `${percent(share)} of the voltage is lost on the way at the peak; ${percent(usualDropShare)} is usual practice.`,
      forbids: false,
    },
  ];
}

function railFinding(design: Design, point: PowerPoint): SupplyFinding[] {
  const rail = joinUnit(writeNumber(point.railVoltage, 3), 'V');
  const watts = (value: number) => joinUnit(writeNumber(value, 3, true), 'W');
  if (!point.limited) return [];
  return [
    {
      key: 'railLimitsPower',
      state: fallsShort(design, point.antenna) ? 'over' : 'close',
      sentence: `At ${rail} on the rail this load makes ${watts(point.antenna)} at the peak, not ${watts(design.amplifier.pep)}: peaks are flattened.`,
      forbids: false,
    },
  ];
}

function wireFindings(protection: Protection, heatingCurrent: number): SupplyFinding[] {
  const allowed = protection.ampacity.limit;
  if (heatingCurrent <= allowed) return [];
  return [
    {
      key: 'wireAmpacity',
      state: 'over',
      sentence: `The wire may carry ${amperes(allowed)} and a long transmission draws ${amperes(heatingCurrent)}.`,
      forbids: true,
    },
  ];
}

function fuseFindings(protection: Protection): SupplyFinding[] {
  const reason = protection.fuseRating === null ? protection.fuseReason : null;
  const missing: SupplyFinding[] = reason
    ? [{ key: reason.key, state: 'over', sentence: reason.sentence, forbids: false }]
    : [];
  const judged = protection.findings
    .filter((finding) => finding.state !== 'fine')
    .map((finding) => ({
      key: `fuse.${finding.key}`,
      state: finding.state,
      sentence: finding.sentence,
      forbids: finding.key === 'load' && finding.state === 'over',
    }));
  return [...missing, ...judged];
}

/** The fuse protects only what carries at least its rating. */
function weakestFinding({ weakest, fuseRating }: Protection): SupplyFinding[] {
  if (!weakest || fuseRating === null || fuseRating <= weakest.rating * (1 + 1e-9)) return [];
  return [
    {
      key: 'fuse.weakestPart',
      state: 'close',
      sentence: `The ${amperes(fuseRating)} fuse does not protect the weakest part of the path, made for ${amperes(weakest.rating)}: ${weakest.name}.`,
      forbids: false,
    },
  ];
}

function pathFindings(rows: readonly PathRow[], pepCurrent: number): SupplyFinding[] {
  return rows
    .filter((row) => row.state !== 'fine' && row.rating !== null)
    .map((row) => ({
      key: 'pathPart',
      state: row.state,
      sentence:
        row.state === 'over'
          ? `${row.name}: made for ${amperes(row.rating!)}, the peak draws ${amperes(pepCurrent)}.`
          : `${row.name}: runs warm above three quarters of its ${amperes(row.rating!)}.`,
      forbids: false,
    }));
}

function emptyFindings(empty: Outcome<EmptyState> | null): SupplyFinding[] {
  if (!empty || empty.ok) return [];
  return [
    {
      key: 'emptySource',
      state: 'close',
      sentence: `Near empty the peak cannot be had any more. ${empty.reason.sentence}`,
      forbids: false,
    },
  ];
}

function branchWords(branch: InputFilter['branch']): string {
  if (!branch) return '';
  const capacitance = writeQuantity(branch.capacitance, 'capacitance', undefined, 2);
  return `, or ${capacitance} in series with ${writeQuantity(branch.resistance, 'resistance', undefined, 2)} beside them`;
}

function filterFindings(filter: InputFilter | null, capacitance: number | null): SupplyFinding[] {
  if (!filter || filter.damping === null || filter.damping < 0 || capacitance === null) return [];
  const least =
    filter.leastCapacitance === null
      ? 'no capacitor alone makes it stable'
      : `at least ${writeQuantity(filter.leastCapacitance, 'capacitance')} are needed`;
  return [
    {
      key: 'inputFilterUnstable',
      state: 'close',
      sentence: `Wire, filter and the ${writeQuantity(capacitance, 'capacitance')} at the converter’s input swing at the peak: ${least}${branchWords(filter.branch)}.`,
      forbids: false,
    },
  ];
}

/** Times the supply is switched on in the life of the station. Own choice. */
export const switchOns = 10_000;

/** I² t a fuse may see so often, A² s; null where its melting I² t is not known. */
export function allowedPulse(melting: number | null): number | null {
  return melting === null ? null : melting * pulseShare(switchOns);
}

function inrushFindings(facts: SupplyFacts): SupplyFinding[] {
  const { inrush, allowedInrush } = facts;
  if (!inrush || allowedInrush === null || inrush.meltingIntegral <= allowedInrush) return [];
  const pulse = writeQuantity(inrush.meltingIntegral, 'pulseIntegral', undefined, 2);
  const borne = writeQuantity(allowedInrush, 'pulseIntegral', undefined, 2);
  return [
    {
      key: 'inrush',
      state: 'close',
      sentence: `Switching on sends ${pulse} through the fuse, which bears ${borne} ten thousand times: charge the capacitors through a resistor first.`,
      forbids: false,
    },
  ];
}

/** What is known of the 12 V side besides the operating point. */
export interface SupplyFacts {
  readonly rows: readonly PathRow[];
  readonly empty: Outcome<EmptyState> | null;
  readonly filter: InputFilter | null;
  /** F; null when not known. */
  readonly inputCapacitance: number | null;
  readonly inrush: { readonly meltingIntegral: number } | null;
  readonly allowedInrush: number | null;
  readonly junctions: ConverterJunctions | null;
}

/** Everything that is not fine about the 12 V side, the worst first. */
export function judgeSupply(
  design: Design,
  electrics: Electrics,
  point: PowerPoint,
  protection: Protection,
  rmsCurrent: number,
  facts: SupplyFacts,
): readonly SupplyFinding[] {
  const longCurrent = design.wiring.ssbOnly ? rmsCurrent : point.sourceCurrent;
  const found = [
    ...judgeConverter(design, electrics, point, facts.junctions),
    ...sourceFindings(design, point, longCurrent),
    ...wireFindings(protection, longCurrent),
    ...pathFindings(
      facts.rows.filter((row) => row.kind !== 'mainWire'),
      point.sourceCurrent,
    ),
    ...fuseFindings(protection),
    ...weakestFinding(protection),
    ...railFinding(design, point),
    ...dropFinding(design, electrics, point),
    ...emptyFindings(facts.empty),
    ...filterFindings(facts.filter, facts.inputCapacitance),
    ...inrushFindings(facts),
  ];
  return found.sort((a, b) => Number(b.state === 'over') - Number(a.state === 'over'));
}

export function supplyState(findings: readonly SupplyFinding[]): State {
  return worst(findings.map((finding) => finding.state));
}
