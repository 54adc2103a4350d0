import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airProperties } from '../../../src/engine/heat/air.ts';
import { gravity, standardPressure } from '../../../src/engine/heat/constants.ts';
import {
  churchillChu,
  churchillChuLaminar,
  verticalPlateFilm,
} from '../../../src/engine/heat/verticalPlate.ts';
import { expectClose } from '../closeTo.ts';

describe('vertical plate', () => {
  // Cengel and Ghajar, Heat and Mass Transfer, 5th ed., example 9-2: 0.6 m plate at 90 °C in 30 °C air, Nu 113.3.
  it('has the Nusselt number of the book, 0.6 m plate', () => {
    const prandtl = 0.7202;
    const rayleigh = ((gravity / 333.15) * 60 * 0.6 ** 3 * prandtl) / 1.896e-5 ** 2;
    expectClose(churchillChu(rayleigh, prandtl), 113.3, 1e-3);
  });

  // Incropera and DeWitt, example 9.2: 0.71 m door at 232 °C in 23 °C air, Nu 147; 1060 W from 1.02 m width (from memory).
  it('has the Nusselt number and the heat of the book, 0.71 m door', () => {
    const rayleigh = (gravity * 0.0025 * 209 * 0.71 ** 3) / (38.3e-6 * 26.4e-6);
    const nusselt = churchillChu(rayleigh, 0.69);
    expectClose(nusselt, 147, 2e-3);
    expectClose(((nusselt * 33.8e-3) / 0.71) * 0.71 * 1.02 * 209, 1060, 2e-3);
  });

  // Own computation: the form for all Rayleigh numbers reads lower on small plates and higher near the onset of turbulence.
  it.each([
    [1e5, 0.938],
    [1e6, 0.977],
    [1e7, 1.054],
    [1e8, 1.172],
  ])('differs from the laminar form as stated at Ra %d', (rayleigh, ratio) => {
    expectClose(churchillChu(rayleigh, 0.7) / churchillChuLaminar(rayleigh, 0.7), ratio, 1e-3);
  });

  // Own computation: air film 323.15 K, 50 K, 100 mm.
  it('has the checked film coefficient', () => {
    expectClose(verticalPlateFilm(airProperties(323.15, standardPressure), 50, 0.1), 6.42, 1e-3);
  });

  it('cools better when hotter and, per area, when shorter', () => {
    const size = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(size, fc.double({ min: 0.1, max: 200, noNaN: true }), (height, rise) => {
        const air = airProperties(320, standardPressure);
        expect(verticalPlateFilm(air, rise * 1.1, height)).toBeGreaterThan(
          verticalPlateFilm(air, rise, height),
        );
        expect(verticalPlateFilm(air, rise, height)).toBeGreaterThan(
          verticalPlateFilm(air, rise, height * 1.1),
        );
      }),
    );
  });
});
