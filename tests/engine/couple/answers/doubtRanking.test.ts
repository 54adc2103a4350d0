import { describe, expect, it } from 'vitest';
import type { DoubtRanking } from '../../../../shared/answers.ts';
import { fieldAt } from '../../../../shared/design/leaves.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { doubtRanking } from '../../../../src/engine/couple/answers/doubtRanking.ts';
import { measureOfVerdict } from '../../../../src/engine/couple/answers/sensitivity.ts';
import { solve } from '../../../../src/engine/index.ts';
import { change, exampleOf } from '../designs.ts';

const station = exampleOf('field-station-60w');

function rankingOf(design: Design, quantity: string): DoubtRanking {
  const found = doubtRanking(design, quantity);
  if (!found.ok) throw new Error(found.reason.sentence);
  return found.value;
}

describe('what makes a figure unsure', () => {
  it.each([
    ['keyDown', measureOfVerdict.keyDown],
    ['people', measureOfVerdict.people],
    ['supply', 'inputCurrentPep'],
  ])('has an answer for %s: ranked shares of one spread, with what to measure', (_name, quantity) => {
    const { rows, value, low, high } = rankingOf(station, quantity);
    expect(rows.length).toBeGreaterThan(1);
    rows.slice(1).forEach((row, i) => {
      expect(row.share).toBeLessThanOrEqual(rows[i]!.share);
    });
    expect(rows.reduce((sum, { share }) => sum + share, 0)).toBeLessThan(1.2);
    for (const { advice } of rows) expect(advice).toMatch(/\.$/);
    expect(low).toBeLessThan(high);
    expect(value).toBe(solve(station).values[quantity]);
  });

  it('a better measured figure falls in the ranking', () => {
    const share = (design: Design) =>
      rankingOf(design, 'keyDown.junctionPeak').rows.find(({ key }) => key === 'amplifier.efficiency')
        ?.share ?? 0;
    const guessed = change(station, { amplifier: { efficiencyMeasured: false } });
    const measured = change(station, { amplifier: { efficiencyMeasured: true } });
    expect(share(measured)).toBeLessThan(share(guessed));
    expect(share(guessed)).toBeGreaterThan(0.1);
  });

  it.each(['keyDown.junctionPeak', 'inputCurrentPep'])(
    'says for %s to tick a measured efficiency',
    (quantity) => {
      const adviceWhen = (amplifier: Partial<Design['amplifier']>) =>
        rankingOf(change(station, { amplifier }), quantity).rows.find(
          ({ key }) => key === 'amplifier.efficiency',
        )?.advice;
      const label = fieldAt('amplifier.efficiencyMeasured')!.label;
      expect(adviceWhen({ calibration: 'efficiency', efficiencyMeasured: false })).toBe(
        `Measure supply current and output at full power. Tick “${label}” if it is.`,
      );
      expect(adviceWhen({ calibration: 'efficiency', efficiencyMeasured: true })).not.toContain('Tick');
    },
  );

  it('ranks the metal by the sink and its load, not by what lies above the plate', () => {
    const keys = rankingOf(station, 'touchTemperature').rows.map(({ key }) => key);
    expect(keys).toContain('film');
    expect(keys).not.toContain('device.junctionToCase');
    expect(keys).not.toContain('pad');
  });

  it('moves a current by what the design solved at the edges of its efficiency draws', () => {
    const { rows, low, high, value } = rankingOf(station, 'inputCurrentPep');
    const final = rows.find(({ key }) => key === 'amplifier.efficiency')!;
    expect(final.effect).toBeLessThan(0);
    expect(high - value).toBeGreaterThan(Math.abs(final.effect) * 0.9);
    expect(value - low).toBeGreaterThan(0);
  });

  it('says where no doubt is known', () => {
    const refused = doubtRanking(station, 'exposureDistance');
    expect(!refused.ok && refused.reason.key).toBe('noDoubt');
    expect(!refused.ok && refused.reason.sentence).toMatch(/taken as entered/);
    const given = doubtRanking(station, 'ambient');
    expect(!given.ok && given.reason.key).toBe('quantityIsGiven');
  });
});
