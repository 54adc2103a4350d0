import type { DoubtRanking, DoubtRow } from '../../../../shared/answers.ts';
import type { Band } from '../../../../shared/band.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { failure, type Outcome, success } from '../../../../shared/outcome.ts';
import { services } from '../../../../shared/solution.ts';
import { bandSteps } from '../band.ts';
import { solve } from '../solve.ts';
import { baseSamples } from './doubt.ts';
import { type LoadPart, loadEdges, loadPartsOf, noDoubt } from './edge.ts';
import { gaugeFor } from './gauge.ts';
import { lastOf } from './steps.ts';

/** Doubts with less of the spread are not worth a line. */
const leastShare = 0.01;

/** Rows of the band for the quantities it ranks; null for all others. */
function bandRows(band: Band, quantity: string): readonly DoubtRow[] | null {
  if (quantity === 'touchTemperature') return band.metalRanking;
  const service = services.find((name) => quantity === `${name}.junctionPeak`);
  return service === undefined ? null : (band.ranking[service] ?? []);
}

function bandEdges(band: Band, quantity: string) {
  return band.edges[quantity === 'touchTemperature' ? 'metal' : quantity];
}

/** What each part of the load moves the quantity by, on its own. */
function loadRows(parts: readonly LoadPart[], quantity: string): readonly DoubtRow[] {
  const moved = parts.map(({ key, label, advice, path, edges: [less, more] }) => {
    const effect = ((more[quantity] ?? 0) - (less[quantity] ?? 0)) / 2;
    return { key, label, advice, path, effect };
  });
  const whole = moved.reduce((sum, { effect }) => sum + effect * effect, 0);
  if (!(whole > 0)) return [];
  return moved
    .map((row) => ({ ...row, share: row.effect ** 2 / whole }))
    .filter(({ share }) => share >= leastShare)
    .sort((a, b) => b.share - a.share);
}

/** Steps to a ranking of doubts: yields the share done. */
export function* doubtRankingSteps(
  design: Design,
  quantity: string,
): Generator<number, Outcome<DoubtRanking>> {
  const gauge = gaugeFor(quantity, noDoubt);
  if (!gauge.ok) return gauge;
  const { label, dimension } = gauge.value;
  const value = solve(design).values[quantity];
  if (value === undefined) return failure('notComputed', `“${label}” cannot be computed for this design.`);
  const band = yield* bandSteps(design, { samples: baseSamples });
  const inBand = band.ok ? bandRows(band.value, quantity) : null;
  const parts = loadPartsOf(design);
  const rows = inBand ?? loadRows(parts, quantity);
  if (rows.length === 0) {
    return failure(
      'noDoubt',
      `The sheet knows no doubt of “${label}”: everything it rests on is taken as entered.`,
    );
  }
  const edges = inBand && band.ok ? bandEdges(band.value, quantity) : loadEdges(quantity, value, parts);
  return success({
    measure: { quantity, label, dimension },
    value,
    low: edges?.low ?? value,
    high: edges?.high ?? value,
    rows,
  });
}

/**
 * What makes a found quantity unsure, most important first: the share of its spread each doubt accounts for, and what
 * its own 90 % half-width moves the quantity by. For junctions and the metal from the samples of the band; for the 12 V
 * side from efficiency of final and converter, the only doubts known of it.
 *
 * Fails with `noSuchQuantity`, `quantityIsGiven`, `notComputed`, or `noDoubt` where none is known.
 */
export function doubtRanking(design: Design, quantity: string): Outcome<DoubtRanking> {
  return lastOf(doubtRankingSteps(design, quantity));
}
