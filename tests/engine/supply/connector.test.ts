import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { connectorClasses, connectorFigures, connectorLoad } from '../../../src/engine/supply/connector.ts';
import { expectClose } from '../closeTo.ts';

describe('connector', () => {
  // Maker page of the 3.5 mm bullet: 27.8 K at 30 A on AWG 12, 0.55 mΩ a pole.
  it('3.5 mm bullet at its rating rises 27.8 K and makes 0.5 W a pole', () => {
    const found = connectorLoad('bullet35', 2, false, 30, 30);
    expectClose(found.rise, 27.8, 1e-12);
    expectClose(found.heatPerPole, 0.495, 1e-9);
    expectClose(found.resistance, 1.1e-3, 1e-12);
    expect(found.state).toBe('close');
  });

  it.each([
    [22, 22, 'fine'],
    [23, 23, 'close'],
    [31, 31, 'over'],
    [15, 31, 'over'],
  ])('with %f A for long and %f A at the peak is %s', (long, peak, state) => {
    expect(connectorLoad('bullet35', 2, false, long, peak).state).toBe(state);
  });

  it('age multiplies resistance, heat and rise', () => {
    const young = connectorLoad('flat30', 2, false, 20, 20);
    const old = connectorLoad('flat30', 2, true, 20, 20);
    for (const key of ['resistance', 'heatPerPole', 'rise'] as const)
      expectClose(old[key], 4 * young[key], 1e-12);
  });

  it('rise and heat never fall with current', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...connectorClasses),
        fc.double({ min: 0.1, max: 80, noNaN: true }),
        (kind, current) => {
          const first = connectorLoad(kind, 2, false, current, current);
          const second = connectorLoad(kind, 2, false, current * 1.1, current * 1.1);
          return (
            second.rise > first.rise &&
            second.heatPerPole > first.heatPerPole &&
            second.loading > first.loading
          );
        },
      ),
    );
  });

  it('every class has a rating, a resistance and a status', () => {
    for (const kind of connectorClasses) {
      const figures = connectorFigures(kind);
      expect(figures.rating).toBeGreaterThan(0);
      expect(figures.resistance).toBeGreaterThan(0);
      expect(['from memory', 'secondary']).toContain(figures.status);
    }
  });
});
