import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { services } from '../../../shared/solution.ts';
import { efficiencyEdges, loadDoubts } from '../../../src/engine/couple/loadDoubts.ts';
import { loadResponse } from '../../../src/engine/couple/loadResponse.ts';
import { prepare } from '../../../src/engine/couple/prepare.ts';
import { ninetyPercent } from '../../../src/engine/numerics/normalQuantile.ts';
import { resultOf } from '../resultOf.ts';

const nowhere = { efficiency: 0, converter: 0, speech: 0 };

describe('answer of the load to its doubts', () => {
  it.each(examples.map(({ key, design }) => [key, design] as const))(
    '%s: the middle is the design, the edges are the designs at the edges, half way a solution agrees',
    (_, design) => {
      const prepared = prepare(design);
      const base = resultOf(prepared.coupled);
      const response = loadResponse(prepared, base);
      const doubts = loadDoubts(design);
      const half = {
        ...design,
        amplifier: { ...design.amplifier, efficiency: design.amplifier.efficiency - doubts.efficiency / 2 },
      };
      const rows = [
        [0, design],
        [-ninetyPercent, efficiencyEdges(design).lessEfficient],
        [-ninetyPercent / 2, half],
      ] as const;
      for (const [place, truth] of rows) {
        const sample = response.at({ ...nowhere, efficiency: place }, base);
        const solved = prepare(truth).coupled;
        if (!solved.ok) continue;
        for (const service of services) {
          const at = 350;
          const found = sample.load(service, at);
          const exact = solved.value.load(service, at);
          expect(found.ok).toBe(exact.ok);
          if (!found.ok || !exact.ok) continue;
          const heat = exact.value.over.deviceHeat;
          expect(Math.abs(found.value.over.deviceHeat - heat) / heat).toBeLessThan(3e-3);
        }
      }
    },
  );

  it.each(['module', 'designed'] as const)(
    'a converter (%s) loses more at one edge and less at the other',
    (kind) => {
      const field = examples[0]!.design;
      const prepared = prepare({ ...field, converter: { ...field.converter, kind } });
      const base = resultOf(prepared.coupled);
      const response = loadResponse(prepared, base);
      const lossAt = (place: number) =>
        resultOf(response.at({ ...nowhere, converter: place }, base).load('keyDown', 350)).over.converterHeat;
      const spread = (lossAt(-ninetyPercent) - lossAt(ninetyPercent)) / lossAt(0);
      expect(response.hasConverter).toBe(true);
      // Two points of efficiency of 90 %, a quarter of the losses of the parts less what the coil's winding keeps.
      expect(spread).toBeGreaterThan(0.25);
      expect(spread).toBeLessThan(0.7);
    },
  );

  it('moves the mean heat of speech alone with the law of speech', () => {
    const prepared = prepare(examples[0]!.design);
    const base = resultOf(prepared.coupled);
    const response = loadResponse(prepared, base);
    const sample = response.at({ ...nowhere, speech: ninetyPercent }, base);
    const ratio = (service: (typeof services)[number]) =>
      resultOf(sample.load(service, 350)).over.deviceHeat / resultOf(base.load(service, 350)).over.deviceHeat;
    expect(ratio('ssb')).toBeCloseTo(1 + response.doubts.speechHeat, 10);
    expect(ratio('keyDown')).toBeCloseTo(1, 10);
  });
});
