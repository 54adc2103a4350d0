import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { checkDesign } from '../../../shared/design/file.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { part, startDesign } from '../../../shared/design/start.ts';
import { type Solution, services } from '../../../shared/solution.ts';
import { ratingCurve, solve, sweep, warmUp } from '../../../src/engine/index.ts';
import { anyDesign } from './designArbitrary.ts';
import { change, exampleOf } from './designs.ts';

const fieldStation = exampleOf('field-station-60w');
const beacon = exampleOf('pocket-beacon-10w');
const dataFinal = exampleOf('data-final-100w');
const classA = exampleOf('class-a-panel-8w');
const designs = [...examples.map((one) => [one.key, one.design] as const), ['start', startDesign] as const];

/** Every number anywhere in a result, with its path. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, child]) => numbersIn(child, `${path}.${key}`));
}

function quantity(solution: Solution, key: string): number {
  const value = solution.values[key];
  if (value === undefined) throw new Error(`no value ${key}`);
  return value;
}

describe('energy closes: source power = antenna power + every heat term - drive', () => {
  const relative = 1e-9;
  for (const [name, design] of designs) {
    const { values, services: results, powerPath } = solve(design);
    for (const service of services.filter((one) => results[one].ok)) {
      it(`${name}, ${service}, mean of the over`, () => {
        const v = (key: string) => values[`${service}.${key}`] ?? Number.NaN;
        const out =
          v('sourceHeatOver') +
          v('wiringHeatOver') +
          v('converterLossOver') +
          design.boards.transmitPower +
          (v('deviceHeatOver') - v('drivePowerOver')) +
          v('networkHeatOver') +
          v('antennaPowerOver');
        expect(Math.abs(v('sourcePowerOver') - out) / v('sourcePowerOver')).toBeLessThan(relative);
      });
    }
    it(`${name}, at PEP, station by station`, () => {
      const steps = powerPath.pep;
      expect(steps).toHaveLength(6);
      for (const step of steps) {
        expect(Math.abs(step.powerIn - step.powerOut - step.heat)).toBeLessThan(relative * steps[0]!.powerIn);
      }
      const intoFinal = steps[3]!.powerIn - design.amplifier.drivePower;
      expect(Math.abs(steps[1]!.powerOut - design.boards.transmitPower - steps[2]!.powerIn)).toBeLessThan(
        1e-9,
      );
      expect(Math.abs(steps[2]!.powerOut - intoFinal)).toBeLessThan(1e-9);
      expect(steps[3]!.powerOut).toBe(steps[4]!.powerIn);
    });
  }

  /** A stage that makes microwatts from a dead source has nothing left but rounding, W. */
  const rounding = 1e-12;

  it('holds for any design that has an operating point', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const { values, services: results } = solve(design);
        for (const service of services.filter((one) => results[one].ok)) {
          const v = (key: string) => values[`${service}.${key}`] ?? Number.NaN;
          const out =
            v('sourceHeatOver') +
            v('wiringHeatOver') +
            v('converterLossOver') +
            design.boards.transmitPower +
            (v('deviceHeatOver') - v('drivePowerOver')) +
            v('networkHeatOver') +
            v('antennaPowerOver');
          expect(Math.abs(v('sourcePowerOver') - out)).toBeLessThan(
            relative * (v('sourcePowerOver') + out) + rounding,
          );
        }
      }),
      { numRuns: 60, seed: 20 },
    );
  });

  it('puts all heat of an unbroken carrier through the sink', () => {
    const steady = change(fieldStation, { service: { transmitShare: 1 } });
    const solution = solve(steady);
    const heat = quantity(solution, 'keyDown.plateHeat');
    expect(heat).toBeCloseTo(
      quantity(solution, 'deviceHeatPep') + 0.25 * quantity(solution, 'networkLossPep'),
      8,
    );
    const rise = quantity(solution, 'keyDown.plateMean') - quantity(solution, 'keyDown.sinkAir');
    expect(quantity(solution, 'keyDown.sinkResistance') * heat).toBeCloseTo(rise, 9);
    expect(quantity(solution, 'keyDown.platePeak')).toBeCloseTo(quantity(solution, 'keyDown.plateMean'), 3);
  });
});

describe('no NaN, no Infinity, no throw', () => {
  it.each(designs)('%s', (_name, design) => {
    const found = numbersIn(solve(design));
    expect(found.length).toBeGreaterThan(200);
    for (const [path, value] of found) expect(Number.isFinite(value), path).toBe(true);
  });

  it('for any design the schema accepts, ends of the ranges included', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        expect(checkDesign(design).ok).toBe(true);
        const solution = solve(design);
        for (const [path, value] of numbersIn(solution)) expect(Number.isFinite(value), path).toBe(true);
        expect(solution.verdicts).toHaveLength(5);
        for (const service of services) {
          const curve = sweep(design, service, 5);
          if (curve.ok)
            for (const [path, value] of numbersIn(curve.value))
              expect(Number.isFinite(value), path).toBe(true);
          else expect(curve.reason.sentence.length).toBeGreaterThan(20);
        }
      }),
      { numRuns: 80, seed: 4 },
    );
  });
});

describe('the examples differ in kind and come out as meant', () => {
  const stateOf = (design: Design, key: string) =>
    solve(design).verdicts.find((one) => one.key === key)?.state;

  it('60 W on a raised rail: SSB at any duty, a carrier only part of the time', () => {
    const { services: found } = solve(fieldStation);
    expect(found.ssb.ok && found.ssb.value.safeDuty).toBe(1);
    const carrier = found.keyDown.ok ? found.keyDown.value : null;
    expect(carrier?.safeDuty).toBeGreaterThan(0.2);
    expect(carrier?.safeDuty).toBeLessThan(0.6);
    expect(carrier?.governing.key).toBe('junction');
    expect(carrier?.holdTime).toBeGreaterThan(120);
  });

  it('class E refuses SSB by name and allows CW', () => {
    const { services: found } = solve(beacon);
    expect(found.ssb.ok).toBe(false);
    expect(!found.ssb.ok && found.ssb.reason.key).toBe('notLinear');
    expect(found.cw.ok && found.cw.value.state).toBe('fine');
  });

  it('the 100 W data final does not fit: key-down is over', () => {
    expect(stateOf(dataFinal, 'keyDown')).toBe('over');
  });

  it('class A is coolest with the key down', () => {
    const { values } = solve(classA);
    expect(values['keyDown.deviceHeatOver']).toBeLessThan(values['cw.deviceHeatOver'] ?? 0);
    expect(values['cw.deviceHeatOver']).toBeLessThan(values['ssb.deviceHeatOver'] ?? 0);
  });
});

describe('laws of the answer', () => {
  const carrierDuty = (design: Design) => {
    const { keyDown } = solve(design).services;
    return keyDown.ok ? keyDown.value.safeDuty : Number.NaN;
  };

  it('at the safe duty the junction sits at its limit', () => {
    const duty = carrierDuty(fieldStation);
    const solution = solve(change(fieldStation, { service: { transmitShare: duty } }));
    expect(quantity(solution, 'keyDown.junctionMargin')).toBeGreaterThanOrEqual(0);
    expect(quantity(solution, 'keyDown.junctionMargin')).toBeLessThan(0.05);
  });

  it('a warmer room or a longer cycle never raises the safe duty, taller fins never lower it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 25, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.double({ min: 1, max: 1.2, noNaN: true }),
        (warmer, longer, taller) => {
          const base = carrierDuty(fieldStation);
          const hot = change(fieldStation, {
            surroundings: { ambient: fieldStation.surroundings.ambient + warmer },
          });
          const slow = change(fieldStation, { service: { cycle: fieldStation.service.cycle * longer } });
          const tall = change(fieldStation, { sink: { finHeight: fieldStation.sink.finHeight * taller } });
          expect(carrierDuty(hot)).toBeLessThanOrEqual(base + 1e-4);
          expect(carrierDuty(slow)).toBeLessThanOrEqual(base + 1e-4);
          expect(carrierDuty(tall)).toBeGreaterThanOrEqual(base - 1e-4);
        },
      ),
      { numRuns: 15, seed: 7 },
    );
  });

  it('half the power is not half the heat: the load stays', () => {
    // The REF stage at 55 % (13.8 V, 110 W, 1 A standing): 86.8 W at half power, by an independent implementation.
    const reference = change(fieldStation, {
      amplifier: {
        class: 'AB',
        ratedPep: 110,
        pep: 55,
        ratedRail: 13.8,
        efficiency: 0.55,
        quiescentCurrent: 1,
        outputLoss: 0,
        drivePower: 0,
      },
      converter: { kind: 'none' },
      source: { openVoltage: 13.8, internalResistance: 0, continuousCurrent: null, peakCurrent: null },
      wiring: { length: 0, path: [{ ...part('fuse'), resistance: 0 }] },
    });
    expect(quantity(solve(reference), 'deviceHeatPep')).toBeCloseTo(86.8, 1);
  });

  it('a bought converter without any limit is said not to be judged, and is never fine', () => {
    const unknown = { inputCurrentLimit: null, outputCurrentLimit: null, powerLimit: null };
    const solution = solve(change(fieldStation, { converter: unknown }));
    const supply = solution.verdicts.find(({ key }) => key === 'supply')!;
    expect(supply.state).toBe('close');
    expect(supply.sentence).toMatch(/converter is asked for .* and no limit of it is entered/);
    expect(solution.findings.supply.map(({ key }) => key)).toContain('converterNotRated');
    const known = solve(change(fieldStation, { converter: { ...unknown, powerLimit: 250 } }));
    expect(known.findings.supply.map(({ key }) => key)).not.toContain('converterNotRated');
  });

  it('supply limits forbid at any duty and are named', () => {
    const weak = change(fieldStation, { converter: { inputCurrentLimit: 5 } });
    const { ssb, keyDown } = solve(weak).services;
    for (const found of [ssb, keyDown]) {
      expect(found.ok && found.value.safeDuty).toBe(0);
      expect(found.ok && found.value.governing.key).toBe('converterInputCurrent');
    }
  });

  it('a source that cannot deliver is named, the sink still has its rating', () => {
    const tired = change(fieldStation, { source: { internalResistance: 0.6 } });
    const solution = solve(tired);
    expect(solution.reasons[0]?.key).toBe('collapse');
    expect(solution.reasons[0]?.sentence).toMatch(/collapses/);
    expect(solution.values.ratingResistance).toBeGreaterThan(0);
    expect(solution.services.ssb.ok).toBe(false);
    expect(solution.cautions.length).toBeGreaterThan(3);
  });

  it('fins that do not fit are named, the supply still has its currents', () => {
    const solution = solve(change(fieldStation, { sink: { finCount: 80 } }));
    expect(solution.reasons.map((one) => one.key)).toContain('finsDoNotFit');
    expect(solution.values.inputCurrentPep).toBeGreaterThan(5);
  });

  it('an efficiency above the class is refused with what the class can reach', () => {
    const solution = solve(change(fieldStation, { amplifier: { efficiency: 0.9 } }));
    expect(solution.reasons[0]?.sentence).toMatch(/above what class AB/);
  });

  it('a sink inside the closed case is worse than outside', () => {
    const inside = change(fieldStation, { sink: { placement: 'inside' } });
    expect(carrierDuty(inside)).toBeLessThan(carrierDuty(fieldStation));
    const solution = solve(inside);
    expect(quantity(solution, 'ssb.sinkAir')).toBeGreaterThan(fieldStation.surroundings.ambient + 5);
  });

  it('a heat that feeds on itself is a named runaway', () => {
    const hot = change(beacon, {
      amplifier: { pep: 40, ratedPep: 40, onResistance: 0.1, onResistanceCoefficient: 0.02, efficiency: 0.7 },
      device: { junctionToCase: 60 },
    });
    const { keyDown } = solve(hot).services;
    expect(!keyDown.ok && keyDown.reason.key).toBe('runaway');
  });

  it('the touch limit governs only when asked', () => {
    const asked = change(fieldStation, { limits: { touchGoverns: true } });
    const { keyDown } = solve(asked).services;
    expect(keyDown.ok && keyDown.value.governing.key).toBe('touch');
    expect(carrierDuty(asked)).toBeLessThan(carrierDuty(fieldStation));
  });
});

describe('curves', () => {
  it('the sweep rises for a final without bias in receive and meets the single solve', () => {
    const curve = sweep(fieldStation, 'keyDown');
    if (!curve.ok) throw new Error(curve.reason.sentence);
    const { share, junctionPeak } = curve.value;
    expect(share).toHaveLength(101);
    expect(junctionPeak[0]).toBeCloseTo(fieldStation.surroundings.ambient, 6);
    for (let i = 1; i < share.length; i += 1)
      expect(junctionPeak[i]).toBeGreaterThan(junctionPeak[i - 1] ?? 0);
    expect(junctionPeak[40]).toBeCloseTo(quantity(solve(fieldStation), 'keyDown.junctionPeak'), 2);
  });

  it('the warm-up starts cold and ends at the periodic state', () => {
    const found = warmUp(fieldStation, 'keyDown');
    if (!found.ok) throw new Error(found.reason.sentence);
    const { junction, switchedOff } = found.value;
    const { cycle, transmitShare } = fieldStation.service;
    expect(junction[0]).toBe(fieldStation.surroundings.ambient);
    expect(switchedOff).toBeCloseTo((11 + transmitShare) * cycle, 6);
    const peak = quantity(solve(fieldStation), 'keyDown.junctionPeak');
    expect(Math.max(...junction)).toBeLessThan(peak + 0.1);
    expect(Math.max(...junction)).toBeGreaterThan(peak - 1.5);
  });

  it('the rating falls with the heat', () => {
    const found = ratingCurve(fieldStation);
    if (!found.ok) throw new Error(found.reason.sentence);
    const { resistance, heat } = found.value;
    for (let i = 1; i < heat.length; i += 1) {
      expect(heat[i]).toBeGreaterThan(heat[i - 1] ?? 0);
      expect(resistance[i]).toBeLessThan(resistance[i - 1] ?? 0);
    }
  });
});
