import type { Design } from '../../shared/design/schema.ts';
import type {
  AnswerKind,
  AnswerNews,
  AnswerOrder,
  AnswerQuestions,
  AnswerResults,
  CancelOrder,
} from './answersMessages.ts';

/** What the asker hears of its question. */
export interface AnswerListener<Kind extends AnswerKind> {
  readonly progress: (share: number) => void;
  readonly done: (result: AnswerResults[Kind]) => void;
  readonly fail: (message: string) => void;
}

interface Post {
  readonly send: (order: AnswerOrder | CancelOrder) => void;
}

const waiting = new Map<number, AnswerListener<AnswerKind>>();
let post: Post | undefined;
let lastId = 0;

function hear(news: AnswerNews): void {
  const listener = waiting.get(news.id);
  if ('progress' in news) {
    listener?.progress(news.progress);
    return;
  }
  waiting.delete(news.id);
  if ('result' in news) listener?.done(news.result as never);
  else listener?.fail(news.message);
}

function startWorker(): Post {
  const worker = new Worker(new URL('./answers.worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<AnswerNews>) => hear(data);
  worker.onerror = () => {
    post = undefined;
    for (const [id, listener] of waiting) {
      waiting.delete(id);
      listener.fail('the computing part of the sheet could not be started');
    }
  };
  return { send: (order) => worker.postMessage(order) };
}

/** Where a browser allows no worker, the answers are computed in the page itself, in small pieces. */
function startHere(): Post {
  const job = import('./answersJob.ts').then(({ createAnswersJob }) => createAnswersJob(hear));
  return { send: (order) => void job.then((take) => take(order)) };
}

function open(): Post {
  try {
    return startWorker();
  } catch {
    return startHere();
  }
}

/** Asks a worker of its own, so that neither typing nor the figures wait for it. Returns a way to take the question back. */
export function askAnswers<Kind extends AnswerKind>(
  kind: Kind,
  design: Design,
  question: AnswerQuestions[Kind],
  listener: AnswerListener<Kind>,
): () => void {
  post ??= open();
  const id = ++lastId;
  waiting.set(id, listener as AnswerListener<AnswerKind>);
  post.send({ id, kind, design, question });
  return () => {
    if (!waiting.delete(id)) return;
    post?.send({ cancel: id });
  };
}
