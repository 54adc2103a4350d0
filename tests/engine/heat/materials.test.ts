import { describe, expect, it } from 'vitest';
import { emissivityOf, emissivityRange, metalOf } from '../../../src/engine/heat/materials.ts';

describe('metals and finishes', () => {
  // Incropera, table A.1: pure copper 8933 kg/m³, 385 J/(kg K), 401 W/(m K).
  it('has the copper of the table', () => {
    const { density, specificHeat, conductivity } = metalOf('copper');
    expect([density, specificHeat, conductivity]).toEqual([8933, 385, 401]);
  });

  // ASHRAE Handbook Fundamentals, chapter 4, table 5: black and white paints 0.85 to 0.92.
  it('has paint within the published range', () => {
    expect(emissivityOf('painted', 'sheet', 0.5)).toBeGreaterThanOrEqual(0.85);
    expect(emissivityOf('painted', 'sheet', 0.5)).toBeLessThanOrEqual(0.92);
  });

  it('orders the finishes as everyone measures them', () => {
    const row = (['bare', 'weathered', 'anodised', 'painted'] as const).map((f) =>
      emissivityOf(f, 'extruded', 0.5),
    );
    expect([...row].sort((a, b) => a - b)).toEqual(row);
  });

  it('takes the builder’s own value and knows bare copper', () => {
    expect(emissivityOf('own', 'cast', 0.33)).toBe(0.33);
    expect(emissivityOf('bare', 'copper', 0.5)).toBeLessThan(emissivityOf('bare', 'extruded', 0.5));
    expect(emissivityOf('painted', 'copper', 0.5)).toBe(emissivityOf('painted', 'extruded', 0.5));
  });
});

describe('how sure an emissivity is', () => {
  it('lies within its range, and "unsure" spans bare metal to paint', () => {
    for (const finish of ['bare', 'weathered', 'anodised', 'painted', 'unsure'] as const) {
      const { low, high } = emissivityRange(finish, 'extruded', 0.5);
      const chosen = emissivityOf(finish, 'extruded', 0.5);
      expect(low).toBeLessThan(chosen);
      expect(high).toBeGreaterThan(chosen);
    }
    expect(emissivityRange('unsure', 'extruded', 0.5)).toEqual({ low: 0.05, high: 0.9 });
    expect(emissivityRange('own', 'extruded', 0.5)).toEqual({ low: 0.5, high: 0.5 });
  });
});
