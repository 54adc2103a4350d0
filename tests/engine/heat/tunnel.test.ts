import { describe, expect, it } from 'vitest';
import { linearFan } from '../../../src/engine/heat/fan.ts';
import { prepareSink, type SinkDescription } from '../../../src/engine/heat/sink.ts';
import { expectClose } from '../closeTo.ts';
import { resultOf } from '../resultOf.ts';

const tunnel: SinkDescription = {
  shape: 'tunnel',
  width: 0.08,
  length: 0.12,
  baseThickness: 0.004,
  finCount: 14,
  finHeight: 0.03,
  finThickness: 0.0015,
  alloy: 'extruded',
  finish: 'bare',
  emissivity: 0.1,
  backExposed: false,
  mass: null,
};
const fan = { fan: linearFan(35, 0.015), path: { kind: 'open' } } as const;

describe('a closed tunnel', () => {
  it('leads all the air of its fan through the fins, however the fan would stand before an open sink', () => {
    const closed = resultOf(prepareSink({ ...tunnel, fan }));
    const open = resultOf(prepareSink({ ...tunnel, shape: 'fins', fan }));
    const ducted = resultOf(
      prepareSink({ ...tunnel, shape: 'fins', fan: { ...fan, path: { kind: 'duct' } } }),
    );
    expectClose(closed.heat(340, 300), ducted.heat(340, 300), 1e-12);
    expect(closed.heat(340, 300)).toBeGreaterThan(open.heat(340, 300));
  });

  it('without its fan sheds what a panel of the same outside sheds, and says so', () => {
    const outcome = prepareSink(tunnel);
    const panel = resultOf(prepareSink({ ...tunnel, shape: 'panel', baseThickness: 0.038 }));
    expectClose(resultOf(outcome).heat(340, 300), panel.heat(340, 300), 1e-12);
    expect(outcome.ok && outcome.notes.map((note) => note.key)).toContain('tunnelStill');
    expect(resultOf(outcome).filmUncertainty(340, 300)).toBeGreaterThanOrEqual(0.35);
  });

  it('weighs plate, fins and the wall over them (2700 kg/m³)', () => {
    const volume = 0.08 * 0.12 * 0.004 * 2 + 14 * 0.0015 * 0.03 * 0.12;
    expectClose(resultOf(prepareSink(tunnel)).drawnMass, 2700 * volume, 1e-12);
  });
});
