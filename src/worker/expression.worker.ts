import { evaluateExpression } from '../engine/quantity/expression.ts';
import type { ExpressionAnswer, ExpressionQuestion } from './messages.ts';

interface WorkerScope {
  onmessage: ((event: MessageEvent<ExpressionQuestion>) => void) | null;
  postMessage(answer: ExpressionAnswer): void;
}

const scope = self as unknown as WorkerScope;

scope.onmessage = (event) => {
  const { id, text, dimension, unit } = event.data;
  scope.postMessage({ id, outcome: evaluateExpression(text, dimension, unit) });
};
