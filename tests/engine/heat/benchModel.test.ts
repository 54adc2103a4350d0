import { describe, expect, it } from 'vitest';
import { benchModel } from '../../../src/engine/heat/benchModel.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { blackSink } from './referenceSinks.ts';

describe('model of a bench run', () => {
  it('cools more with a greater factor, not in proportion: part of the heat is radiation', () => {
    const model = resultOf(benchModel(blackSink));
    const ratio = model.lawFor(1.1, 298).heat(40) / model.lawFor(1, 298).heat(40);
    expect(ratio).toBeGreaterThan(1.05);
    expect(ratio).toBeLessThan(1.1);
  });

  it('trusts a weighed sink more than a drawn one', () => {
    const drawn = resultOf(benchModel(blackSink));
    const weighed = resultOf(benchModel({ ...blackSink, mass: 0.3 }));
    expect(weighed.capacityUncertainty!).toBeLessThan(drawn.capacityUncertainty!);
    expectClose(weighed.heatCapacity, 270, 1e-12);
  });

  it('is none for a sink that cannot be', () => {
    const outcome = benchModel({ ...blackSink, finCount: 500 });
    expect(outcome.ok ? '' : outcome.reason.key).toBe('finsDoNotFit');
  });
});
