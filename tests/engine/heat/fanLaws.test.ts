import { describe, expect, it } from 'vitest';
import { linearFan } from '../../../src/engine/heat/fan.ts';
import { prepareSink } from '../../../src/engine/heat/sink.ts';
import { tabulateSink } from '../../../src/engine/heat/sinkTable.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';
import { blackSink } from './referenceSinks.ts';

describe('fan on a sink', () => {
  it('takes the better of fan and still air', () => {
    const path = { kind: 'duct' } as const;
    const blown = resultOf(prepareSink({ ...blackSink, fan: { fan: linearFan(40, 0.02), path } }));
    const stopped = resultOf(prepareSink({ ...blackSink, fan: { fan: linearFan(40, 0.02, 0), path } }));
    const still = resultOf(prepareSink(blackSink));
    expect(blown.heat(340, 300)).toBeGreaterThan(2 * still.heat(340, 300));
    expect(blown.heatDetail(340, 300).total).toBe(blown.heat(340, 300));
    expect(stopped.heat(340, 300)).toBe(still.heat(340, 300));
    expect(stopped.heatDetail(340, 300).total).toBe(still.heat(340, 300));
    const plate = blown.steadyPlate(50, 300);
    expectClose(blown.heat(plate, 300), 50, 1e-6);
    expectClose(tabulateSink(blown, 300).heat(plate - 300), 50, 1e-4);
  });

  it('names its doubts and is less certain than the textbook', () => {
    const outcome = prepareSink({ ...blackSink, fan: { fan: linearFan(40, 0.02), path: { kind: 'open' } } });
    expect(outcome.ok && outcome.notes.map((n) => n.key)).toContain('openFan');
    expect(resultOf(outcome).filmUncertainty(340, 300)).toBeGreaterThanOrEqual(0.15);
  });
});
