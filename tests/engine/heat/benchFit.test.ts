import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BenchReading,
  type BenchRun,
  fitRun,
  modelTemperatures,
} from '../../../src/engine/heat/benchFit.ts';
import { type BenchModel, benchModel } from '../../../src/engine/heat/benchModel.ts';
import { advance } from '../../../src/engine/heat/sinkTransient.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { descriptionOf } from './referenceSinks.ts';

const model = resultOf(
  benchModel({ ...descriptionOf(cases.warmup.geometry), mass: 1.3 }, { channelFactor: 1 }),
);
const unknownCapacity: BenchModel = { ...model, capacityUncertainty: null };

/** Repeatable noise of zero mean and unit spread, not random: a sum of sines without a common period. */
const noise = (i: number) => Math.SQRT2 * 0.6 * (Math.sin(12.9898 * i + 1) + Math.sin(78.233 * i));

interface Truth {
  film: number;
  heat: number;
  power: number;
  start: number;
  duration: number;
  spread: number;
}

function log(truth: Truth, air = (_: number) => 298.15): BenchReading[] {
  const node = { law: model.lawFor(truth.film, air(0)), capacity: model.heatCapacity * truth.heat };
  const readings: BenchReading[] = [];
  let plate = truth.start;
  for (let i = 0; i * 30 <= truth.duration; i++) {
    const now = air(i);
    if (i > 0) plate = now + advance(node, plate - now, truth.power, 30);
    readings.push({ time: 30 * i, plate: plate + truth.spread * noise(i), air: now });
  }
  return readings;
}

/** How long a run lasts, in time constants of what made it. */
function timeConstants(truth: Truth, { readings }: BenchRun): number {
  const hottest = Math.max(...readings.map(({ plate, air }) => plate - air));
  const conductance = model.lawFor(truth.film, 298.15).slope(hottest);
  return (truth.duration * conductance) / (truth.heat * model.heatCapacity);
}

const instruments = { sensorRise: 0, powerUncertainty: 0.01, temperatureUncertainty: 0.5 };
const warmUp: Truth = { film: 0.9, heat: 1.05, power: 60, start: 298.15, duration: 760, spread: 0.2 };
const runOf = (truth: Truth): BenchRun => ({ readings: log(truth), power: truth.power, ...instruments });

describe('bench run', () => {
  // Own computation: the exponential is 28, 12, 4 % off after 0.5, 1, 2 time constants; the nonlinear law is not.
  it.each([0.5, 1, 2])('gives back what made it, stopped after %d time constants', (length) => {
    const truth = { ...warmUp, duration: length * 752, spread: 0 };
    const fit = resultOf(fitRun(unknownCapacity, runOf(truth)));
    expectClose(fit.filmFactor, 0.9, 2e-3);
    expectClose(fit.heatCapacity, 1.05 * model.heatCapacity, 2e-3);
    expect(fit.plausible).toBe(true);
  });

  it('covers the truth with its uncertainty when readings scatter', () => {
    const truths = fc.record({
      film: fc.double({ min: 0.6, max: 1.6, noNaN: true }),
      heat: fc.double({ min: 0.95, max: 1.05, noNaN: true }),
      power: fc.double({ min: 30, max: 120, noNaN: true }),
      start: fc.double({ min: 296, max: 302, noNaN: true }),
      duration: fc.double({ min: 600, max: 3000, noNaN: true }),
      spread: fc.double({ min: 0, max: 0.3, noNaN: true }),
    });
    fc.assert(
      fc.property(truths, (truth) => {
        const run = runOf(truth);
        const outcome = fitRun(model, run);
        // Scatter decides whether a run close to the shortest is refused.
        if (!outcome.ok && outcome.reason.key === 'runTooShort') {
          expect(timeConstants(truth, run)).toBeLessThan(0.4);
          return;
        }
        const fit = resultOf(outcome);
        expect(Math.abs(Math.log(fit.filmFactor / truth.film))).toBeLessThan(3 * fit.uncertainty);
        expect(fit.uncertainty).toBeGreaterThan(0.01);
        expect(fit.scatter).toBeLessThan(1.5 * truth.spread + 0.1);
      }),
      { numRuns: 15 },
    );
  });

  it('reads a cool-down, if the sink was weighed', () => {
    const truth = { ...warmUp, heat: 1, power: 0, start: 350, duration: 1500 };
    const fit = resultOf(fitRun(model, runOf(truth)));
    expect(Math.abs(Math.log(fit.filmFactor / 0.9))).toBeLessThan(0.05);
    expect(fit.uncertainty).toBeLessThan(0.12);
    const refused = fitRun(unknownCapacity, runOf(truth));
    expect(refused.ok ? '' : refused.reason.key).toBe('capacityNeeded');
  });

  it('leaves strayed readings out and says so', () => {
    const readings = log(warmUp).map((reading, i) =>
      i === 5 || i === 17 ? { ...reading, plate: reading.plate + 8 } : reading,
    );
    const outcome = fitRun(model, { readings, power: 60, ...instruments });
    const fit = resultOf(outcome);
    expect(fit.rejected).toEqual([5, 17]);
    expectClose(fit.filmFactor, 0.9, 0.05);
    expect(outcome.ok && outcome.notes.map((n) => n.key)).toContain('outliersLeftOut');
    const wild = log(warmUp).map((reading, i) => ({
      ...reading,
      plate: reading.plate + (i % 3 === 0 ? 15 : 0),
    }));
    const refused = fitRun(model, { readings: wild, power: 60, ...instruments });
    expect(refused.ok && resultOf(refused).scatter < 3).toBe(false);
  });

  it('follows a room that warms up', () => {
    const air = (i: number) => 298.15 + i * 0.05;
    const run = { readings: log({ ...warmUp, heat: 1, spread: 0 }, air), power: 60, ...instruments };
    expectClose(resultOf(fitRun(model, run)).filmFactor, 0.9, 0.01);
  });

  it('allows for a sensor beside the resistor', () => {
    const readings = log({ ...warmUp, heat: 1, spread: 0 }).map((r) => ({
      ...r,
      plate: r.time > 0 ? r.plate + 0.05 * 60 : r.plate,
    }));
    const run = { readings, power: 60, ...instruments };
    expectClose(resultOf(fitRun(model, { ...run, sensorRise: 0.05 })).filmFactor, 0.9, 5e-3);
    expect(resultOf(fitRun(model, run)).filmFactor).toBeLessThan(0.87);
  });

  it('has no rise beside the resistor at the moment the power comes on', () => {
    const run = { readings: log({ ...warmUp, spread: 0 }), power: 60, ...instruments, sensorRise: 0.05 };
    const [first, second] = modelTemperatures(model, run, 0.9, model.heatCapacity, 298.15);
    expect(first).toBe(298.15);
    const far = modelTemperatures(model, { ...run, sensorRise: 0 }, 0.9, model.heatCapacity, 298.15);
    expect(second! - far[1]!).toBeCloseTo(3, 9);
    const later = { ...run, readings: run.readings.slice(1) };
    expect(modelTemperatures(model, later, 0.9, model.heatCapacity, 298.15)[0]).toBeCloseTo(301.15, 9);
  });

  it('names the power entered first when it is that of another run', () => {
    const readings = log({ ...warmUp, duration: 3000 });
    const entered = fitRun(model, { readings, power: 20, ...instruments });
    const sentence = entered.ok ? (entered.notes[0]?.sentence ?? '') : entered.reason.sentence;
    expect(sentence).toMatch(
      /far worse than it should: the power entered, 20(\.0)?\sW, may be too small for this run; .* dimension/,
    );
  });

  it('does not believe everything, and refuses what tells nothing', () => {
    const draughty = fitRun(model, runOf({ ...warmUp, film: 2.2, duration: 2000 }));
    expect(resultOf(draughty).plausible).toBe(false);
    expect(draughty.ok && draughty.notes.map((n) => n.key)).toContain('filmFactorImplausible');
    const keyOf = (run: BenchRun) => {
      const outcome = fitRun(model, run);
      return outcome.ok ? '' : outcome.reason.key;
    };
    const run = runOf(warmUp);
    expect(keyOf({ ...run, readings: run.readings.slice(0, 4) })).toBe('tooFewReadings');
    expect(keyOf({ ...run, readings: [...run.readings].reverse() })).toBe('runUnordered');
    expect(keyOf(runOf({ ...warmUp, power: 1 }))).toBe('changeTooSmall');
    expect(keyOf(runOf({ ...warmUp, duration: 150, power: 120 }))).toBe('runTooShort');
    const short = fitRun(model, runOf({ ...warmUp, duration: 400 }));
    expect(short.ok && short.notes.map((n) => n.key)).toContain('runShort');
  });
});
