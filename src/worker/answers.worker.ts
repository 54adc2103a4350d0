import { createAnswersJob } from './answersJob.ts';
import type { AnswerNews, AnswerOrder, CancelOrder } from './answersMessages.ts';

interface WorkerScope {
  onmessage: ((event: MessageEvent<AnswerOrder | CancelOrder>) => void) | null;
  postMessage(news: AnswerNews): void;
}

const scope = self as unknown as WorkerScope;
const job = createAnswersJob((news) => scope.postMessage(news));

scope.onmessage = ({ data }) => job(data);
