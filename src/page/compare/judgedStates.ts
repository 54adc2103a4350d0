import { solutionAtEdge } from '../../../shared/band.ts';
import type { Solution } from '../../../shared/solution.ts';
import type { Results } from '../state/results.ts';
import type { JudgedStates } from './consequences.ts';

/** Figures of both, the pessimistic ones by their bands as soon as both have one. */
export function judgedSolutions(here: Results, there: Results): readonly (Solution | undefined)[] {
  const sure = here.band() !== undefined && there.band() !== undefined;
  return [here, there].map((side) => {
    const solution = side.solution();
    return solution && sure ? solutionAtEdge(solution, side.band()) : solution;
  });
}

/** Verdicts of both: with their bands as soon as both have one, else nominal for both, so that like is held against like. */
export function judgedStates(here: Results, there: Results): JudgedStates & { readonly sure: boolean } {
  const sure = here.band() !== undefined && there.band() !== undefined;
  const verdictsOf = (side: Results) => (sure ? side.band() : side.solution())?.verdicts ?? [];
  return { sure, mine: verdictsOf(here), theirs: verdictsOf(there) };
}
