import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { efforts, type Remedy, type RemedyList, type VerdictKey } from '../../../../shared/answers.ts';
import { parseDesign } from '../../../../shared/design/file.ts';
import type { Design } from '../../../../shared/design/schema.ts';
import { remedies } from '../../../../src/engine/couple/answers/remedies.ts';
import { solve } from '../../../../src/engine/index.ts';
import { change, exampleOf } from '../designs.ts';

const file = fileURLToPath(new URL('../../../../shared/examples/data-final-100w.json', import.meta.url));
const text = readFileSync(file, 'utf8');
const failing = exampleOf('data-final-100w');

type Json = Record<string, unknown>;

/** The design file edited by hand: places set in the raw JSON, then read as any file is. */
function editedFile(remedy: Remedy): Design {
  const raw = JSON.parse(text) as Json;
  for (const { path, value } of remedy.edits) {
    const steps = path.split('.');
    const last = steps.pop()!;
    const place = steps.reduce((node, step) => node[step] as Json, raw);
    place[last] = value;
  }
  const parsed = parseDesign(JSON.stringify(raw));
  if (!parsed.ok) throw new Error(parsed.faults.map((fault) => `${fault.path}: ${fault.message}`).join('; '));
  return parsed.design;
}

function stateOf(design: Design, key: VerdictKey) {
  return solve(design).verdicts.find((verdict) => verdict.key === key)!.state;
}

function marginOf(design: Design): number {
  return solve(design).values['keyDown.junctionMargin']!;
}

const found = remedies(failing, { pairs: true });
const byKey = (list: RemedyList, key: string) => list.remedies.find((remedy) => remedy.key === key)!;

describe('grease without an insulator', () => {
  const saidOf = (count: number) => {
    const design = change(failing, { device: { pad: 'mica', count } });
    return byKey(remedies(design, { verdict: 'keyDown' }), 'grease').sideEffects.join(' ');
  };

  it('is said to join the tabs of several devices, which shorts a push-pull stage', () => {
    expect(saidOf(2)).toContain('shorts drain to drain');
    expect(saidOf(1)).not.toContain('shorts');
    expect(saidOf(1)).toContain('Only where tab and sink may touch');
  });
});

describe('remedies of the example that does not fit', () => {
  it('are offered for its worst verdict, with how far it is from fine', () => {
    expect(found.verdict).toBe('keyDown');
    expect(found.state).toBe('over');
    expect(found.missing).toMatch(/5\d\u202fK above its design limit/);
    expect(found.remedies.length).toBeGreaterThan(8);
  });

  it.each([...found.remedies, ...found.pairs].map((remedy) => [remedy.key, remedy] as const))(
    '%s does what a direct edit of the file does',
    (_key, remedy) => {
      const solution = solve(editedFile(remedy));
      for (const effect of remedy.effects) {
        const verdict = solution.verdicts.find((one) => one.key === effect.key)!;
        expect(effect.after, effect.key).toBe(verdict.state);
        expect(effect.headline).toBe(verdict.headline);
      }
      expect(remedy.enough).toBe(stateOf(editedFile(remedy), 'keyDown') === 'fine');
      const gained = solution.values['keyDown.junctionMargin']! - marginOf(failing);
      expect(remedy.gain).toBeCloseTo(gained, 6);
      expect(gained).toBeGreaterThan(0.5);
    },
  );

  it('names cautions that come with a change and were not there', () => {
    const before = new Set(solve(failing).cautions.map((caution) => caution.key));
    const fan = byKey(found, 'fan');
    expect(fan.newCautions.length).toBeGreaterThan(0);
    for (const caution of fan.newCautions) expect(before.has(caution.key)).toBe(false);
  });

  it('stand in order: enough first, then the least effort, then the greatest gain', () => {
    for (const list of [found.remedies, found.pairs]) {
      list.slice(1).forEach((remedy, i) => {
        const before = list[i]!;
        const rank = (one: Remedy) => [Number(!one.enough), efforts.indexOf(one.effort), -one.gain];
        const [a, b] = [rank(before), rank(remedy)];
        const first = a.findIndex((value, place) => value !== b[place]);
        if (first >= 0) expect(a[first]!).toBeLessThan(b[first]!);
      });
    }
  });

  it('take no more than is needed: the next weaker duty does not fit', () => {
    const duty = byKey(found, 'duty').edits[0]!.value as number;
    expect(marginOf(change(failing, { service: { transmitShare: duty } }))).toBeGreaterThanOrEqual(0);
    expect(marginOf(change(failing, { service: { transmitShare: duty + 0.01 } }))).toBeLessThan(0);
  });

  it('cover duty, power, mounting, sink and fan', () => {
    const keys = found.remedies.map((remedy) => remedy.key);
    for (const key of [
      'duty',
      'power',
      'overs',
      'devices',
      'fan',
      'longer',
      'wider',
      'taller',
      'finish.painted',
    ]) {
      expect(keys).toContain(key);
    }
  });
});

describe('how far the changes reach', () => {
  it('says so when nothing needs to change', () => {
    const list = remedies(failing, { verdict: 'supply' });
    expect(list.reach).toBe('fits');
    expect(list.remedies).toEqual([]);
    expect(list.sentence).toMatch(/fine as it stands/);
  });

  it('tries two together where none alone is enough', () => {
    const hot = change(failing, {
      amplifier: { biasInReceive: true, quiescentCurrent: 1.2 },
      service: { transmitShare: 0.3 },
    });
    const list = remedies(hot, { verdict: 'keyDown' });
    expect(list.remedies.every((remedy) => !remedy.enough)).toBe(true);
    expect(list.reach).toBe('pair');
    expect(list.pairs[0]!.enough).toBe(true);
    expect(list.pairs[0]!.key).toContain(' + ');
  });

  it('says by how far when nothing is enough', () => {
    const hopeless = change(failing, {
      surroundings: { ambient: 343.15 },
      limits: { designJunction: 343.5 },
    });
    const list = remedies(hopeless, { verdict: 'keyDown' });
    expect(list.reach).toBe('nothing');
    expect(list.sentence).toMatch(/Nothing here is enough.*K above its design limit/s);
  });
});

const disturbed = fc
  .record({
    example: fc.constantFrom('data-final-100w', 'field-station-60w', 'class-a-panel-8w', 'pocket-beacon-10w'),
    ambient: fc.double({ min: 263, max: 333, noNaN: true }),
    share: fc.double({ min: 0.05, max: 1, noNaN: true }),
    length: fc.double({ min: 0.03, max: 0.3, noNaN: true }),
    wire: fc.double({ min: 0.2, max: 12, noNaN: true }),
    voltage: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
    pad: fc.constantFrom('grease', 'mica', 'siliconePad', 'bare'),
  })
  .map(({ example, ambient, share, length, wire, voltage, pad }) => {
    const base = exampleOf(example);
    return change(base, {
      surroundings: { ambient },
      service: { transmitShare: share },
      sink: { length },
      wiring: { length: wire },
      source: { openVoltage: base.source.openVoltage * voltage },
      device: { pad: pad as Design['device']['pad'] },
    });
  });

const states = ['over', 'close', 'fine'];

describe('an applied remedy never worsens the verdict it was offered for', () => {
  it('holds for disturbed examples and any verdict', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(
        disturbed,
        fc.constantFrom<VerdictKey>('ssb', 'cw', 'keyDown', 'supply', 'people'),
        (design, verdict) => {
          const list = remedies(design, { verdict });
          const before = solve(design);
          for (const remedy of list.remedies) {
            const after = solve(
              remedy.edits.reduce((edited, { path, value }) => setAt(edited, path, value), design),
            );
            const rank = (solution: typeof after) =>
              states.indexOf(solution.verdicts.find((one) => one.key === verdict)!.state);
            expect(rank(after), `${remedy.key}`).toBeGreaterThanOrEqual(rank(before));
            if (remedy.enough) expect(rank(after)).toBe(2);
            const margin = (solution: typeof after) => solution.values[`${verdict}.junctionMargin`];
            const [now, then] = [margin(before), margin(after)];
            if (
              now !== undefined &&
              then !== undefined &&
              rank(after) === rank(before) &&
              before.findings.supply.length === 0
            )
              expect(then, remedy.key).toBeGreaterThan(now - 1e-6);
          }
        },
      ),
      { numRuns: 12, seed: 7 },
    );
  });
});

function setAt(design: Design, path: string, value: unknown): Design {
  const copy = structuredClone(design) as unknown as Json;
  const steps = path.split('.');
  const last = steps.pop()!;
  const place = steps.reduce((node, step) => node[step] as Json, copy);
  place[last] = value;
  return copy as unknown as Design;
}
