import type { WireMaterial, WireSize } from '../../../shared/design/supplyChoices.ts';
import type { WireRow } from '../../../shared/solution.ts';
import { ampacity } from './ampacity.ts';
import { type Conductor, conductorBySize, loopResistance, wireSizesByArea } from './conductor.ts';
import { type FaultInput, faultCurrent } from './faultCurrent.ts';
import type { FuseLoad } from './fuse.ts';
import { letThrough, wireProtection } from './fuseJudgement.ts';
import { wireTemperature } from './wireTemperature.ts';

/** Drop allowed in a feeder to electronics, share of the source voltage. ABYC E-11 as quoted. */
export const usualDropShare = 0.03;

/** The supply pair lies together: there and back. */
const supplyPair = 2;

export interface WireQuestion {
  /** One way, m. */
  readonly length: number;
  readonly material: WireMaterial;
  /** Loaded wires side by side; the supply pair is 2. */
  readonly together?: number;
  /** K */
  readonly insulationLimit: number;
  /** K */
  readonly ambient: number;
  /** Pa; sea level if not given. */
  readonly pressure?: number;
  /** A */
  readonly pepCurrent: number;
  /** Root mean square over the longest over, A: what heats the wire. */
  readonly heatingCurrent: number;
  /** Allowed drop at PEP, share of the open voltage. */
  readonly dropLimit?: number;
  /** Source up to the wire; its path resistance is that of holder, connectors and switch. */
  readonly source: FaultInput;
  readonly load: FuseLoad;
  /** A */
  readonly fuseRating: number;
  /** The size of the design. */
  readonly fitted: WireSize;
}

export interface WireTable {
  /** Thinnest first; `chosen` marks the size of the design. */
  readonly rows: readonly WireRow[];
  /** The thinnest size that passes everything, in the fitted wire's own system of sizes; null when none does. */
  readonly firstPassing: WireSize | null;
}

/**
 * All standard sizes for one supply line: resistance at working temperature, drop at PEP, allowed current, and what
 * each size fails in words.
 *
 * A size passes when the drop at PEP is within the limit, the heating current within its ampacity, the fuse not larger
 * than its ampacity, and the let-through of the fuse at a short within what its insulation bears. Currents are those
 * of the design as it stands; a much thinner or thicker wire would change them a little.
 */
export function wireTable(question: WireQuestion): WireTable {
  const rows = wireSizesByArea.map((size) => wireRow(question, conductorBySize(size, question.material)));
  const firstPassing = rows.find((row) => row.fails.length === 0 && sameSystem(row.size, question.fitted));
  return { rows, firstPassing: (firstPassing?.size ?? null) as WireSize | null };
}

/** Both sizes are gauges, or both metric. */
function sameSystem(one: string, other: string): boolean {
  return one.startsWith('AWG') === other.startsWith('AWG');
}

function wireRow(question: WireQuestion, conductor: Conductor): WireRow {
  const { length, insulationLimit, ambient, pressure, pepCurrent, heatingCurrent, source } = question;
  const together = question.together ?? supplyPair;
  const air = { ambient, together, ...(pressure === undefined ? {} : { pressure }) };
  const warm = wireTemperature(conductor, heatingCurrent, air);
  // A wire that would melt has no working temperature; its drop is shown at the limit of the insulation.
  const temperature = warm.ok ? warm.value.conductor : Math.max(insulationLimit, ambient);
  const resistance = loopResistance(conductor, length, temperature);
  const drop = resistance * pepCurrent;
  const dropShare = drop / source.openVoltage;
  const allowed = ampacity(conductor, insulationLimit, ambient, together, pressure);
  const fails = [
    ...dropFails(dropShare, question.dropLimit ?? usualDropShare),
    ...heatFails(heatingCurrent, allowed.limit, warm.ok),
    ...fuseFails(question, conductor, allowed.limit, resistance),
  ];
  return {
    size: conductor.size,
    area: conductor.area,
    resistance,
    drop,
    dropShare,
    ampacity: allowed.limit,
    fails,
    chosen: conductor.size === question.fitted,
  };
}

function dropFails(share: number, limit: number): string[] {
  if (share <= limit) return [];
  return [`drop ${percent(share)} at PEP, over ${percent(limit)}`];
}

function heatFails(current: number, limit: number, bears: boolean): string[] {
  if (!bears) return [`would melt at ${amperes(current)}`];
  if (current <= limit) return [];
  return [`too warm: ${amperes(current)} against ${amperes(limit)} allowed`];
}

function fuseFails(
  question: WireQuestion,
  conductor: Conductor,
  limit: number,
  resistance: number,
): string[] {
  const { source, load, fuseRating, insulationLimit } = question;
  const fails: string[] = [];
  if (wireProtection(fuseRating, limit) !== 'fine') {
    fails.push(`a ${amperes(fuseRating)} fuse does not protect it: ${amperes(limit)} allowed`);
  }
  const far = faultCurrent({ ...source, pathResistance: source.pathResistance + resistance });
  if (!far.ok) return fails;
  const found = letThrough({
    load,
    rating: fuseRating,
    wireAmpacity: limit,
    farFault: far.value,
    wireArea: conductor.adiabaticArea,
    insulationLimit,
  });
  if (found.state !== 'over') return fails;
  fails.push(
    found.letThrough === null
      ? `a short at the far end may not open the ${amperes(fuseRating)} fuse`
      : 'a short at the far end harms its insulation before the fuse opens',
  );
  return fails;
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(2))} %`;
}

function amperes(current: number): string {
  return `${Number(current.toPrecision(3))} A`;
}
