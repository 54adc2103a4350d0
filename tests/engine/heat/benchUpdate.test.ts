import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchModel } from '../../../src/engine/heat/benchModel.ts';
import { fitSteady, systematicUncertainty, updateFilm } from '../../../src/engine/heat/benchUpdate.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { blackSink } from './referenceSinks.ts';

/** With the emissivity of the reference. */
const model = resultOf(benchModel({ ...blackSink, finish: 'own', emissivity: 0.82 }, { channelFactor: 1 }));
const instruments = { sensorRise: 0, powerUncertainty: 0.01, temperatureUncertainty: 1 };

describe('steady reading', () => {
  it('gives back the factor that made it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 2.5, noNaN: true }),
        fc.double({ min: 5, max: 100, noNaN: true }),
        (film, rise) => {
          const power = model.lawFor(film, 300).heat(rise);
          const reading = {
            power,
            plate: 300 + rise + 0.1 * power,
            air: 300,
            ...instruments,
            sensorRise: 0.1,
          };
          expectClose(resultOf(fitSteady(model, reading)).filmFactor, film, 1e-6);
        },
      ),
      { numRuns: 20 },
    );
  });

  // Own computation: exponents 0.745 and 1.262 at 50 K; 1 % of power and 1 K of 40 K make 4.4 %.
  it('carries the uncertainty of the instruments', () => {
    expectClose(systematicUncertainty(model, 1, 40, 298.15, instruments), 0.044, 0.04);
  });

  it('refuses what no sink can do', () => {
    const keyOf = (power: number, rise: number) => {
      const outcome = fitSteady(model, { power, plate: 300 + rise, air: 300, ...instruments });
      return outcome.ok ? '' : outcome.reason.key;
    };
    expect(keyOf(20, -1)).toBe('steadyReading');
    expect(keyOf(0, 20)).toBe('steadyReading');
    expect(keyOf(500, 20)).toBe('filmFactorOutOfRange');
    expect(keyOf(1, 80)).toBe('filmFactorOutOfRange');
    const doubtful = fitSteady(model, { power: 26, plate: 330, air: 300, ...instruments });
    expect(doubtful.ok && doubtful.notes.map((n) => n.key)).toEqual(['filmFactorImplausible']);
    expect(doubtful.ok && doubtful.notes[0]!.sentence).toMatch(
      /the power entered, 26(\.0)?\sW, may be too great/,
    );
  });
});

describe('joining tests', () => {
  const prior = { filmFactor: 1, uncertainty: 0.15 };

  // Own computation: prior 0.15, measured 0.90 within 4 %: 0.9063 within 3.9 %.
  it('weighs prior and test', () => {
    const joined = resultOf(updateFilm(prior, [{ filmFactor: 0.9, uncertainty: 0.04 }]));
    expectClose(joined.filmFactor, 0.9063, 1e-4);
    expectClose(joined.uncertainty, 0.0387, 2e-3);
  });

  it('does not depend on the order, narrows, and stops at the floor', () => {
    const test = fc.record({
      filmFactor: fc.double({ min: 0.55, max: 1.7, noNaN: true }),
      uncertainty: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(test, { minLength: 1, maxLength: 6 }), (tests) => {
        const joined = resultOf(updateFilm(prior, tests));
        expectClose(resultOf(updateFilm(prior, [...tests].reverse())).filmFactor, joined.filmFactor, 1e-12);
        expect(joined.uncertainty).toBeLessThan(prior.uncertainty);
        expect(joined.uncertainty).toBeGreaterThanOrEqual(0.03);
      }),
    );
    expect(resultOf(updateFilm(prior, []))).toEqual(prior);
  });

  it('asks about implausible tests instead of averaging them', () => {
    const outcome = updateFilm(prior, [
      { filmFactor: 0.9, uncertainty: 0.04 },
      { filmFactor: 2.4, uncertainty: 0.04 },
    ]);
    expectClose(resultOf(outcome).filmFactor, 0.9063, 1e-4);
    expect(outcome.ok && outcome.notes.map((n) => n.key)).toEqual(['testsLeftOut']);
    expect(updateFilm(prior, [{ filmFactor: 1, uncertainty: 0 }]).ok).toBe(false);
  });
});
