import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airProperties } from '../../../src/engine/heat/air.ts';
import { standardPressure } from '../../../src/engine/heat/constants.ts';
import { prepareFinArray } from '../../../src/engine/heat/finArray.ts';
import {
  channelSection,
  developedFriction,
  forcedHeat,
  pressureDrop,
  teertstra,
} from '../../../src/engine/heat/forcedAir.ts';
import cases from '../cases/heat.json' with { type: 'json' };
import { expectClose } from '../closeTo.ts';
import { between, finGeometries } from './geometries.ts';
import { geometryOf } from './referenceSinks.ts';

const { forced } = cases;
const sink = prepareFinArray(geometryOf({ ...forced.geometry, eps: 0.1 }));

describe('air blown along fins', () => {
  it.each(forced.rows)('agrees with the reference at $V m/s', (row) => {
    // Film temperature 308.15 K: plate 318.15 K in air of 298.15 K.
    const heat = forcedHeat(sink, row.V, 318.15, 298.15, standardPressure);
    expectClose(heat.filmCoefficient, row.h, 1e-9);
    expectClose(heat.finEfficiency, row.eta, 1e-9);
    expectClose(heat.resistance, row.R, 1e-9);
    const drop = pressureDrop(sink, row.V, airProperties(forced.film_T, standardPressure));
    expectClose(drop.drop, row.dp, 1e-9);
    expectClose(drop.reynolds, row.Re_Dh, 1e-9);
    expectClose(drop.friction, row.fapp, 1e-9);
  });

  it('never takes off more than the air can carry', () => {
    fc.assert(
      fc.property(finGeometries, between(0.01, 20), (geometry, velocity) => {
        const prepared = prepareFinArray(geometry);
        const air = airProperties(310, standardPressure);
        const { filmCoefficient } = forcedHeat(prepared, velocity, 320, 300, standardPressure);
        // Both plates of a channel, L deep, give h 2 L a gap; the air of the gap carries ρ cp V s.
        const carried = air.density * air.specificHeat * velocity * prepared.gap;
        expect(filmCoefficient * 2 * geometry.length).toBeLessThanOrEqual(carried * (1 + 1e-9));
      }),
    );
  });

  it('tends to the boundary layer of a plate at high speed: 0.664 Re^(1/2) Pr^(1/3)', () => {
    expectClose(teertstra(1e8, 0.7), 0.664 * 1e4 * 0.7 ** (1 / 3), 1e-3);
    expect(teertstra(0, 0.7)).toBe(0);
  });

  // Shah and London (from memory): f Re (Fanning) 24 between plates, 14.23 in a square, 15.55 at 1:2.
  it.each([
    [0, 24],
    [0.5, 15.55],
    [1, 14.23],
  ])('has the developed friction of ducts of aspect %d', (aspect, constant) => {
    expectClose(developedFriction(aspect), constant, 2e-3);
  });

  it('takes more pressure and more heat the faster it goes', () => {
    const air = airProperties(308, standardPressure);
    fc.assert(
      fc.property(finGeometries, between(0.05, 10), (geometry, velocity) => {
        const prepared = prepareFinArray(geometry);
        expect(pressureDrop(prepared, 1.1 * velocity, air).drop).toBeGreaterThan(
          pressureDrop(prepared, velocity, air).drop,
        );
        const heat = (v: number) => forcedHeat(prepared, v, 330, 300, standardPressure).heat;
        expect(heat(1.1 * velocity)).toBeGreaterThan(heat(velocity));
      }),
    );
  });

  it('has a section and no drop at rest', () => {
    expectClose(channelSection(sink), 0.08 * 0.025, 1e-12);
    expect(pressureDrop(sink, 0, airProperties(300, standardPressure)).drop).toBe(0);
    expect(forcedHeat(sink, 0, 320, 300, standardPressure).heat).toBe(0);
  });
});
