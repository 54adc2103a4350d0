import type { Design } from '../../../shared/design/schema.ts';
import type { State } from '../../../shared/solution.ts';
import { joinUnit, writeNumber } from '../quantity/write.ts';
import { moduleLimitNote, moduleLimits } from '../supply/converterModule.ts';
import { usualDropShare } from '../supply/wireTable.ts';
import type { PowerPoint } from './feed.ts';
import { worst } from './limits.ts';
import type { Electrics, Protection } from './supplySide.ts';

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

function converterFindings({ feed }: Electrics, point: PowerPoint): SupplyFinding[] {
  if (!feed.module) return [];
  return moduleLimits(feed.module, point.mainCurrent, point.dcPower)
    .filter((limit) => limit.loading > 1 + 1e-9)
    .map((limit) => {
      const said = moduleLimitNote(limit);
      return { key: said.key, state: 'over', sentence: said.sentence, forbids: true };
    });
}

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
  const drop = point.sourceCurrent * electrics.wire.pathResistance + design.wiring.seriesDrop;
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
      state: 'close',
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

/** Everything that is not fine about the 12 V side, the worst first. */
export function judgeSupply(
  design: Design,
  electrics: Electrics,
  point: PowerPoint,
  protection: Protection,
  rmsCurrent: number,
): readonly SupplyFinding[] {
  const longCurrent = design.wiring.ssbOnly ? rmsCurrent : point.sourceCurrent;
  const found = [
    ...converterFindings(electrics, point),
    ...sourceFindings(design, point, longCurrent),
    ...wireFindings(protection, longCurrent),
    ...fuseFindings(protection),
    ...railFinding(design, point),
    ...dropFinding(design, electrics, point),
  ];
  return found.sort((a, b) => Number(b.state === 'over') - Number(a.state === 'over'));
}

export function supplyState(findings: readonly SupplyFinding[]): State {
  return worst(findings.map((finding) => finding.state));
}
