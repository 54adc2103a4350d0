import type { Caution, Severity } from '../../../shared/solution.ts';
import type { CautionBuilder, CautionFigures } from './cautionFigures.ts';
import { hotJunction, hotMetal } from './cautionsHeat.ts';
import { beryllia, fan, grease, heavySink, sharpFins } from './cautionsParts.ts';
import { exposure, outputBurn } from './cautionsRadio.ts';
import { converterHigh, railEnergy, railVoltage } from './cautionsRail.ts';
import { charging, fuseBreaking, fuseFar, hotWire, reversedLeads, supplyShort } from './cautionsSupply.ts';

export type { CautionFigures } from './cautionFigures.ts';

const rank: Readonly<Record<Severity, number>> = { danger: 0, warning: 1, caution: 2, note: 3 };

/** In the order of importance for people. */
const builders: readonly CautionBuilder[] = [
  supplyShort,
  fuseBreaking,
  fuseFar,
  hotWire,
  hotMetal,
  hotJunction,
  outputBurn,
  exposure,
  railVoltage,
  converterHigh,
  railEnergy,
  beryllia,
  charging,
  reversedLeads,
  fan,
  sharpFins,
  heavySink,
  grease,
];

/**
 * The cautions of a design, gravest first; within one severity in the order supply, hot metal, RF burns, exposure,
 * rail, beryllia, then the rest.
 *
 * Each has its computed figure, what to do and its source. Never says that something does no harm to people.
 */
export function cautions(figures: CautionFigures): readonly Caution[] {
  const found = builders.flatMap((build) => build(figures) ?? []);
  // The builders stand in the order of importance and the sort keeps it within a severity.
  return found.sort((first, second) => rank[first.severity] - rank[second.severity]);
}
