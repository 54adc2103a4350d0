import { describe, expect, it } from 'vitest';
import { withValue } from '../../../../shared/design/leaves.ts';
import { measureOfVerdict, sensitivity } from '../../../../src/engine/couple/answers/sensitivity.ts';
import { solve } from '../../../../src/engine/index.ts';
import { exampleOf } from '../designs.ts';

const station = exampleOf('field-station-60w');

describe('what matters for a verdict', () => {
  const found = sensitivity(station, measureOfVerdict.keyDown);
  if (!found.ok) throw new Error(found.reason.sentence);
  const { rows, value } = found.value;

  it('agrees with the design changed by hand and solved', () => {
    const junction = (path: string, to: number) =>
      solve(withValue(station, path, to)).values['keyDown.junctionPeak']!;
    const row = (path: string) => rows.find((one) => one.path === path)!;
    expect(value).toBe(solve(station).values['keyDown.junctionPeak']);
    const { ambient } = station.surroundings;
    expect(row('surroundings.ambient').raised).toBeCloseTo(
      junction('surroundings.ambient', ambient + 5) - value,
      6,
    );
    const { length } = station.sink;
    expect(row('sink.length').lowered).toBeCloseTo(junction('sink.length', length * 0.9) - value, 6);
    const { efficiency } = station.amplifier;
    expect(row('amplifier.efficiency').raised).toBeCloseTo(
      junction('amplifier.efficiency', efficiency + 0.05) - value,
      6,
    );
    expect(row('device.count').lowered).toBeCloseTo(
      junction('device.count', station.device.count - 1) - value,
      6,
    );
  });

  it('stands in order of size, without values that do nothing', () => {
    expect(rows.length).toBeGreaterThan(10);
    rows.slice(1).forEach((row, i) => {
      expect(row.size).toBeLessThanOrEqual(rows[i]!.size);
    });
    expect(rows.every((row) => row.size > 0)).toBe(true);
    expect(rows.some((row) => row.path === 'sink.emissivity')).toBe(false);
    expect(rows.some((row) => row.path.startsWith('antenna.'))).toBe(false);
  });

  it('has the signs of physics: more air, more sink and more efficiency cool, more duty heats', () => {
    const raised = (path: string) => rows.find((one) => one.path === path)!.raised!;
    expect(raised('surroundings.ambient')).toBeGreaterThan(0);
    expect(raised('service.transmitShare')).toBeGreaterThan(0);
    expect(raised('amplifier.efficiency')).toBeLessThan(0);
    expect(raised('sink.finHeight')).toBeLessThan(0);
    expect(raised('device.junctionToCase')).toBeGreaterThan(0);
  });

  it.each(Object.entries(measureOfVerdict))('has an answer for %s', (_verdict, quantity) => {
    const outcome = sensitivity(exampleOf('field-station-60w'), quantity);
    expect(outcome.ok && outcome.value.rows.length).toBeGreaterThan(3);
  });

  it('says why it has none', () => {
    const refused = sensitivity(exampleOf('pocket-beacon-10w'), 'ssb.junctionPeak');
    expect(!refused.ok && refused.reason.key).toBe('notComputed');
    const given = sensitivity(station, 'ambient');
    expect(!given.ok && given.reason.key).toBe('quantityIsGiven');
  });
});
