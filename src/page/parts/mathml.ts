import type { Expression } from './formula.ts';
import { splitSymbol } from './symbol.ts';

const namespace = 'http://www.w3.org/1998/Math/MathML';

type Part = Element | string;

function element(name: string, ...parts: readonly Part[]): Element {
  const made = document.createElementNS(namespace, name);
  made.append(...parts);
  return made;
}

/** What stands for a name in the formula: its symbol, or its value with unit. */
export type Leaf = (name: string) => Element;

/** A symbol such as theta_jc as mathematics. */
export function symbolMath(symbol: string): Element {
  const { base, sub } = splitSymbol(symbol);
  const letter = element('mi', base);
  return sub === '' ? letter : element('msub', letter, element('mtext', sub));
}

/** A figure with its unit. */
export function figureMath(text: string): Element {
  return element('mtext', text);
}

/** A unit as the catalogue names it. */
export function unitMath(unit: string): Element {
  return element('mtext', `\u202f${unit === 'ohm' ? 'Ω' : unit}`);
}

const signs: Readonly<Record<string, string>> = { '+': '+', '-': '−', '*': '·' };

function strengthOf(expression: Expression): number {
  if (expression.kind === 'negative') return 1;
  if (expression.kind !== 'operation') return 9;
  if (expression.sign === '+' || expression.sign === '-') return 1;
  return expression.sign === '*' ? 2 : 9;
}

function bracketed(expression: Expression, least: number, leaf: Leaf): Element {
  const inner = expressionMath(expression, leaf);
  if (strengthOf(expression) >= least) return inner;
  return element('mrow', element('mo', '('), inner, element('mo', ')'));
}

/** An expression set as mathematics: quotients as fractions, powers raised, roots under their sign. */
export function expressionMath(expression: Expression, leaf: Leaf): Element {
  switch (expression.kind) {
    case 'number':
      return expression.unit === ''
        ? element('mn', expression.text)
        : element('mrow', element('mn', expression.text), unitMath(expression.unit));
    case 'name':
      return expression.name === 'pi' ? element('mi', 'π') : leaf(expression.name);
    case 'negative':
      return element('mrow', element('mo', '−'), bracketed(expression.of, 2, leaf));
    case 'call':
      return callMath(expression, leaf);
    case 'operation':
      return operationMath(expression, leaf);
  }
}

function callMath(expression: Extract<Expression, { kind: 'call' }>, leaf: Leaf): Element {
  const parts = expression.of.map((argument) => expressionMath(argument, leaf));
  if (expression.name === 'sqrt') return element('msqrt', ...parts);
  const listed = parts.flatMap((part, index) => (index === 0 ? [part] : [element('mo', ','), part]));
  return element('mrow', element('mi', expression.name), element('mo', '('), ...listed, element('mo', ')'));
}

function operationMath(expression: Extract<Expression, { kind: 'operation' }>, leaf: Leaf): Element {
  const { sign, left, right } = expression;
  if (sign === '/') return element('mfrac', expressionMath(left, leaf), expressionMath(right, leaf));
  if (sign === '^') return element('msup', bracketed(left, 9, leaf), expressionMath(right, leaf));
  const least = sign === '*' ? 2 : 1;
  const rightLeast = sign === '-' ? 2 : least;
  return element(
    'mrow',
    bracketed(left, least, leaf),
    element('mo', signs[sign] ?? sign),
    bracketed(right, rightLeast, leaf),
  );
}

/** One line of mathematics: the parts joined by equals signs. */
export function equationMath(parts: readonly Element[]): Element {
  const joined = parts.flatMap((part, index) => (index === 0 ? [part] : [element('mo', '='), part]));
  const math = element('math', element('mrow', ...joined));
  math.setAttribute('displaystyle', 'true');
  return math;
}
