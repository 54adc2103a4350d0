import { describe, expect, it } from 'vitest';
import { evaluateExpression } from '../../../src/engine/quantity/expression.ts';

describe('evaluates what the scanner hands on', () => {
  it.each([
    ['2 * 30 mm', 'length', 'mm', 0.06],
    ['2 * (30 mm + 1/4 in)', 'length', 'mm', 0.0727],
    ['100 mm + 1/4 in', 'length', 'mm', 0.10635],
    ['3 * 1-1/2 in', 'length', 'mm', 0.1143],
    ['13.8 V * 20 A', 'power', 'W', 276],
    ['(20 + 5) * 2', 'length', 'mm', 0.05],
    ['50 mV / 10 A', 'resistance', 'mΩ', 0.005],
    ['4 * 22 mΩ', 'resistance', 'mΩ', 0.088],
    ['sqrt(9) * 2 µF', 'capacitance', 'µF', 6e-6],
    ['2 * pi', 'number', '', 2 * Math.PI],
    ['2 × 1,5 mm', 'length', 'mm', 0.003],
  ] as const)('%s as %s', (text, dimension, unit, expected) => {
    const read = evaluateExpression(text, dimension, unit);
    expect(read.ok ? read.value.value : read.reason.sentence).toBeCloseTo(expected, 12);
  });
});

describe('refuses everything else, and nothing it refuses changes a later result', () => {
  it.each([
    'config({"number":"BigNumber"})',
    'import({})',
    'f(x) = f(x)',
    'parse("1")',
    'unit("5 mm")',
    'createUnit("foo")',
    'a = 3',
    '"text"',
    '[1, 2]',
    '1; 2',
    'sqrt.constructor',
    'x',
    '2 mm > 1 mm',
    '5!',
    '1/0 mm * 0',
    '2 ^ 9999',
    '2 * 3 kg',
    'sqrt(-4) mm',
    `${'1+'.repeat(80)}1`,
  ])('%s', (text) => {
    expect(evaluateExpression(text, 'length', 'mm').ok).toBe(false);
    const after = evaluateExpression('2 * 30 mm', 'length', 'mm');
    expect(after.ok && after.value.value).toBeCloseTo(0.06, 15);
  });

  it('names the dimension it got', () => {
    const read = evaluateExpression('5 V * 2 A', 'length', 'mm');
    expect(!read.ok && read.reason.sentence).toContain('does not come out as a length');
  });
});
