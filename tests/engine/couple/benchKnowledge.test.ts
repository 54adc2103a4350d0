import { describe, expect, it } from 'vitest';
import type { BenchRunInput } from '../../../shared/design/schema.ts';
import { benchReport, sinkKnowledge } from '../../../src/engine/couple/benchKnowledge.ts';
import { solve } from '../../../src/engine/index.ts';
import { resultOf } from '../resultOf.ts';
import { coolDownRun, warmUpRun } from './benchRuns.ts';
import { change, exampleOf } from './designs.ts';

const pressure = 101_325;
const field = exampleOf('field-station-60w');
/** A thick copper plate spreads evenly: the place of the thermometer then hardly matters. */
const even = change(field, { sink: { alloy: 'copper', baseThickness: 0.012 } });

const reportOf = (bench: readonly BenchRunInput[], design = even) =>
  resultOf(benchReport({ ...design, bench: [...bench] }, pressure));

describe('bench runs of a design', () => {
  // Logs made by stepping the sink itself, with drift, offset and noise: another way than the fit takes.
  it.each([
    [0.85, 1.1],
    [1, 1],
    [1.15, 0.92],
  ])('finds film factor %f and capacity x %f of a noisy warm-up', (film, capacity) => {
    const run = warmUpRun(even, { film, capacity, noise: 0.2, drift: 0.3 });
    const report = reportOf([run]);
    const [first] = report.runs;
    const found = resultOf(first!.found);
    expect(Math.abs(found.filmFactor / film - 1)).toBeLessThan(0.05);
    expect(Math.abs(found.heatCapacity! / (report.before.heatCapacity * capacity) - 1)).toBeLessThan(0.05);
    expect(Math.abs(Math.log(report.filmFactor / film))).toBeLessThan(2.5 * report.uncertainty);
    expect(report.uncertainty).toBeLessThan(0.06);
  });

  it('a thermometer 1 K off moves the film factor by less than the stated uncertainty covers', () => {
    const report = reportOf([warmUpRun(even, { film: 0.9, capacity: 1, offset: 1 })]);
    expect(Math.abs(Math.log(report.filmFactor / 0.9))).toBeLessThan(2 * report.uncertainty);
  });

  it('takes the room as it was logged, row by row, or as the run says', () => {
    const truth = { film: 0.9, capacity: 1, noise: 0.05, drift: 6 } as const;
    const logged = reportOf([warmUpRun(even, { ...truth, logRoom: true })]);
    const notLogged = reportOf([warmUpRun(even, truth)]);
    const miss = (report: typeof logged) => Math.abs(resultOf(report.runs[0]!.found).filmFactor / 0.9 - 1);
    expect(miss(logged)).toBeLessThan(0.02);
    // A room that warms unseen looks like a sink that cools badly.
    expect(miss(notLogged)).toBeGreaterThan(0.08);
    const sparse = warmUpRun(even, { ...truth, logRoom: true });
    const everyTenth = sparse.readings.map((reading, i) =>
      i % 10 === 0 ? reading : { ...reading, room: null },
    );
    expect(miss(reportOf([{ ...sparse, readings: everyTenth }]))).toBeLessThan(0.03);
  });

  it('asks for the power and the room that a run does not say, and goes on without it meanwhile', () => {
    const warm = warmUpRun(even, { film: 0.9, capacity: 1 });
    const bare = warm.readings.map((reading) => ({ ...reading, room: null }));
    const asked = (run: Partial<BenchRunInput>) => {
      const report = reportOf([{ ...warm, readings: bare, ...run }]);
      const { found } = report.runs[0]!;
      expect(report.counted).toBe(0);
      expect(report.filmFactor).toBe(1);
      return found.ok ? null : found.reason.key;
    };
    expect(asked({ power: null })).toBe('benchPowerMissing');
    expect(asked({ air: null })).toBe('benchAirMissing');
    expect(asked({ kind: 'coolDown', power: null, air: null })).toBe('benchAirMissing');
    const logged = warm.readings.map((reading) => ({ ...reading, room: warm.air }));
    expect(reportOf([{ ...warm, air: null, readings: logged }]).counted).toBe(1);
  });

  it('takes a room of its own for every run', () => {
    const warm = warmUpRun(even, { film: 0.9, capacity: 1 });
    const cold = {
      ...warm,
      air: warm.air! - 10,
      readings: warm.readings.map((r) => ({ ...r, temperature: r.temperature - 10 })),
    };
    const found = reportOf([warm, cold]).runs.map(({ found: run }) => resultOf(run).filmFactor);
    expect(found[1]! / found[0]!).toBeCloseTo(1, 1);
  });

  it('gives corrections and their doubts as figures of the solution', () => {
    const before = solve(field).values;
    expect(before).toMatchObject({ benchRunsCounted: 0, filmFactor: 1, capacityFactor: 1 });
    // e^(1.645 · 0.15) - 1, the judgement on the correlations.
    expect(before.filmDoubt).toBeCloseTo(0.28, 2);
    const after = solve({ ...field, bench: [warmUpRun(field, { film: 0.8, capacity: 1.1 })] }).values;
    expect(after.benchRunsCounted).toBe(1);
    expect(after.filmFactor).toBeGreaterThan(0.75);
    expect(after.filmFactor).toBeLessThan(0.88);
    expect(after.filmDoubt).toBeLessThan(0.12);
    expect(after.capacityFactor).toBeGreaterThan(1.03);
    expect(after.capacityDoubt).toBeLessThan(before.capacityDoubt!);
  });

  it('takes a cool-down of a weighed sink', () => {
    const weighed = change(even, { sink: { mass: 1.6 } });
    const report = reportOf([coolDownRun(weighed, { film: 0.9, capacity: 1, start: 60 })], weighed);
    expect(Math.abs(report.filmFactor / 0.9 - 1)).toBeLessThan(0.08);
  });

  it('takes steady readings, which say nothing of the heat capacity', () => {
    const log = warmUpRun(even, { film: 0.9, capacity: 1, duration: 14_400 });
    const steady: BenchRunInput = { ...log, kind: 'steady', readings: log.readings.slice(-3) };
    const report = reportOf([steady]);
    expect(Math.abs(report.filmFactor / 0.9 - 1)).toBeLessThan(0.05);
    expect(resultOf(report.runs[0]!.found).heatCapacity).toBeNull();
    expect(report.heatCapacity).toBe(report.before.heatCapacity);
  });

  it('weighs two runs with the estimate and is surer than by one', () => {
    const one = warmUpRun(even, { film: 0.9, capacity: 1 });
    const two = warmUpRun(even, { film: 0.9, capacity: 1, power: 45 });
    expect(reportOf([one, two]).uncertainty).toBeLessThanOrEqual(reportOf([one]).uncertainty);
    expect(reportOf([one, two]).counted).toBe(2);
  });

  it('leaves outliers out and names how many', () => {
    const run = warmUpRun(even, { film: 0.9, capacity: 1 });
    const spoilt = run.readings.map((reading, i) =>
      i === 20 || i === 41 ? { ...reading, temperature: reading.temperature + 8 } : reading,
    );
    const report = reportOf([{ ...run, readings: spoilt }]);
    expect(report.runs[0]!.curve?.rejected).toEqual([20, 41]);
    expect(report.runs[0]!.found.ok && report.runs[0]!.found.notes.map(({ key }) => key)).toContain(
      'outliersLeftOut',
    );
  });

  it('calls a run too short, one without readings, and one whose times do not rise, and keeps the estimate', () => {
    const run = warmUpRun(even, { film: 0.9, capacity: 1 });
    const rows: readonly (readonly [BenchRunInput['readings'], string])[] = [
      [[], 'tooFewReadings'],
      [run.readings.slice(0, 4), 'tooFewReadings'],
      [run.readings.slice(0, 3).flatMap((r) => [r, r]), 'runUnordered'],
      [warmUpRun(even, { film: 0.9, capacity: 1, power: 45, duration: 420 }).readings, 'runTooShort'],
    ];
    for (const [readings, key] of rows) {
      const report = reportOf([{ ...run, readings }]);
      expect(report.runs[0]!.found).toMatchObject({ ok: false, reason: { key } });
      expect(report.counted).toBe(0);
      expect(report.filmFactor).toBe(1);
    }
  });

  it('does not average in a run nobody can believe', () => {
    const draughty = reportOf([warmUpRun(even, { film: 2.6, capacity: 1 })]);
    expect(resultOf(draughty.runs[0]!.found).counts).toBe(false);
    expect(draughty.filmFactor).toBe(1);
    expect(draughty.notes.map(({ key }) => key)).toEqual(['benchLeftOut']);
  });

  it('corrects the sink everywhere and says so', () => {
    const measured = { ...field, bench: [warmUpRun(field, { film: 0.8, capacity: 1 })] };
    const before = solve(field);
    const after = solve(measured);
    for (const key of ['keyDown.junctionPeak', 'ssb.plateMean', 'ratingResistance', 'touchTemperature']) {
      expect(after.values[key], key).toBeGreaterThan(before.values[key]!);
    }
    expect(after.notes.map(({ key }) => key)).toContain('benchCorrected');
    expect(after.notes.map(({ key }) => key)).not.toContain('channelFactor');
    expect(before.notes.map(({ key }) => key)).not.toContain('benchCorrected');
  });

  it('gives the kept answer for the same sink and runs, and the estimate without runs', () => {
    const measured = { ...field, bench: [warmUpRun(field, { film: 0.8, capacity: 1 })] };
    expect(sinkKnowledge(structuredClone(measured), pressure)).toBe(sinkKnowledge(measured, pressure));
    expect(sinkKnowledge(field, pressure)).toMatchObject({ filmFactor: 1, uncertainty: null });
  });
});

describe('the example with a bench run', () => {
  const beacon = exampleOf('pocket-beacon-10w');

  // The invented log hides a sink that cools 10 % worse and holds 4 % more heat than the model says.
  it('finds what its invented log hides, and is the only one with a run', () => {
    const { values, notes } = solve(beacon);
    expect(Math.abs(values.filmFactor! / 0.9 - 1)).toBeLessThan(0.02);
    expect(Math.abs(values.capacityFactor! / 1.04 - 1)).toBeLessThan(0.02);
    expect(values.benchRunsCounted).toBe(1);
    expect(notes.map(({ key }) => key)).toContain('benchCorrected');
    expect(solve(field).values.benchRunsCounted).toBe(0);
  });

  it('is hotter than its estimate and still fine', () => {
    const estimate = solve({ ...beacon, bench: [] });
    const corrected = solve(beacon);
    for (const service of ['cw', 'keyDown'] as const) {
      const key = `${service}.junctionPeak`;
      expect(corrected.values[key]! - estimate.values[key]!).toBeGreaterThan(0.5);
      expect(corrected.verdicts.find((verdict) => verdict.key === service)?.state).toBe('fine');
    }
  });
});
