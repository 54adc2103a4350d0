import { describe, expect, it } from 'vitest';
import { bands } from '../../../shared/design/peopleSchema.ts';
import { bandEdges, bandNames, bandTopEdge } from '../../../src/engine/hazard/amateurBands.ts';

describe('amateur bands (47 CFR 97.301)', () => {
  it.each([
    ['160 m', [1.81, 1.85], [1.8, 2.0], [1.8, 2.0]],
    ['80 m', [3.5, 3.8], [3.5, 4.0], [3.5, 3.9]],
    ['60 m', [5.3515, 5.3665], [5.3515, 5.3665], [5.3515, 5.3665]],
    ['40 m', [7.0, 7.2], [7.0, 7.3], [7.0, 7.2]],
    ['30 m', [10.1, 10.15], [10.1, 10.15], [10.1, 10.15]],
    ['20 m', [14.0, 14.35], [14.0, 14.35], [14.0, 14.35]],
    ['17 m', [18.068, 18.168], [18.068, 18.168], [18.068, 18.168]],
    ['15 m', [21.0, 21.45], [21.0, 21.45], [21.0, 21.45]],
    ['12 m', [24.89, 24.99], [24.89, 24.99], [24.89, 24.99]],
    ['10 m', [28.0, 29.7], [28.0, 29.7], [28.0, 29.7]],
    ['6 m', null, [50, 54], [50, 54]],
  ] as const)('%s', (band, first, second, third) => {
    const edges = (region: 'region1' | 'region2' | 'region3') =>
      bandEdges(band, region)?.map((edge) => edge / 1e6) ?? null;
    expect([edges('region1'), edges('region2'), edges('region3')]).toEqual([first, second, third]);
  });

  it('is the list of the design schema', () => {
    expect(bandNames).toEqual(Object.keys(bands));
  });

  it('the top edge is the highest of the regions, 60 m with its channels (97.303(h))', () => {
    expect(bandTopEdge('40 m')).toBe(7.3e6);
    expect(bandTopEdge('80 m')).toBe(4e6);
    expect(bandTopEdge('60 m')).toBe(5.405e6);
    expect(bandTopEdge('6 m')).toBe(54e6);
  });
});
