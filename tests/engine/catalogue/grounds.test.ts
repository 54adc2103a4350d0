import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { fieldAt, leafAt, withLeaf } from '../../../shared/design/leaves.ts';
import type { Design } from '../../../shared/design/schema.ts';
import { services } from '../../../shared/solution.ts';
import { takenFrom, validity } from '../../../src/engine/catalogue/grounds.ts';
import { quantities } from '../../../src/engine/catalogue/index.ts';
import { solve } from '../../../src/engine/index.ts';
import { change, exampleOf } from '../couple/designs.ts';

const entries = Object.values(quantities);
const methods = entries.filter(({ method }) => method !== undefined).map(({ key }) => key);

/** Lists of the design, shown as a whole. */
const lists = ['wiring.path', 'converter.points', 'amplifier.readings', 'bench'];
/** Constants of the sheet. */
const fixed = ['activationTemperature', 'ratingRise'];

const field = exampleOf('field-station-60w');
const sound = examples.map(({ design }) => design);
const designed = change(field, {
  converter: { kind: 'designed', frequency: 150e3, heatTo: 'amplifierSink' },
});
const synchronous: Design['converter']['parts'] = {
  ...designed.converter.parts,
  core: 'N87',
  rectifier: 'synchronous',
  recoveryCharge: 5e-8,
};
/** Designs in which between them every entry has a say. */
const designs: readonly Design[] = [
  ...sound,
  designed,
  { ...designed, converter: { ...designed.converter, parts: synchronous } },
  change(field, { sink: { fan: 'along' }, amplifier: { swr: 3, foldbackSwr: 1.5, biasInReceive: true } }),
  change(field, { amplifier: { calibration: 'devices', efficiency: 0.6 } }),
  change(field, { device: { spreader: true } }),
  change(field, { limits: { designJunction: 390 }, device: { pad: 'measured' }, wiring: { fuseRating: 20 } }),
  change(field, { antenna: { exposureBy: 'share' }, service: { speechKind: 'own' }, sink: { mass: 0.7 } }),
];

describe('what a quantity is worked out from', () => {
  it('is said of every quantity that is found by a method, and of no other', () => {
    expect(Object.keys(takenFrom).sort()).toEqual([...methods].sort());
  });

  it.each(Object.entries(takenFrom))(
    '%s: by quantities of the catalogue and entries of the design',
    (key, names) => {
      if (!fixed.includes(key)) expect(names.length).toBeGreaterThan(0);
      for (const name of names) {
        expect(name).not.toBe(key);
        const known = name in quantities || lists.includes(name) || fieldAt(name) !== undefined;
        expect(known, name).toBe(true);
      }
      expect(new Set(names).size).toBe(names.length);
    },
  );

  const entered = Object.entries(takenFrom).flatMap(([key, names]) =>
    names
      .filter((name) => name.includes('.') && fieldAt(name)?.kind === 'number')
      .map((name) => [key, name] as const),
  );
  it.each(entered)('%s moves with %s in some design', (key, path) => {
    const moved = designs.some((design) => {
      const value = leafAt(design, path);
      const spec = fieldAt(path);
      const whole = spec?.kind === 'number' && spec.dimension === 'count';
      const next = typeof value !== 'number' || value === 0 ? 1 : whole ? value + 1 : value * 1.1;
      return valuesOf(design, key) !== valuesOf(withLeaf(design, path, next), key);
    });
    expect(moved).toBe(true);
  });
});

function valuesOf(design: Design, key: string): string {
  const { values } = solve(design);
  return JSON.stringify([values[key], ...services.map((service) => values[`${service}.${key}`])]);
}

describe('where a quantity holds', () => {
  it.each(Object.entries(validity))('%s: a sentence of a quantity that there is', (key, sentence) => {
    expect(quantities[key]).toBeDefined();
    expect(sentence).toMatch(/^[A-Z±].*\.$/);
  });
});
