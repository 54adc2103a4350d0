import { describe, expect, it } from 'vitest';
import { quantities } from '../../../src/engine/catalogue/index.ts';
import { type Expression, parseFormula } from '../../../src/page/parts/formula.ts';
import { equationMath, expressionMath, symbolMath } from '../../../src/page/parts/mathml.ts';
import { splitSymbol } from '../../../src/page/parts/symbol.ts';

/** The tree with every bracket written out. */
function spelled(tree: Expression | undefined): string {
  if (!tree) return 'nothing';
  if (tree.kind === 'number') return tree.text + tree.unit;
  if (tree.kind === 'name') return tree.name;
  if (tree.kind === 'negative') return `(-${spelled(tree.of)})`;
  if (tree.kind === 'call') return `${tree.name}[${tree.of.map(spelled).join(';')}]`;
  return `(${spelled(tree.left)}${tree.sign}${spelled(tree.right)})`;
}

describe('the formulas of the catalogue', () => {
  it.each([
    ['a + b * c', '(a+(b*c))'],
    ['a - b - c', '((a-b)-c)'],
    ['a / b / c', '((a/b)/c)'],
    ['a ^ b ^ c', '(a^(b^c))'],
    ['-a ^ 2', '(-(a^2))'],
    ['-a * b', '((-a)*b)'],
    ['10^(d / 10)', '(10^(d/10))'],
    ['sqrt(2 * p * 50 ohm)', 'sqrt[((2*p)*50ohm)]'],
    ['max(a, b)', 'max[a;b]'],
    ['1 - (a - b)', '(1-(a-b))'],
    ['a +', 'nothing'],
    ['a b', 'nothing'],
    ['(a', 'nothing'],
    ['a; b', 'nothing'],
  ])('%s', (text, tree) => {
    expect(spelled(parseFormula(text))).toBe(tree);
  });

  const written = Object.values(quantities).filter((entry) => entry.formula !== undefined);
  it('reads every one of them', () => {
    expect(written.length).toBeGreaterThan(20);
    for (const entry of written) expect(parseFormula(entry.formula!), entry.key).toBeDefined();
  });
});

describe('setting mathematics', () => {
  const set = (text: string) => {
    const tree = parseFormula(text)!;
    return equationMath([symbolMath('theta_jc'), expressionMath(tree, (name) => symbolMath(name))]).outerHTML;
  };

  it('sets symbols with their subscripts', () => {
    expect(set('a')).toContain('<msub><mi>θ</mi><mtext>jc</mtext></msub><mo>=</mo>');
  });
  it('sets quotients as fractions and brackets what needs brackets', () => {
    expect(set('(a + b) / c')).toContain(
      '<mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mi>c</mi></mfrac>',
    );
    expect(set('(a + b) * c')).toContain('<mo>(</mo><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mo>)</mo>');
    expect(set('a - (b - c)')).toContain('<mo>−</mo><mrow><mo>(</mo>');
    expect(set('sqrt(a)')).toContain('<msqrt><mi>a</mi></msqrt>');
    expect(set('a ^ 2')).toContain('<msup><mi>a</mi><mn>2</mn></msup>');
  });
  it.each([
    ['theta_sa,50', 'θ', 'sa,50'],
    ['dT_r', 'ΔT', 'r'],
    ["R'_20", 'R′', '20'],
    ['Delta h', 'Δh', ''],
    ['Gamma_A', 'Γ', 'A'],
    ['2 phi', '2φ', ''],
    ['Q', 'Q', ''],
    ['d', 'd', ''],
  ])('takes %s apart', (symbol, base, sub) => {
    expect(splitSymbol(symbol)).toEqual({ base, sub });
  });

  it('leaves no name of a Greek letter in the catalogue', () => {
    const names =
      /alpha|beta|gamma|delta|epsilon|eta|theta|kappa|lambda|mu|nu|pi|rho|sigma|tau|phi|chi|psi|omega/i;
    const left = Object.values(quantities).filter(({ symbol }) => names.test(splitSymbol(symbol).base));
    expect(left.map(({ symbol }) => symbol)).toEqual([]);
  });
});
