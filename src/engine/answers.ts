/**
 * The engine's second door: what to change, any value as the unknown, what matters, and maps. Apart from `index.ts`
 * because these need the design schema with its ranges, which the figures of the live page do without.
 *
 * The `…Steps` yield the share done, so that long work can be shown and stopped.
 */

export { doubtRanking, doubtRankingSteps } from './couple/answers/doubtRanking.ts';
export { applyEdits } from './couple/answers/edits.ts';
export { map, mapSteps } from './couple/answers/map.ts';
export { type RemedyOptions, remedies, remedySteps } from './couple/answers/remedies.ts';
export { measureOfVerdict, sensitivity, sensitivitySteps } from './couple/answers/sensitivity.ts';
export { solveFor, solveForSteps } from './couple/answers/solveFor.ts';
