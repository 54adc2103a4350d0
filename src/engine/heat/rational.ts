/** A fraction of whole numbers without rounding; the denominator is positive. */
export interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}

/** Coefficients, lowest power first, without zeros at the end. */
export type Polynomial = readonly Fraction[];

export const one: Fraction = { top: 1n, bottom: 1n };

function commonDivisor(a: bigint, b: bigint): bigint {
  let x = a < 0n ? -a : a;
  let y = b;
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

function reduced(top: bigint, bottom: bigint): Fraction {
  const sign = bottom < 0n ? -1n : 1n;
  const divisor = commonDivisor(top, bottom * sign) || 1n;
  return { top: (top * sign) / divisor, bottom: (bottom * sign) / divisor };
}

/** The exact value of a finite double. */
export function fromNumber(value: number): Fraction {
  let bottom = 1n;
  let scaled = value;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    bottom *= 2n;
  }
  return reduced(BigInt(scaled), bottom);
}

/** Bits of the quotient, enough that cutting the rest off is no worse than rounding to a double. */
const quotientBits = 70;

function bitLength(value: bigint): number {
  return value.toString(2).length;
}

/** The double next to the fraction; for values a double can hold. */
export function toNumber({ top, bottom }: Fraction): number {
  const size = top < 0n ? -top : top;
  const shift = quotientBits + bitLength(bottom) - bitLength(size);
  const quotient = shift >= 0 ? (size << BigInt(shift)) / bottom : size / (bottom << BigInt(-shift));
  const value = Number(quotient) * 2 ** -shift;
  return top < 0n ? -value : value;
}

export function divide(a: Fraction, b: Fraction): Fraction {
  return reduced(a.top * b.bottom, a.bottom * b.top);
}

function times(a: Fraction, b: Fraction): Fraction {
  return reduced(a.top * b.top, a.bottom * b.bottom);
}

function plus(a: Fraction, b: Fraction): Fraction {
  return reduced(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
}

const zero: Fraction = { top: 0n, bottom: 1n };

function trimmed(coefficients: Fraction[]): Polynomial {
  while (coefficients.length > 0 && coefficients.at(-1)!.top === 0n) coefficients.pop();
  return coefficients;
}

export function add(a: Polynomial, b: Polynomial): Polynomial {
  const length = Math.max(a.length, b.length);
  return trimmed(Array.from({ length }, (_, i) => plus(a[i] ?? zero, b[i] ?? zero)));
}

export function multiply(a: Polynomial, b: Polynomial): Polynomial {
  if (a.length === 0 || b.length === 0) return [];
  const product = new Array<Fraction>(a.length + b.length - 1).fill(zero);
  a.forEach((x, i) => {
    b.forEach((y, j) => {
      product[i + j] = plus(product[i + j]!, times(x, y));
    });
  });
  return trimmed(product);
}

/** a - factor · s^shift · b. */
export function subtractShifted(a: Polynomial, b: Polynomial, factor: Fraction, shift = 1): Polynomial {
  const result = [...a];
  const negative: Fraction = { top: -factor.top, bottom: factor.bottom };
  b.forEach((coefficient, i) => {
    result[i + shift] = plus(result[i + shift] ?? zero, times(negative, coefficient));
  });
  return trimmed(result);
}
