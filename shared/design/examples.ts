import classA from '../examples/class-a-panel-8w.json' with { type: 'json' };
import dataFinal from '../examples/data-final-100w.json' with { type: 'json' };
import fieldStation from '../examples/field-station-60w.json' with { type: 'json' };
import pocketBeacon from '../examples/pocket-beacon-10w.json' with { type: 'json' };
import { checkDesign } from './file.ts';
import type { Design } from './schema.ts';

export interface Example {
  readonly key: string;
  readonly title: string;
  /** One line on how this example differs in kind. */
  readonly about: string;
  readonly design: Design;
}

function example(key: string, about: string, raw: unknown): Example {
  const checked = checkDesign(raw);
  if (!checked.ok) {
    throw new Error(`example ${key}: ${checked.faults.map((f) => `${f.path}: ${f.message}`).join('; ')}`);
  }
  return { key, title: checked.design.name, about, design: checked.design };
}

/** Designs of our own invention that differ in kind. */
export const examples: readonly Example[] = [
  example('field-station-60w', 'class AB on a raised rail, LiFePO4 battery, scrap extrusion', fieldStation),
  example(
    'pocket-beacon-10w',
    'class E straight from a lead-acid battery, small sink with a bench run (its data invented too)',
    pocketBeacon,
  ),
  example('data-final-100w', 'long carriers on a 50 V rail: this one does not fit', dataFinal),
  example('class-a-panel-8w', 'class A on a flat panel, from a mains supply', classA),
];
