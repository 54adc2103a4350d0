import {
  amplifierCurves,
  bandSteps,
  benchReportOf,
  plateMap,
  ratingCurve,
  solve,
  suggestedPlaces,
  supplyCurves,
  sweep,
  warmUp,
} from '../engine/index.ts';
import { createBandJob } from './bandJob.ts';
import type { EngineAnswer, EngineCall, EngineCalls, EngineOrder, EngineQuestion } from './messages.ts';

interface WorkerScope {
  onmessage: ((event: MessageEvent<EngineOrder>) => void) | null;
  postMessage(answer: EngineAnswer): void;
}

const scope = self as unknown as WorkerScope;
const calls: EngineCalls = {
  solve,
  sweep,
  warmUp,
  ratingCurve,
  amplifierCurves,
  supplyCurves,
  plateMap,
  suggestedPlaces,
  benchReportOf,
};

function run(call: EngineCall, args: EngineQuestion['args']): ReturnType<EngineCalls[EngineCall]> {
  const work = calls[call] as (...given: EngineQuestion['args']) => ReturnType<EngineCalls[EngineCall]>;
  return work(...args);
}

const bands = createBandJob(bandSteps);

function answer({ id, call, args }: EngineQuestion): void {
  try {
    scope.postMessage({ id, ok: true, result: run(call, args) });
  } catch (error) {
    scope.postMessage({ id, ok: false, message: error instanceof Error ? error.message : String(error) });
  }
}

scope.onmessage = ({ data }) => {
  if ('stopBand' in data) {
    bands.stop();
    return;
  }
  if ('call' in data) {
    answer(data);
    return;
  }
  const { id } = data;
  bands.start(data.band, {
    progress: (progress) => scope.postMessage({ id, progress }),
    done: (result) => scope.postMessage({ id, ok: true, result }),
    fail: (message) => scope.postMessage({ id, ok: false, message }),
  });
};
