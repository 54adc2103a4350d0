import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allChecks, errorOf } from '../../validate/checks.ts';
import { judgeMeasured, type MeasuredSink, readMeasured } from '../../validate/measuredSinks.ts';
import { listOf, markdownOf, measuredList } from '../../validate/report.ts';

const checks = allChecks();

describe('the heat models beside published values and independent cases', () => {
  it.each(checks.map((check) => [`${check.part}: ${check.item}`, check] as const))('%s', (_, check) => {
    expect(Number.isFinite(check.model)).toBe(true);
    expect(Math.abs(errorOf(check))).toBeLessThanOrEqual(check.allowed);
  });

  it('names the origin and the source of each, and has pins, tunnel, vents and spreader from elsewhere', () => {
    const list = listOf(checks);
    for (const { source, origin } of checks) {
      expect(list).toContain(source);
      expect(list).toContain(origin);
    }
    const elsewhere = checks.filter(({ origin }) => origin === 'independent').map(({ item }) => item);
    for (const word of ['pins', 'closed channel', 'vents', 'spreader']) {
      expect(elsewhere.some((item) => item.includes(word))).toBe(true);
    }
  });

  it('stand in the README as they are now', () => {
    const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
    expect(readme).toContain(markdownOf(checks));
    expect(readme).toContain('has not been compared with measured arrays');
  });
});

/** Invented: a sink and what a thermometer might have shown. */
const file: MeasuredSink = {
  name: 'invented extrusion',
  source: {
    title: 'Invented for this test',
    part: 'two steady readings',
    year: null,
    status: 'own computation',
  },
  sink: {
    width: 0.1,
    length: 0.1,
    baseThickness: 0.005,
    finCount: 10,
    finHeight: 0.025,
    finThickness: 0.002,
    finish: 'anodised',
  },
  readings: [
    { power: 20, plate: 340, air: 296.15 },
    { power: 20, plate: 400, air: 296.15 },
  ],
};

describe('measured sinks as plain files', () => {
  it('are read from their directory and counted inside or outside the band', () => {
    const directory = mkdtempSync(join(tmpdir(), 'sinks-'));
    writeFileSync(join(directory, 'invented.json'), JSON.stringify(file));
    writeFileSync(join(directory, 'README.md'), 'not a sink');
    const rows = readMeasured(directory).flatMap(judgeMeasured);
    expect(rows.map(({ inside }) => inside)).toEqual([true, false]);
    for (const { low, high, model } of rows) {
      expect(low).toBeLessThan(model);
      expect(high).toBeGreaterThan(model);
      // ±25 % in the film coefficient and the finish move the rise by a tenth at least.
      expect(high / low).toBeGreaterThan(1.2);
      expect(high / low).toBeLessThan(2);
    }
    expect(measuredList(rows)).toContain('1 of 2 readings inside the band of nine in ten');
    expect(measuredList([])).toContain('none yet');
  });

  it('are refused when a dimension makes no sense', () => {
    expect(() => judgeMeasured({ ...file, sink: { ...file.sink, finThickness: 0.02 } })).toThrow(
      /do not fit/,
    );
    expect(() => judgeMeasured({ ...file, sink: { width: 'wide' } })).toThrow();
  });
});
