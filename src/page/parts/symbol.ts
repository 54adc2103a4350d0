/** A symbol of the catalogue taken apart: "theta_jc" -> θ with the subscript jc. */
export interface SymbolParts {
  readonly base: string;
  readonly sub: string;
}

const greek: Readonly<Record<string, string>> = {
  theta: 'θ',
  eta: 'η',
  rho: 'ρ',
  phi: 'φ',
  epsilon: 'ε',
  sigma: 'σ',
  lambda: 'λ',
  tau: 'τ',
  alpha: 'α',
  Delta: 'Δ',
  Gamma: 'Γ',
};

/** Splits at the first underscore; writes Greek names, primes and differences as the trade prints them. */
export function splitSymbol(symbol: string): SymbolParts {
  const at = symbol.indexOf('_');
  const base = at < 0 ? symbol : symbol.slice(0, at);
  return { base: printed(base), sub: at < 0 ? '' : symbol.slice(at + 1) };
}

function printed(base: string): string {
  return base
    .split(' ')
    .map((word) => greek[word] ?? word.replace(/^d(?=[A-Z])/, 'Δ'))
    .join('')
    .replaceAll("'", '′');
}
