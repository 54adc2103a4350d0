import type { Dimension } from '../../shared/design/fields.ts';
import { failure, type Outcome } from '../../shared/outcome.ts';
import type { Reading } from '../engine/quantity/read.ts';
import type { ExpressionAnswer, ExpressionQuestion } from './messages.ts';

type Settle = (outcome: Outcome<Reading>) => void;

const waiting = new Map<number, Settle>();
let worker: Worker | undefined;
let lastId = 0;

function settle(id: number, outcome: Outcome<Reading>): void {
  waiting.get(id)?.(outcome);
  waiting.delete(id);
}

function startWorker(): Worker {
  const started = new Worker(new URL('./expression.worker.ts', import.meta.url), { type: 'module' });
  started.onmessage = (event: MessageEvent<ExpressionAnswer>) => settle(event.data.id, event.data.outcome);
  started.onerror = () => {
    worker = undefined;
    for (const id of [...waiting.keys()]) settle(id, notAvailable());
  };
  return started;
}

function notAvailable() {
  return failure(
    'expressionNotAvailable',
    'Products and brackets cannot be worked out here; type the result.',
  );
}

/** Evaluates typed text beside the page, so that typing never waits for it. Always settles, never throws. */
export function evaluateBeside(text: string, dimension: Dimension, unit: string): Promise<Outcome<Reading>> {
  try {
    worker ??= startWorker();
    const id = ++lastId;
    const question: ExpressionQuestion = { id, text, dimension, unit };
    return new Promise((resolve) => {
      waiting.set(id, resolve);
      worker?.postMessage(question);
    });
  } catch {
    return Promise.resolve(notAvailable());
  }
}
