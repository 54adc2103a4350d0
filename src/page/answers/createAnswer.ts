import { type Accessor, batch, createSignal, onCleanup } from 'solid-js';
import type { Design } from '../../../shared/design/schema.ts';
import { askAnswers } from '../../worker/answersClient.ts';
import type { AnswerKind, AnswerQuestions, AnswerResults } from '../../worker/answersMessages.ts';
import { useSheet } from '../state/sheet.ts';

/** One kind of question with its answer, for the design as it stood when it was asked. */
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

export function createAnswer<Kind extends AnswerKind>(kind: Kind): Answer<Kind> {
  const sheet = useSheet();
  const [result, setResult] = createSignal<AnswerResults[Kind]>();
  const [asked, setAsked] = createSignal<Design>();
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
    const design = sheet.store.design();
    setFault(null);
    setProgress(0);
    takeBack = askAnswers(kind, design, question, {
      progress: setProgress,
      done: (found) => {
        batch(() => {
          setAsked(() => design);
          setResult(() => found);
          setProgress(null);
        });
      },
      fail: (message) => {
        setFault(message);
        setProgress(null);
      },
    });
  }

  onCleanup(cancel);
  return {
    result,
    asked,
    older: () => result() !== undefined && asked() !== sheet.store.design(),
    progress,
    fault,
    ask,
    cancel,
  };
}
