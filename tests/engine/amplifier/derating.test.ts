import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allowedDissipation,
  arrheniusFactor,
  handbookTemperatureFactor,
} from '../../../src/engine/amplifier/derating.ts';
import cases from '../cases/amplifier.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

const celsius = 273.15;

describe('derating', () => {
  const sheet = { maximumPower: 125, maximumJunction: 150 + celsius, junctionToCase: 1 };

  // Data sheet of a TO-247 part: 125 W, 1 K/W, 150 degC.
  it('gives the rating of the data sheet at 25 degC', () => {
    expectClose(allowedDissipation({ ...sheet, maximumPower: 1000 }, 25 + celsius), 125, 1e-12);
  });

  it('falls in a straight line to zero', () => {
    expectClose(allowedDissipation(sheet, 100 + celsius), 50, 1e-12);
    expect(allowedDissipation(sheet, 160 + celsius)).toBe(0);
    expect(allowedDissipation(sheet, 0 + celsius)).toBe(125);
  });

  it('never lets the junction above its maximum', () => {
    const rth = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 250, max: 500, noNaN: true }), rth, (caseTemperature, junctionToCase) => {
        const allowed = allowedDissipation({ ...sheet, junctionToCase }, caseTemperature);
        expect(allowed).toBeGreaterThanOrEqual(0);
        if (allowed > 0)
          expect(caseTemperature + allowed * junctionToCase).toBeLessThanOrEqual(
            sheet.maximumJunction + 1e-9,
          );
      }),
    );
  });
});

describe('factors of wear', () => {
  it.each(cases.groups.life.filter((c) => c.id.startsWith('arrh')))(
    'follows Arrhenius: $id',
    ({ inputs, expected }) => {
      expectClose(
        arrheniusFactor(inputs.T1! + celsius, inputs.T2! + celsius, inputs.Ea!),
        expected.AF!,
        1e-9,
      );
    },
  );

  // Published example, 1.7 eV from 150 to 250 degC: 7490 (rounded there, with 273 for the zero of the Celsius scale).
  it('has the published acceleration factor', () => {
    expectClose(arrheniusFactor(150 + 273, 250 + 273, 1.7), 7490, 5e-3);
  });

  it.each(cases.groups.life.filter((c) => c.id.startsWith('piT')))(
    'follows MIL-HDBK-217F: $id',
    ({ inputs, expected }) => {
      expectClose(handbookTemperatureFactor(inputs.Tj! + celsius, 'bipolar'), expected.bipolar!, 1e-9);
      expectClose(handbookTemperatureFactor(inputs.Tj! + celsius, 'fieldEffect'), expected.fet!, 1e-9);
    },
  );

  it('is 1 between equal temperatures and at 25 degC', () => {
    expectClose(arrheniusFactor(350, 350), 1, 1e-15);
    expectClose(handbookTemperatureFactor(25 + celsius, 'bipolar'), 1, 1e-12);
  });
});
