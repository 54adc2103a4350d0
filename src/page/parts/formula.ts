/** An expression of the catalogue as a tree, for setting it and for putting the values in. */
export type Expression =
  | { readonly kind: 'number'; readonly text: string; readonly unit: string }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'negative'; readonly of: Expression }
  | {
      readonly kind: 'operation';
      readonly sign: '+' | '-' | '*' | '/' | '^';
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: 'call'; readonly name: string; readonly of: readonly Expression[] };

const token = /\s*(?:(\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)|([A-Za-z_]\w*)|([-+*/^(),]))/y;

function tokens(text: string): readonly string[] | undefined {
  const found: string[] = [];
  token.lastIndex = 0;
  while (token.lastIndex < text.trimEnd().length) {
    const match = token.exec(text);
    if (!match) return undefined;
    found.push(match[1] ?? match[2] ?? match[3] ?? '');
  }
  return found;
}

const strength: Readonly<Record<string, number>> = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 };
/** A leading minus binds looser than a power and tighter than a product. */
const minusStrength = 3;

/** Reads "a + b * sqrt(c) / 10^(d / 10)"; undefined for anything it does not know. */
export function parseFormula(text: string): Expression | undefined {
  const list = tokens(text);
  if (!list) return undefined;
  let at = 0;

  function primary(): Expression | undefined {
    const word = list![at++];
    if (word === undefined) return undefined;
    if (word === '-') {
      const of = expression(minusStrength);
      return of && { kind: 'negative', of };
    }
    if (word === '(') {
      const inner = expression(0);
      return list![at++] === ')' ? inner : undefined;
    }
    if (/^\d/.test(word)) return { kind: 'number', text: word, unit: unitAfter() };
    if (!/^[A-Za-z_]/.test(word)) return undefined;
    if (list![at] !== '(') return { kind: 'name', name: word };
    at++;
    return call(word);
  }

  /** "50 ohm": a name right after a number is its unit. */
  function unitAfter(): string {
    const next = list![at];
    if (next === undefined || !/^[A-Za-z_]/.test(next)) return '';
    at++;
    return next;
  }

  function call(name: string): Expression | undefined {
    const of: Expression[] = [];
    do {
      const argument = expression(0);
      if (!argument) return undefined;
      of.push(argument);
    } while (list![at++] === ',');
    return list![at - 1] === ')' ? { kind: 'call', name, of } : undefined;
  }

  function expression(least: number): Expression | undefined {
    let left = primary();
    while (left) {
      const sign = list![at] as keyof typeof strength | undefined;
      const own = sign === undefined ? undefined : strength[sign];
      if (own === undefined || own < least) return left;
      at++;
      const right = expression(sign === '^' ? own : own + 1);
      left = right && { kind: 'operation', sign: sign as '+', left, right };
    }
    return undefined;
  }

  const tree = expression(0);
  return at === list.length ? tree : undefined;
}
