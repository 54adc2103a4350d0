import type { Band } from '../../shared/band.ts';
import type { Design } from '../../shared/design/schema.ts';
import type { Outcome } from '../../shared/outcome.ts';
import type { EngineAnswer, EngineCall, EngineCalls, EngineOrder, EngineQuestion } from './messages.ts';

/** The engine's calls, each answered later. */
export type EngineBeside = {
  readonly [Call in EngineCall]: (
    ...args: Parameters<EngineCalls[Call]>
  ) => Promise<ReturnType<EngineCalls[Call]>>;
} & LongWork;

type Progress = (share: number) => void;

/** Work of a second or so, with news of how far it is. */
export interface LongWork {
  /** The band of a design; fails with `cancelled` when a newer one is asked for or `stopBand` is called. */
  readonly band: (design: Design, progress: Progress) => Promise<Outcome<Band>>;
  readonly stopBand: () => void;
}

interface Ask extends LongWork {
  readonly call: (call: EngineCall, args: EngineQuestion['args']) => Promise<unknown>;
}

interface Waiting {
  readonly settle: (result: unknown) => void;
  readonly fail: (error: Error) => void;
  readonly progress?: Progress;
}

/** Asks a worker of its own, in order. A worker that dies fails what it owes. */
function askWorker(): Ask {
  const waiting = new Map<number, Waiting>();
  const worker = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' });
  let lastId = 0;
  worker.onmessage = ({ data }: MessageEvent<EngineAnswer>) => {
    const owed = waiting.get(data.id);
    if ('progress' in data) {
      owed?.progress?.(data.progress);
      return;
    }
    waiting.delete(data.id);
    if (data.ok) owed?.settle(data.result);
    else owed?.fail(new Error(data.message));
  };
  worker.onerror = () => {
    for (const owed of waiting.values())
      owed.fail(new Error('the computing part of the sheet could not be started'));
    waiting.clear();
  };
  const order = (make: (id: number) => EngineOrder, progress?: Progress) =>
    new Promise<unknown>((settle, fail) => {
      const id = ++lastId;
      waiting.set(id, { settle, fail, ...(progress ? { progress } : {}) });
      worker.postMessage(make(id));
    });
  return {
    call: (call, args) => order((id) => ({ id, call, args })),
    band: (design, progress) => order((id) => ({ id, band: design }), progress) as Promise<Outcome<Band>>,
    stopBand: () => worker.postMessage({ stopBand: true } satisfies EngineOrder),
  };
}

/** Where a browser allows no worker, the engine computes in the page itself. */
function askPage(): Ask {
  const engine = import('../engine/index.ts');
  const bands = Promise.all([engine, import('./bandJob.ts')]).then(([{ bandSteps }, { createBandJob }]) =>
    createBandJob(bandSteps),
  );
  return {
    call: async (call, args) => {
      const work = (await engine)[call] as (...given: EngineQuestion['args']) => unknown;
      return work(...args);
    },
    band: async (design, progress) => {
      const job = await bands;
      return new Promise((done, refuse) => {
        job.start(design, { progress, done, fail: (message) => refuse(new Error(message)) });
      });
    },
    stopBand: () => void bands.then((job) => job.stop()),
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
      ask.call(name, args);
  return {
    solve: call('solve'),
    sweep: call('sweep'),
    warmUp: call('warmUp'),
    ratingCurve: call('ratingCurve'),
    plateMap: call('plateMap'),
    suggestedPlaces: call('suggestedPlaces'),
    amplifierCurves: call('amplifierCurves'),
    supplyCurves: call('supplyCurves'),
    benchReportOf: call('benchReportOf'),
    band: ask.band,
    stopBand: ask.stopBand,
  } as EngineBeside;
}
