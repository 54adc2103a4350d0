import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { examples } from '../../shared/design/examples.ts';
import { checkDesign, parseDesign, writeDesign } from '../../shared/design/file.ts';
import { startDesign } from '../../shared/design/start.ts';
import { designJsonSchema } from '../../src/build/designJsonSchema.ts';
import { anyDesign } from '../engine/couple/designArbitrary.ts';

type Raw = Record<string, Record<string, unknown>>;

const good = (): Raw => structuredClone(startDesign) as unknown as Raw;

function faultsOf(edit: (raw: Raw) => void) {
  const raw = good();
  edit(raw);
  const found = checkDesign(raw);
  return found.ok ? [] : found.faults;
}

/** One wrong entry each: the path that must be named and a word the message must hold. */
const wrongEntries: readonly [string, string, RegExp, (raw: Raw) => void][] = [
  ['negative', 'sink.width', /between 0\.01 and 1 m/, (raw) => Object.assign(raw.sink!, { width: -0.1 })],
  ['zero', 'amplifier.pep', /between 0\.01 and 3000 W/, (raw) => Object.assign(raw.amplifier!, { pep: 0 })],
  [
    'absurd',
    'surroundings.ambient',
    /between 233\.1 and 343\.1 K|between 233\.2 and 343\.1 K/,
    (raw) => Object.assign(raw.surroundings!, { ambient: 5000 }),
  ],
  [
    'NaN',
    'source.openVoltage',
    /must be a number in V/,
    (raw) => Object.assign(raw.source!, { openVoltage: Number.NaN }),
  ],
  [
    'infinite',
    'source.openVoltage',
    /must be a number in V/,
    (raw) => Object.assign(raw.source!, { openVoltage: Number.POSITIVE_INFINITY }),
  ],
  ['missing', 'wiring.length', /missing/, (raw) => void delete raw.wiring!.length],
  [
    'text with a unit',
    'converter.outputVoltage',
    /must be a number in V/,
    (raw) => Object.assign(raw.converter!, { outputVoltage: '36 V' }),
  ],
  [
    'null where a number must be',
    'amplifier.pep',
    /must be a number in W/,
    (raw) => Object.assign(raw.amplifier!, { pep: null }),
  ],
  ['half a fin', 'sink.finCount', /whole number/, (raw) => Object.assign(raw.sink!, { finCount: 3.5 })],
  [
    'unknown choice',
    'amplifier.class',
    /must be one of: A, AB/,
    (raw) => Object.assign(raw.amplifier!, { class: 'G' }),
  ],
  ['misspelt key', 'sink.finhight', /not known/, (raw) => Object.assign(raw.sink!, { finhight: 0.02 })],
  [
    'no efficiency point',
    'converter.points',
    /at least one/,
    (raw) => Object.assign(raw.converter!, { points: [] }),
  ],
  ['a section missing', 'device', /expected object|missing/i, (raw) => void delete raw.device],
];

describe('a wrong entry names the field and says what would be right', () => {
  it.each(wrongEntries)('%s: %s', (_name, path, message, edit) => {
    const faults = faultsOf(edit);
    expect(faults.map((fault) => fault.path)).toContain(path);
    expect(faults.find((fault) => fault.path === path)?.message).toMatch(message);
  });

  it('lists every fault, not only the first', () => {
    const faults = faultsOf((raw) => {
      Object.assign(raw.sink!, { width: -1, finCount: 0 });
      Object.assign(raw.source!, { openVoltage: 'twelve' });
    });
    expect(faults.map((fault) => fault.path).sort()).toEqual([
      'sink.finCount',
      'sink.width',
      'source.openVoltage',
    ]);
  });
});

describe('a file that is no design is refused with the reason', () => {
  const text = writeDesign(startDesign);
  const cases: readonly [string, string, RegExp][] = [
    ['empty', '', /empty/],
    ['cut off', text.slice(0, text.length / 2), /ends too early/],
    ['not JSON', '{ format: heat }', /not valid JSON/],
    ['a list', '[1, 2]', /no design/],
    ['a letter', 'hello', /no design file: it does not begin with \{/],
    ['another format', '{"format": "recipe"}', /format must be/],
    ['a newer version', text.replace('"version": 1', '"version": 99'), /version 99 is newer/],
    ['no version', text.replace('"version": 1,', ''), /version is missing/],
    ['an unknown old version', text.replace('"version": 1', '"version": 0'), /version 0 is unknown/],
    ['far too large', `{"x":"${'a'.repeat(1_000_001)}"}`, /larger than 1 MB/],
  ];
  it.each(cases)('%s', (_name, content, message) => {
    const found = parseDesign(content);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.faults[0]?.message).toMatch(message);
  });
});

describe('design files', () => {
  it('ships at least four examples and each file in the folder is one of them', () => {
    const files = readdirSync(new URL('../../shared/examples/', import.meta.url)).sort();
    expect(files.length).toBeGreaterThanOrEqual(4);
    expect(examples.map((one) => `${one.key}.json`).sort()).toEqual(files);
  });

  it('reads back what it wrote', () => {
    fc.assert(
      fc.property(anyDesign, (design) => {
        const found = parseDesign(writeDesign(design));
        expect(found).toEqual({ ok: true, design: JSON.parse(JSON.stringify(design)) });
      }),
      { numRuns: 50, seed: 11 },
    );
  });

  it('publishes a JSON Schema made from the same rules', () => {
    const published = readFileSync(new URL('../../public/design.schema.json', import.meta.url), 'utf8');
    expect(JSON.parse(published), 'run: npm run schema').toEqual(
      JSON.parse(JSON.stringify(designJsonSchema())),
    );
  });
});
