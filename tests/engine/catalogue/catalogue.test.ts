import { all, create, type FactoryFunctionMap, type MathNode, type SymbolNode, type Unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { examples } from '../../../shared/design/examples.ts';
import { type Dimension, fileUnits } from '../../../shared/design/fields.ts';
import { services } from '../../../shared/solution.ts';
import { entryFor, quantities, quantityOrder } from '../../../src/engine/catalogue/index.ts';
import { sources } from '../../../src/engine/catalogue/sources.ts';
import { solve } from '../../../src/engine/index.ts';
import { change, exampleOf } from '../couple/designs.ts';

const math = create(all as FactoryFunctionMap);

/** The unit a quantity has in mathjs; null for plain numbers (shares, decibels, counts, angles in radians). */
const mathUnits: Readonly<Record<Dimension, string | null>> = {
  length: 'm',
  area: 'm^2',
  power: 'W',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  thermalResistance: 'K/W',
  temperature: 'K',
  temperatureCoefficient: '1/K',
  time: 's',
  share: null,
  decibel: null,
  frequency: 'Hz',
  mass: 'kg',
  capacitance: 'F',
  inductance: 'H',
  charge: 'A s',
  energy: 'J',
  pulseIntegral: 'A^2 s',
  angle: null,
  conductivity: 'W/(m K)',
  keyingSpeed: null,
  count: null,
  number: null,
  volumeFlow: 'm^3/s',
  pressure: 'Pa',
  temperatureDifference: 'K',
  heatCapacity: 'J/K',
  filmCoefficient: 'W/(m^2 K)',
  resistancePerLength: 'ohm/m',
};

/** Unit names and functions a formula may use besides catalogue keys. */
const allowedNames = new Set(['K', 'ohm', 's', 'sqrt', 'exp', 'pi']);

function namesIn(formula: string): string[] {
  const names: string[] = [];
  math.parse(formula).traverse((node: MathNode) => {
    if (node.type === 'SymbolNode') names.push((node as SymbolNode).name);
  });
  return names;
}

function withUnit(value: number, dimension: Dimension): number | Unit {
  const unit = mathUnits[dimension];
  return unit === null ? value : math.unit(value, unit);
}

function plainValue(result: number | Unit, dimension: Dimension): number {
  const unit = mathUnits[dimension];
  if (unit === null) return typeof result === 'number' ? result : Number(math.number(result, '' as never));
  return (result as Unit).toNumber(unit);
}

describe('the catalogue', () => {
  it('declares each quantity once', () => {
    expect(new Set(quantityOrder).size).toBe(quantityOrder.length);
    expect(quantityOrder.length).toBeGreaterThan(90);
  });

  it.each(quantityOrder)('%s says how it comes about and from where', (key) => {
    const entry = quantities[key]!;
    expect(Number(entry.given === true) + Number(!!entry.formula) + Number(!!entry.method)).toBe(1);
    if (entry.source) expect(sources[entry.source], entry.source).toBeDefined();
    for (const name of entry.formula ? namesIn(entry.formula) : []) {
      expect(quantities[name] !== undefined || allowedNames.has(name), `${key} uses ${name}`).toBe(true);
    }
  });

  it.each(Object.entries(sources))('source %s has a title and a known status', (_key, source) => {
    expect(source.title.length).toBeGreaterThan(3);
    expect([
      'primary',
      'secondary',
      'from memory',
      'common practice',
      'own choice',
      'own computation',
    ]).toContain(source.status);
  });

  it('has a unit in the file for every dimension', () => {
    expect(Object.keys(mathUnits).sort()).toEqual(Object.keys(fileUnits).sort());
  });
});

describe('what is shown is what was computed: formulas evaluated with units by an independent library', () => {
  const relative = 1e-9;
  const station = exampleOf('field-station-60w');
  const fromParts = (phases: number) =>
    change(station, {
      converter: {
        kind: 'designed',
        filterInductance: 2e-6,
        filterResistance: 0.002,
        parts: { ...station.converter.parts, phases, core: 'N87' },
      },
    });
  const designs = [
    ...examples,
    { key: 'a converter from parts', design: fromParts(1) },
    { key: 'three phases', design: fromParts(3) },
  ];
  for (const { key: name, design } of designs) {
    const { values } = solve(design);

    it(`${name}: every value is in the catalogue`, () => {
      for (const key of Object.keys(values)) expect(entryFor(key), key).toBeDefined();
      expect(Object.keys(values).length).toBeGreaterThan(100);
    });

    it(`${name}: every formula gives the engine's number`, () => {
      let checked = 0;
      for (const [key, value] of Object.entries(values)) {
        const entry = entryFor(key)!;
        if (!entry.formula) continue;
        const service = services.find((one) => key.startsWith(`${one}.`));
        const scope: Record<string, number | Unit> = {};
        for (const used of namesIn(entry.formula)) {
          const source = service && values[`${service}.${used}`] !== undefined ? `${service}.${used}` : used;
          const known = values[source];
          const usedEntry = quantities[used];
          if (known !== undefined && usedEntry) scope[used] = withUnit(known, usedEntry.dimension);
        }
        const shown = plainValue(math.evaluate(entry.formula, scope), entry.dimension);
        const gap = Math.abs(shown - value) / Math.max(Math.abs(value), 1e-6);
        expect(gap, `${key}: formula ${shown}, engine ${value}`).toBeLessThan(relative);
        checked += 1;
      }
      expect(checked).toBeGreaterThan(25);
    });
  }
});
