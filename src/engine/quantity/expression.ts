import {
  addDependencies,
  create,
  divideDependencies,
  type ImportObject,
  isUnit,
  multiplyDependencies,
  parseDependencies,
  piDependencies,
  powDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
  unitDependencies,
} from 'mathjs';
import type { Dimension } from '../../../shared/design/fields.ts';
import { failure, type Outcome } from '../../../shared/outcome.ts';
import { longestText, normalise } from './normalise.ts';
import { asReading, type Reading } from './read.ts';
import { dimensionWords, findUnit, toSI } from './units.ts';

/**
 * Products, brackets and mixed units: what the scanner in read.ts hands on. The only file that imports mathjs,
 * which weighs as much as the rest of the page together; the page reaches it through the worker alone.
 */
const math = create({
  ...(addDependencies as ImportObject),
  ...(divideDependencies as ImportObject),
  ...(multiplyDependencies as ImportObject),
  ...(parseDependencies as ImportObject),
  ...(piDependencies as ImportObject),
  ...(powDependencies as ImportObject),
  ...(sqrtDependencies as ImportObject),
  ...(subtractDependencies as ImportObject),
  ...(unaryMinusDependencies as ImportObject),
  ...(unaryPlusDependencies as ImportObject),
  ...(unitDependencies as ImportObject),
});

interface TreeNode {
  readonly type: string;
  readonly value?: unknown;
  readonly name?: string;
  readonly op?: string;
  readonly fn?: { readonly name?: string };
  forEach(visit: (child: TreeNode) => void): void;
}

const allowedOperators = new Set(['+', '-', '*', '/', '^']);

/**
 * Whether a parse tree holds nothing but numbers, brackets, + - * / ^, units, pi and sqrt. Everything else
 * (assignments, function definitions, property access, config, import) is refused before anything is evaluated.
 */
function isHarmless(node: TreeNode): boolean {
  if (!isHarmlessNode(node)) return false;
  let harmless = true;
  node.forEach((child) => {
    if (child === (node.fn as unknown)) return;
    harmless = harmless && isHarmless(child);
  });
  return harmless;
}

function isHarmlessNode(node: TreeNode): boolean {
  if (node.type === 'ConstantNode') return typeof node.value === 'number';
  if (node.type === 'ParenthesisNode') return true;
  if (node.type === 'OperatorNode') return allowedOperators.has(node.op ?? '');
  if (node.type === 'FunctionNode') return node.fn?.name === 'sqrt';
  if (node.type === 'SymbolNode') return isKnownSymbol(node.name ?? '');
  return false;
}

function isKnownSymbol(name: string): boolean {
  return name === 'pi' || math.Unit.isValuelessUnit(name);
}

/** mathjs names for what its parser does not know in our spelling. The word `in` is its conversion operator. */
const respell: readonly (readonly [RegExp, string])[] = [
  [/(\d) ?"/g, '$1 inch'],
  [/\bin\b/g, 'inch'],
  [/°C/g, 'degC'],
  [/°F/g, 'degF'],
  [/°/g, 'deg'],
  [/([munkM]?)[Oo]hms?\b/g, '$1ohm'],
  [/\b(?:thou|mils?)\b/g, 'mil'],
  [/(\d+)(?: |-)(\d+)\/(\d+)(?![\d.])/g, '($1+$2/$3)'],
  [/(\d+(?:\.\d+)?) ?\/ ?(\d+(?:\.\d+)?)(?= ?[A-Za-z])/g, '($1/$2)'],
  [/(\d),(\d)/g, '$1.$2'],
];

function toMathText(text: string): string {
  return respell.reduce(
    (plain, [pattern, replacement]) => plain.replace(pattern, replacement),
    normalise(text),
  );
}

/** The SI unit of a dimension in mathjs spelling; undefined where values carry no unit. */
const siUnits: Partial<Record<Dimension, string>> = {
  length: 'm',
  area: 'm^2',
  power: 'W',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  thermalResistance: 'K/W',
  temperature: 'K',
  temperatureCoefficient: 'K^-1',
  time: 's',
  frequency: 'Hz',
  mass: 'kg',
  capacitance: 'F',
  angle: 'rad',
  conductivity: 'W/(m K)',
  volumeFlow: 'm^3/s',
  pressure: 'Pa',
};

/**
 * Evaluates typed text such as "2 * (30 mm + 1/4 in)" or "13.8 V * 20 A" for a field of the dimension. A result
 * without unit is taken in the field's unit. The dimension is checked, so volts times amperes will not fill a
 * length. Never throws; NaN and infinities are refused.
 */
export function evaluateExpression(
  text: string,
  dimension: Dimension,
  defaultUnit: string,
): Outcome<Reading> {
  if (text.length > longestText) {
    return failure('tooLong', `More than ${longestText} characters: type the figure alone.`);
  }
  try {
    const tree = math.parse(toMathText(text));
    if (!isHarmless(tree as unknown as TreeNode)) {
      return failure(
        'notAllowed',
        'Only numbers, units, brackets, + − × ÷, powers, pi and sqrt are understood here.',
      );
    }
    return toReading(tree.compile().evaluate(), dimension, defaultUnit);
  } catch {
    return failure('unreadable', `“${text.trim()}” cannot be worked out as ${dimensionWords[dimension]}.`);
  }
}

function toReading(result: unknown, dimension: Dimension, defaultUnit: string): Outcome<Reading> {
  if (typeof result === 'number') {
    return asReading(toSI(result, findUnit(dimension, defaultUnit)), dimension, defaultUnit);
  }
  const si = siUnits[dimension];
  if (!isUnit(result)) return failure('unreadable', 'That does not come out as a number.');
  if (si === undefined || !result.equalBase(math.unit(si))) {
    return failure(
      'otherDimension',
      `That does not come out as ${dimensionWords[dimension]} (but in ${result.toSI().formatUnits()}).`,
    );
  }
  return asReading(result.toNumber(si), dimension, defaultUnit);
}
