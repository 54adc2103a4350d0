import { failure, type Note, note, type Outcome, success } from '../../../shared/outcome.ts';
import {
  type ConverterLoss,
  converterLossAt,
  type EfficiencyPoint,
  fitConverterLoss,
} from './converterLoss.ts';

/** What the design says of a bought step-up module. */
export interface ModuleInput {
  readonly outputVoltage: number;
  readonly points: readonly EfficiencyPoint[];
  readonly noLoadPower: number;
  readonly minimumInput: number;
  readonly inputCurrentLimit: number | null;
  readonly outputCurrentLimit: number | null;
  readonly powerLimit: number | null;
  /** Usable part of the rated power, 0..1. */
  readonly powerShare: number;
}

/** A module ready to compute with. */
export interface ConverterModule extends ModuleInput {
  readonly loss: ConverterLoss;
  /** Lowest input voltage of the efficiency points, V. */
  readonly lowestPointVoltage: number;
  /** Largest input current of the efficiency points, A. */
  readonly largestPointCurrent: number;
  readonly notes: readonly Note[];
}

export interface ModuleCurrent {
  /** A */
  readonly inputCurrent: number;
  /** W */
  readonly loss: number;
  readonly efficiency: number;
}

/** Which of the module's ratings a working point reaches; `loading` 1 is the rating itself. */
export interface ModuleLimit {
  readonly key: 'inputCurrent' | 'outputCurrent' | 'power';
  readonly value: number;
  readonly limit: number;
  readonly loading: number;
}

/** Efficiency points are used this far below their own input voltage before a note says so. Own choice. */
const usefulVoltageShare = 0.9;
/** And this far above their own current. Own choice. */
const usefulCurrentShare = 1.25;

/** Fits the loss curve once; keep the result for the life of the design. */
export function converterModule(input: ModuleInput): ConverterModule {
  const { loss, notes } = fitConverterLoss(input.points, input.noLoadPower);
  let lowestPointVoltage = Number.MAX_VALUE;
  let largestPointCurrent = 0;
  for (const point of input.points) {
    lowestPointVoltage = Math.min(lowestPointVoltage, point.inputVoltage);
    largestPointCurrent = Math.max(largestPointCurrent, point.inputCurrent);
  }
  return { ...input, loss, notes, lowestPointVoltage, largestPointCurrent };
}

/**
 * Input current of a module for a wanted output power, A, or −1 when no current delivers it. No allocation.
 *
 * b I² + (a − Vin) I + P0 + Po = 0, the smaller root, written so that b = 0 needs no case of its own.
 */
export function moduleCurrent(loss: ConverterLoss, inputVoltage: number, outputPower: number): number {
  const slope = inputVoltage - loss.proportional;
  const power = loss.fixed + outputPower;
  const discriminant = slope * slope - 4 * loss.square * power;
  if (slope <= 0 || discriminant < 0) return -1;
  return (2 * power) / (slope + Math.sqrt(discriminant));
}

/** Greatest output power of the loss curve at an input voltage, W: where more current only makes more loss. */
export function exhaustionPower(loss: ConverterLoss, inputVoltage: number): number {
  const slope = inputVoltage - loss.proportional;
  if (slope <= 0) return 0;
  if (loss.square <= 0) return Number.MAX_VALUE;
  return Math.max(0, (slope * slope) / (4 * loss.square) - loss.fixed);
}

/**
 * Input current, loss and efficiency of a module at an input voltage and an output power.
 *
 * Errors: `inputTooLow` below the lowest input voltage, `railBelowInput` when the source is at or above the rail (a
 * step-up converter passes it on), `moduleExhausted` when the loss curve has no current that delivers the power.
 * Passed ratings are notes of kind `limit`, not errors: the current is what it would be.
 */
export function moduleInputCurrent(
  module: ConverterModule,
  inputVoltage: number,
  outputPower: number,
): Outcome<ModuleCurrent> {
  if (inputVoltage < module.minimumInput) return inputTooLow(inputVoltage, module.minimumInput);
  if (inputVoltage >= module.outputVoltage) return railBelowInput(inputVoltage, module.outputVoltage);
  const inputCurrent = moduleCurrent(module.loss, inputVoltage, outputPower);
  if (inputCurrent < 0) {
    return moduleExhausted(inputVoltage, outputPower, exhaustionPower(module.loss, inputVoltage));
  }
  const loss = converterLossAt(module.loss, inputCurrent);
  const taken = outputPower + loss;
  const notes = [...module.notes, ...doubtNotes(module, inputVoltage, inputCurrent)];
  for (const limit of moduleLimits(module, inputCurrent, outputPower)) {
    if (limit.loading > 1) notes.push(moduleLimitNote(limit));
  }
  return success({ inputCurrent, loss, efficiency: taken > 0 ? outputPower / taken : 0 }, notes);
}

/** How far each known rating of the module is used, the most used first. */
export function moduleLimits(
  module: ConverterModule,
  inputCurrent: number,
  outputPower: number,
): ModuleLimit[] {
  const limits: ModuleLimit[] = [];
  const add = (key: ModuleLimit['key'], value: number, limit: number | null) => {
    if (limit !== null && limit > 0) limits.push({ key, value, limit, loading: value / limit });
  };
  add('inputCurrent', inputCurrent, module.inputCurrentLimit);
  add('outputCurrent', outputPower / module.outputVoltage, module.outputCurrentLimit);
  add('power', outputPower, module.powerLimit === null ? null : module.powerLimit * module.powerShare);
  return limits.sort((first, second) => second.loading - first.loading);
}

/** Whether a working point passes one of the module's ratings. Numbers only, no allocation. */
export function moduleOverloaded(
  module: ConverterModule,
  inputCurrent: number,
  outputPower: number,
): boolean {
  const { inputCurrentLimit, outputCurrentLimit, powerLimit } = module;
  if (inputCurrentLimit !== null && inputCurrent > inputCurrentLimit) return true;
  if (outputCurrentLimit !== null && outputPower > outputCurrentLimit * module.outputVoltage) return true;
  return powerLimit !== null && outputPower > powerLimit * module.powerShare;
}

/**
 * Greatest output power of a module at an input voltage, W, and the rating that ends it.
 *
 * The least of Vo · Io, Vin · Iin − loss(Iin), rated power times its usable part, and the end of the loss curve.
 */
export function greatestModulePower(
  module: ConverterModule,
  inputVoltage: number,
): { readonly power: number; readonly governing: ModuleLimit['key'] | 'loss' } {
  let power = exhaustionPower(module.loss, inputVoltage);
  let governing: ModuleLimit['key'] | 'loss' = 'loss';
  const lower = (key: ModuleLimit['key'], candidate: number) => {
    if (candidate >= power) return;
    power = Math.max(0, candidate);
    governing = key;
  };
  const { inputCurrentLimit, outputCurrentLimit, powerLimit } = module;
  if (inputCurrentLimit !== null) {
    lower('inputCurrent', inputVoltage * inputCurrentLimit - converterLossAt(module.loss, inputCurrentLimit));
  }
  if (outputCurrentLimit !== null) lower('outputCurrent', module.outputVoltage * outputCurrentLimit);
  if (powerLimit !== null) lower('power', powerLimit * module.powerShare);
  return { power, governing };
}

function doubtNotes(module: ConverterModule, inputVoltage: number, inputCurrent: number): Note[] {
  const notes: Note[] = [];
  if (inputVoltage < usefulVoltageShare * module.lowestPointVoltage) {
    notes.push(
      note(
        'outside validity',
        'converterRatioBeyondPoints',
        `The efficiency was given at ${module.lowestPointVoltage.toPrecision(3)} V and the input is ${inputVoltage.toPrecision(3)} V: at a higher step-up ratio the loss is larger than computed.`,
        { inputVoltage, pointVoltage: module.lowestPointVoltage },
      ),
    );
  }
  if (inputCurrent > usefulCurrentShare * module.largestPointCurrent) {
    notes.push(
      note(
        'outside validity',
        'converterCurrentBeyondPoints',
        `The efficiency was given up to ${module.largestPointCurrent.toPrecision(3)} A and ${inputCurrent.toPrecision(3)} A are drawn: the loss there is an estimate.`,
        { inputCurrent, pointCurrent: module.largestPointCurrent },
      ),
    );
  }
  return notes;
}

const limitWords: Readonly<Record<ModuleLimit['key'], readonly [string, string]>> = {
  inputCurrent: ['input current', 'A'],
  outputCurrent: ['output current', 'A'],
  power: ['usable output power', 'W'],
};

export function moduleLimitNote(limit: ModuleLimit): Note {
  const [words, unit] = limitWords[limit.key];
  return note(
    'limit',
    `converter${limit.key.charAt(0).toUpperCase()}${limit.key.slice(1)}`,
    `The converter is asked for ${limit.value.toPrecision(3)} ${unit}, its ${words} ends at ${limit.limit.toPrecision(3)} ${unit}.`,
    { value: limit.value, limit: limit.limit },
  );
}

export function inputTooLow(inputVoltage: number, minimumInput: number): Outcome<never> {
  return failure(
    'inputTooLow',
    `The converter gets ${inputVoltage.toPrecision(3)} V and cuts out below ${minimumInput.toPrecision(3)} V.`,
    { inputVoltage, minimumInput },
  );
}

export function railBelowInput(inputVoltage: number, outputVoltage: number): Outcome<never> {
  return failure(
    'railBelowInput',
    `A step-up converter cannot hold ${outputVoltage.toPrecision(3)} V from ${inputVoltage.toPrecision(3)} V: it passes the input on.`,
    { inputVoltage, outputVoltage },
  );
}

export function moduleExhausted(inputVoltage: number, outputPower: number, greatest: number): Outcome<never> {
  return failure(
    'moduleExhausted',
    `At ${inputVoltage.toPrecision(3)} V the module can give ${greatest.toPrecision(3)} W at most and ${outputPower.toPrecision(3)} W are asked: more current would only make more loss.`,
    { inputVoltage, outputPower, greatestPower: greatest },
  );
}
