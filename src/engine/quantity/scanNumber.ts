import { failure, type Outcome, success } from '../../../shared/outcome.ts';

export interface ScannedNumber {
  readonly number: number;
  /** Whether it was written as a fraction. */
  readonly isFraction: boolean;
  /** The letter that stood for the decimal point ("2u2" -> u), or ''. */
  readonly letter: string;
  /** Characters used. */
  readonly length: number;
}

/** "1 1/2", "1-1/2": a whole number and a fraction of it. No space around the hyphen: "2 - 1/2" is a difference. */
const mixed = /^(\d+)(?: |-)(\d+) ?\/ ?(\d+)(?![\d.,/])/;
const fraction = /^(\d+(?:[.,]\d+)?) ?\/ ?(\d+(?:[.,]\d+)?)(?![\d.,]| ?\/)/;
const letterPoint = /^(\d+)([pnumkKMGRrVv])(\d+)(?![\d.,])/;
const plainNumber = /^(?:\d+[\d.,]*|[.,]\d+)(?:[eE][+-]?\d+)?/;

/**
 * The number at the start of the text: decimal ("4.7", ".5", "1e-3"), decimal comma ("1,5"), fraction, mixed
 * number or a letter for the decimal point ("4k7"). A comma before three digits could be either mark and is asked back.
 */
export function scanNumber(text: string): Outcome<ScannedNumber> {
  const byMixed = mixed.exec(text);
  if (byMixed) {
    const [all, whole, top, bottom] = byMixed;
    return quotient(Number(whole), Number(top), Number(bottom), all.length);
  }
  const byFraction = fraction.exec(text);
  if (byFraction) {
    const top = readDecimal(byFraction[1]!);
    const bottom = readDecimal(byFraction[2]!);
    if (!top.ok) return top;
    if (!bottom.ok) return bottom;
    return quotient(0, top.value, bottom.value, byFraction[0].length);
  }
  const byLetter = letterPoint.exec(text);
  if (byLetter) {
    const [all, whole, letter, part] = byLetter;
    return success({
      number: Number(`${whole}.${part}`),
      isFraction: false,
      letter: letter!,
      length: all.length,
    });
  }
  const byPoint = plainNumber.exec(text);
  if (!byPoint) return failure('noNumber', 'No number found.');
  const value = readDecimal(byPoint[0]);
  if (!value.ok) return value;
  return success({
    number: value.value,
    isFraction: false,
    letter: '',
    length: byPoint[0].length,
  });
}

function quotient(whole: number, top: number, bottom: number, length: number): Outcome<ScannedNumber> {
  if (bottom === 0) return failure('divisionByZero', 'The lower part of the fraction is zero.');
  return success({
    number: whole + top / bottom,
    isFraction: true,
    letter: '',
    length,
  });
}

function readDecimal(text: string): Outcome<number> {
  const [body = '', exponent] = text.split(/[eE]/);
  const points = body.split('.').length - 1;
  const commas = body.split(',').length - 1;
  if (points + commas > 1) {
    return failure(
      'decimalMarks',
      `“${body}” has more than one decimal mark: write ${body.replace(/[.,](?=.*[.,])/g, '').replace(/[.,]$/, '')}.`,
    );
  }
  const afterComma = body.split(',')[1] ?? '';
  if (commas === 1 && afterComma.length === 3 && /^[1-9]\d{0,2},/.test(body)) {
    return failure(
      'comma',
      `“${body}” can be read two ways: write ${body.replace(',', '')} or ${body.replace(',', '.')}.`,
    );
  }
  const number = Number(body.replace(',', '.') + (exponent === undefined ? '' : `e${exponent}`));
  if (!Number.isFinite(number)) return failure('absurd', `“${text}” is beyond every scale.`);
  return success(number);
}
