import { describe, expect, it } from 'vitest';
import { efficiencyEdges, loadDoubts } from '../../../src/engine/couple/loadDoubts.ts';
import { solve } from '../../../src/engine/index.ts';
import { change, exampleOf } from './designs.ts';
import { referenceDesign } from './referenceDesign.ts';

const fieldStation = exampleOf('field-station-60w');
const guessed = change(fieldStation, { amplifier: { efficiencyMeasured: false } });

describe('doubts of the load', () => {
  it("a guess has its class's band, a measurement 5 % of the value", () => {
    expect(loadDoubts(guessed).efficiency).toBe(0.08);
    expect(loadDoubts(fieldStation).efficiency).toBeCloseTo(0.0275, 12);
  });

  it.each([
    ['relaxed', 0.3],
    ['unprocessed', 0.15],
    ['heavy', 0.15],
    ['twoTone', 0],
  ] as const)('speech %s: %f of its heat', (speechKind, share) => {
    expect(loadDoubts(change(fieldStation, { service: { speechKind } })).speechHeat).toBeCloseTo(share, 12);
  });

  it.each([
    ['efficiency', guessed],
    ['devices', referenceDesign],
    ['readings', change(fieldStation, { amplifier: { calibration: 'readings' } })],
  ] as const)('known from %s: less efficient is hotter', (_kind, design) => {
    const { lessEfficient, moreEfficient } = efficiencyEdges(design);
    const heat = [lessEfficient, design, moreEfficient].map((one) => solve(one).values.deviceHeatPep!);
    expect(heat[0]).toBeGreaterThan(heat[1]!);
    expect(heat[1]).toBeGreaterThan(heat[2]!);
  });
});
