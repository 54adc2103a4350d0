import type { Design } from '../../shared/design/schema.ts';
import {
  doubtRankingSteps,
  mapSteps,
  remedySteps,
  sensitivitySteps,
  solveForSteps,
} from '../engine/answers.ts';
import type {
  AnswerKind,
  AnswerNews,
  AnswerOrder,
  AnswerQuestions,
  AnswerResults,
  CancelOrder,
} from './answersMessages.ts';

type Steps = Generator<number, AnswerResults[AnswerKind]>;

function stepsOf({ kind, design, question }: AnswerOrder): Steps {
  const begin: { readonly [Kind in AnswerKind]: (design: Design, asked: AnswerQuestions[Kind]) => Steps } = {
    remedies: (of, asked) => remedySteps(of, asked),
    unknown: (of, asked) => solveForSteps(of, asked, asked.edge),
    matters: (of, asked) => sensitivitySteps(of, asked.quantity),
    doubts: (of, asked) => doubtRankingSteps(of, asked.quantity),
    map: (of, asked) => mapSteps(of, asked, asked.edge),
  };
  return (begin[kind] as (of: Design, asked: typeof question) => Steps)(design, question);
}

/** Work goes on this long before it lets messages in, ms. */
const longestPiece = 40;

/** Calls back after everything that already waits; setTimeout but in tests. */
export type Later = (work: () => void) => void;

/**
 * Answers orders in small pieces, so that a cancel gets through and several can be answered side by side.
 *
 * tell: where news of an order go; nothing is told of one that was cancelled.
 */
export function createAnswersJob(
  tell: (news: AnswerNews) => void,
  later: Later = (work) => void setTimeout(work, 0),
): (order: AnswerOrder | CancelOrder) => void {
  const running = new Set<number>();

  function advance(id: number, steps: Steps): void {
    if (!running.has(id)) return;
    try {
      const until = Date.now() + longestPiece;
      for (;;) {
        const step = steps.next();
        if (step.done) {
          running.delete(id);
          tell({ id, result: step.value });
          return;
        }
        if (Date.now() < until) continue;
        tell({ id, progress: step.value });
        later(() => advance(id, steps));
        return;
      }
    } catch (error) {
      running.delete(id);
      tell({ id, message: error instanceof Error ? error.message : String(error) });
    }
  }

  return (order) => {
    if ('cancel' in order) {
      running.delete(order.cancel);
      return;
    }
    running.add(order.id);
    later(() => advance(order.id, stepsOf(order)));
  };
}
