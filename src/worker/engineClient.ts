import type { EngineAnswer, EngineCall, EngineCalls, EngineQuestion } from './messages.ts';

/** The engine's calls, each answered later. */
export type EngineBeside = {
  readonly [Call in EngineCall]: (
    ...args: Parameters<EngineCalls[Call]>
  ) => Promise<ReturnType<EngineCalls[Call]>>;
};

type Ask = (call: EngineCall, args: EngineQuestion['args']) => Promise<unknown>;

interface Waiting {
  readonly settle: (result: unknown) => void;
  readonly fail: (error: Error) => void;
}

/** Asks a worker of its own, in order. A worker that dies fails what it owes. */
function askWorker(): Ask {
  const waiting = new Map<number, Waiting>();
  const worker = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' });
  let lastId = 0;
  worker.onmessage = ({ data }: MessageEvent<EngineAnswer>) => {
    const owed = waiting.get(data.id);
    waiting.delete(data.id);
    if (data.ok) owed?.settle(data.result);
    else owed?.fail(new Error(data.message));
  };
  worker.onerror = () => {
    for (const owed of waiting.values())
      owed.fail(new Error('the computing part of the sheet could not be started'));
    waiting.clear();
  };
  return (call, args) =>
    new Promise((settle, fail) => {
      const id = ++lastId;
      waiting.set(id, { settle, fail });
      worker.postMessage({ id, call, args } satisfies EngineQuestion);
    });
}

/** Where a browser allows no worker, the engine computes in the page itself. */
function askPage(): Ask {
  const engine = import('../engine/index.ts');
  return async (call, args) => {
    const work = (await engine)[call] as (...given: EngineQuestion['args']) => unknown;
    return work(...args);
  };
}

function firstThatWorks(): Ask {
  try {
    return askWorker();
  } catch {
    return askPage();
  }
}

/** The engine beside the page, so that typing never waits for it. */
export function engineBeside(): EngineBeside {
  const ask = firstThatWorks();
  const call =
    (name: EngineCall) =>
    (...args: EngineQuestion['args']) =>
      ask(name, args);
  return {
    solve: call('solve'),
    sweep: call('sweep'),
    warmUp: call('warmUp'),
    ratingCurve: call('ratingCurve'),
    plateMap: call('plateMap'),
    suggestedPlaces: call('suggestedPlaces'),
    amplifierCurves: call('amplifierCurves'),
  } as EngineBeside;
}
