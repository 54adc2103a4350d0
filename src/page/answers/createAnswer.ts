import { type Accessor, createMemo, createSignal, onCleanup } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { askAnswers } from '../../worker/answersClient.ts';
import type { AnswerKind, AnswerQuestions, AnswerResults } from '../../worker/answersMessages.ts';
import { useSheet } from '../state/sheet.ts';

/**
 * One kind of question with its answer, for the design as it stood when it was asked. While another of the kept designs
 * is open there is no answer: what it says to change is not meant for that one.
 */
export interface Answer<Kind extends AnswerKind> {
  readonly result: Accessor<AnswerResults[Kind] | undefined>;
  /** The design the answer belongs to. */
  readonly asked: Accessor<Design | undefined>;
  /** The answer belongs to a design that has been edited since. */
  readonly older: Accessor<boolean>;
  /** Share of the work that is done; null while nothing is being worked out. */
  readonly progress: Accessor<number | null>;
  /** A fault of the sheet itself, in words. */
  readonly fault: Accessor<string | null>;
  readonly ask: (question: AnswerQuestions[Kind]) => void;
  readonly cancel: () => void;
}

interface Found<Kind extends AnswerKind> {
  /** Which of the kept designs it belongs to, and as it stood then. */
  readonly id: string;
  readonly design: Design;
  readonly result: AnswerResults[Kind];
}

export function createAnswer<Kind extends AnswerKind>(kind: Kind): Answer<Kind> {
  const sheet = useSheet();
  const [found, setFound] = createSignal<Found<Kind>>();
  const shown = createMemo(() => (found()?.id === sheet.store.snapshot().id ? found() : undefined));
  const [progress, setProgress] = createSignal<number | null>(null);
  const [fault, setFault] = createSignal<string | null>(null);
  let takeBack = () => {};

  function cancel(): void {
    takeBack();
    takeBack = () => {};
    setProgress(null);
  }

  function ask(question: AnswerQuestions[Kind]): void {
    cancel();
    const { id, design } = sheet.store.snapshot();
    setFault(null);
    setProgress(0);
    takeBack = askAnswers(kind, design, question, {
      progress: setProgress,
      done: (result) => {
        setFound({ id, design, result });
        setProgress(null);
      },
      fail: (message) => {
        setFault(message);
        setProgress(null);
      },
    });
  }

  onCleanup(cancel);
  return {
    result: () => shown()?.result,
    asked: () => shown()?.design,
    older: () => shown() !== undefined && shown()?.design !== sheet.store.design(),
    progress,
    fault,
    ask,
    cancel,
  };
}
