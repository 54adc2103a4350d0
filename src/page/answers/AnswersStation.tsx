import './answers.css';
import { createSignal } from 'solid-js';
import type { Edge } from '../../../shared/answers.ts';
import { FitList } from './FitList.tsx';
import { LimitMap } from './LimitMap.tsx';
import { Matters } from './Matters.tsx';
import { EdgePicker } from './parts.tsx';
import { Remedies } from './Remedies.tsx';
import { SolveFor } from './SolveFor.tsx';

/** What to change when it does not fit, any value as the unknown, what matters, and maps. */
export function AnswersStation(props: { number: number }) {
  const [edge, setEdge] = createSignal<Edge>('pessimistic');
  return (
    <section class="station answers" id="answers" aria-labelledby="answers-title">
      <h2 class="station-title" id="answers-title">
        <span class="station-number">{props.number}</span> Answers
      </h2>
      <div class="answers-body">
        <EdgePicker edge={edge()} onPick={setEdge} />
        <Remedies edge={edge()} />
        <div class="answers-pair">
          <SolveFor edge={edge()} />
          <Matters />
        </div>
        <LimitMap edge={edge()} />
        <FitList />
      </div>
    </section>
  );
}
