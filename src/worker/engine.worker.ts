import {
  amplifierCurves,
  plateMap,
  ratingCurve,
  solve,
  suggestedPlaces,
  sweep,
  warmUp,
} from '../engine/index.ts';
import type { EngineAnswer, EngineCall, EngineCalls, EngineQuestion } from './messages.ts';

interface WorkerScope {
  onmessage: ((event: MessageEvent<EngineQuestion>) => void) | null;
  postMessage(answer: EngineAnswer): void;
}

const scope = self as unknown as WorkerScope;
const calls: EngineCalls = {
  solve,
  sweep,
  warmUp,
  ratingCurve,
  amplifierCurves,
  plateMap,
  suggestedPlaces,
};

function run(call: EngineCall, args: EngineQuestion['args']): ReturnType<EngineCalls[EngineCall]> {
  const work = calls[call] as (...given: EngineQuestion['args']) => ReturnType<EngineCalls[EngineCall]>;
  return work(...args);
}

scope.onmessage = ({ data: { id, call, args } }) => {
  try {
    scope.postMessage({ id, ok: true, result: run(call, args) });
  } catch (error) {
    scope.postMessage({ id, ok: false, message: error instanceof Error ? error.message : String(error) });
  }
};
