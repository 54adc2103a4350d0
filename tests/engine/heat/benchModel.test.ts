import { describe, expect, it } from 'vitest';
import { benchModel } from '../../../src/engine/heat/benchModel.ts';
import type { SinkDescription } from '../../../src/engine/heat/sink.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const black: SinkDescription = {
  shape: 'fins',
  width: 0.1,
  length: 0.1,
  baseThickness: 0.005,
  finCount: 10,
  finHeight: 0.025,
  finThickness: 0.002,
  alloy: 'extruded',
  finish: 'anodised',
  emissivity: 0.8,
  backExposed: false,
  mass: null,
};

describe('model of a bench run', () => {
  it('cools more with a greater factor, not in proportion: part of the heat is radiation', () => {
    const model = resultOf(benchModel(black));
    const ratio = model.lawFor(1.1, 298).heat(40) / model.lawFor(1, 298).heat(40);
    expect(ratio).toBeGreaterThan(1.05);
    expect(ratio).toBeLessThan(1.1);
  });

  it('trusts a weighed sink more than a drawn one', () => {
    const drawn = resultOf(benchModel(black));
    const weighed = resultOf(benchModel({ ...black, mass: 0.3 }));
    expect(weighed.capacityUncertainty!).toBeLessThan(drawn.capacityUncertainty!);
    expectClose(weighed.heatCapacity, 270, 1e-12);
  });

  it('is none for a sink that cannot be', () => {
    const outcome = benchModel({ ...black, finCount: 500 });
    expect(outcome.ok ? '' : outcome.reason.key).toBe('finsDoNotFit');
  });
});
