import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airProperties } from '../../../src/engine/heat/air.ts';
import { gravity, standardPressure } from '../../../src/engine/heat/constants.ts';
import {
  barCohenRohsenow,
  channelShape,
  elenbaas,
  openChannelFilm,
  optimumGap,
  parallelPlateFilm,
  vanDePolTierney,
} from '../../../src/engine/heat/verticalChannel.ts';
import { expectClose } from '../closeTo.ts';

describe('parallel plates', () => {
  it('has developed flow for tight gaps: El/24', () => {
    expectClose(elenbaas(1e-3), 1e-3 / 24, 1e-9);
    expectClose(barCohenRohsenow(1e-3), 1e-3 / 24, 1e-6);
  });

  it('has single plates for wide gaps: 0.60 and 0.59 El^(1/4)', () => {
    // 35^(3/4)/24 = 0.5996; 2.873^(-1/2) = 0.5900.
    expectClose(elenbaas(1e7), 0.5996 * 1e7 ** 0.25, 1e-3);
    expectClose(barCohenRohsenow(1e7), 0.59 * 1e7 ** 0.25, 1e-3);
  });

  it('agrees between Elenbaas and Bar-Cohen within 5 %', () => {
    fc.assert(
      fc.property(fc.double({ min: Math.log(0.1), max: Math.log(1e5), noNaN: true }), (log) => {
        expectClose(barCohenRohsenow(Math.exp(log)), elenbaas(Math.exp(log)), 0.05);
      }),
    );
  });

  // Cengel and Ghajar, example 9-3: 18 cm plates at 80 °C in 30 °C air; optimum gap 7.45 mm, h 4.863 W/(m² K),
  // 14 fins 24 mm high give 29.4 W.
  it('has the optimum gap, film coefficient and heat of the book', () => {
    const prandtl = 0.7215;
    const rayleigh = ((gravity / 328.15) * 50 * 0.18 ** 3 * prandtl) / 1.847e-5 ** 2;
    const gap = optimumGap(0.18, rayleigh);
    expectClose(gap, 7.45e-3, 1e-3);
    const film = (barCohenRohsenow((rayleigh * gap ** 4) / 0.18 ** 4) * 0.02772) / gap;
    expectClose(film, 4.863, 2e-3);
    expectClose(film * 2 * 14 * 0.18 * 0.024 * 50, 29.4, 2e-3);
  });

  it('gives most heat per plan area at the optimum gap', () => {
    const air = airProperties(328.15, standardPressure);
    const best = optimumGap(0.18, air.rayleighFactor * 50 * 0.18 ** 3);
    const perPlan = (gap: number) => parallelPlateFilm(air, 50, gap, 0.18) / gap;
    expect(perPlan(best)).toBeGreaterThan(perPlan(best * 1.03));
    expect(perPlan(best)).toBeGreaterThan(perPlan(best * 0.97));
  });
});

describe('channel open at the tips', () => {
  it('is the developed flow of parallel plates when deep: Z = 24, r = s', () => {
    const shape = channelShape(1e-5, 0.1, 0.1);
    expectClose(shape.resistanceFactor, 24, 5e-3);
    expectClose(shape.radius, 1e-5, 1e-3);
  });

  it('has single plates for strong flow: 0.595 Ra^(1/4)', () => {
    expectClose(vanDePolTierney(1e9, 24), 0.5946 * 1e9 ** 0.25, 2e-3);
  });

  // Own computation: air film 323.15 K, rise 50 K; s/H/L in mm and the coefficients of the three forms.
  it.each([
    [4, 25, 100, 2.35, 2.68],
    [6, 25, 100, 5.41, 4.95],
    [8, 25, 100, 6.66, 5.96],
    [10, 25, 100, 6.95, 6.43],
    [10, 40, 150, 6.2, 5.66],
    [10, 10, 150, 6.2, 5.26],
    [20, 40, 150, 6.38, 6.3],
    [50, 25, 150, 6.38, 6.41],
  ])('has the checked coefficients at %d/%d/%d mm', (gap, height, length, parallel, open) => {
    const air = airProperties(323.15, standardPressure);
    expectClose(parallelPlateFilm(air, 50, gap / 1000, length / 1000), parallel, 2e-3);
    expectClose(openChannelFilm(air, 50, channelShape(gap / 1000, height / 1000, length / 1000)), open, 2e-3);
  });

  it('grows with the rise and never leaves the numbers, however odd the gap', () => {
    const log = (low: number, high: number) =>
      fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
    fc.assert(
      fc.property(
        log(1e-6, 0.99),
        log(0.001, 0.2),
        log(0.01, 1),
        log(0.001, 300),
        (gap, height, length, rise) => {
          const air = airProperties(300 + rise / 2, standardPressure);
          const shape = channelShape(gap, height, length);
          expect(shape.resistanceFactor).toBeGreaterThan(0);
          const film = openChannelFilm(air, rise, shape);
          expect(film).toBeGreaterThanOrEqual(0);
          expect(openChannelFilm(air, rise * 1.05, shape)).toBeGreaterThanOrEqual(film);
        },
      ),
    );
  });
});
