import type {
  DoubtRanking,
  Edge,
  LimitMap,
  MapQuestion,
  RemedyList,
  Sensitivity,
  UnknownAnswer,
  UnknownQuestion,
  VerdictKey,
} from '../../shared/answers.ts';
import type { Design } from '../../shared/design/schema.ts';
import type { Outcome } from '../../shared/outcome.ts';

/** What can be asked of the second worker, by kind; all of it long work with news of its progress. */
export interface AnswerQuestions {
  readonly remedies: {
    readonly verdict?: VerdictKey | undefined;
    readonly edge: Edge;
    readonly pairs: boolean;
  };
  readonly unknown: UnknownQuestion & { readonly edge: Edge };
  readonly matters: { readonly quantity: string };
  readonly doubts: { readonly quantity: string };
  readonly map: MapQuestion & { readonly edge: Edge };
}

export interface AnswerResults {
  readonly remedies: RemedyList;
  readonly unknown: Outcome<UnknownAnswer>;
  readonly matters: Outcome<Sensitivity>;
  readonly doubts: Outcome<DoubtRanking>;
  readonly map: Outcome<LimitMap>;
}

export type AnswerKind = keyof AnswerQuestions;

export interface AnswerOrder {
  readonly id: number;
  readonly kind: AnswerKind;
  readonly design: Design;
  readonly question: AnswerQuestions[AnswerKind];
}

export interface CancelOrder {
  readonly cancel: number;
}

export type AnswerNews =
  | { readonly id: number; readonly progress: number }
  | { readonly id: number; readonly result: AnswerResults[AnswerKind] }
  | { readonly id: number; readonly message: string };
