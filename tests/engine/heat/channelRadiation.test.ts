import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  channelExchange,
  channelExchangeOneZone,
  opposedRectangles,
  perpendicularRectangles,
} from '../../../src/engine/heat/channelRadiation.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';

const size = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);

describe('view factors', () => {
  // Textbook values (from memory): equal squares one side apart 0.1998; squares sharing an edge 0.2000.
  it('has the textbook values of the cube', () => {
    expectClose(opposedRectangles(1, 1, 1), 0.1998, 5e-4);
    expectClose(perpendicularRectangles(1, 1, 1), 0.2, 5e-4);
    expectClose(opposedRectangles(1, 1, 1) + 4 * perpendicularRectangles(1, 1, 1), 1, 1e-9);
  });

  it('closes over the six faces of any box', () => {
    fc.assert(
      fc.property(size(0.001, 1), size(0.001, 1), size(0.001, 1), (a, b, c) => {
        const sum =
          opposedRectangles(a, b, c) +
          2 * perpendicularRectangles(a, c, b) +
          2 * perpendicularRectangles(b, c, a);
        expectClose(sum, 1, 1e-6);
      }),
    );
  });

  it('is reciprocal', () => {
    fc.assert(
      fc.property(size(1e-4, 1), size(1e-4, 1), size(0.01, 1), (a, b, edge) => {
        expectClose(a * perpendicularRectangles(a, b, edge), b * perpendicularRectangles(b, a, edge), 1e-6);
      }),
    );
  });
});

describe('radiation out of a channel', () => {
  it.each(cases.channelRadiation)('agrees with the radiosity solution: $s/$H/$L m, $eps', (row) => {
    const exchange = channelExchange(row.s, row.H, row.L, row.eps);
    expectClose(exchange.fins, row.AF_fins_m2, 1e-9);
    expectClose(exchange.base, row.AF_base_m2, 1e-9);
    expectClose(exchange.finToFin, row.F_fin_fin, 1e-9);
    expectClose(exchange.finToBase, row.F_fin_base, 1e-9);
  });

  it.each(cases.channelRadiation)('is close to one zone: $s/$H/$L m, $eps', (row) => {
    const exchange = channelExchange(row.s, row.H, row.L, row.eps);
    expectClose(channelExchangeOneZone(row.s, row.H, row.L, row.eps), exchange.fins + exchange.base, 4e-3);
  });

  it('grows with emissivity and stays between none and the black opening', () => {
    const emissivity = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(size(1e-4, 0.3), size(0.001, 0.2), size(0.01, 1), emissivity, (s, h, l, eps) => {
        const total = (e: number) => {
          const exchange = channelExchange(s, h, l, e);
          return exchange.fins + exchange.base;
        };
        expect(total(eps)).toBeGreaterThan(0);
        expect(total(eps + 0.01)).toBeGreaterThan(total(eps));
        // Black: what leaves is what the openings would receive, at most their area.
        expect(total(1)).toBeLessThan(s * l + 2 * s * h + 1e-12);
      }),
    );
  });
});
