/**
 * The engine's door: pure functions from a design to results. All numbers SI; nothing here knows a page, a file or a
 * clock. See shared/solution.ts for what comes back.
 */
export { amplifierCurves } from './couple/amplifierCurves.ts';
export { band, bandSteps } from './couple/band.ts';
export { benchReportOf } from './couple/benchKnowledge.ts';
export { ratingCurve, sweep, warmUp } from './couple/curves.ts';
export { plateMap, suggestedPlaces } from './couple/plateMap.ts';
export { solve } from './couple/solve.ts';
export { supplyCurves } from './couple/supplyCurves.ts';
