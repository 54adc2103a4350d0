import type { Dimension } from '../../../shared/design/fields.ts';
import { type Failure, failure, type Outcome, success } from '../../../shared/outcome.ts';
import { longestText, normalise } from './normalise.ts';
import { scanNumber } from './scanNumber.ts';
import { dimensionWords, findUnit, offeredUnits, prefixFactor, toSI, type Unit, units } from './units.ts';
import { writeEcho } from './write.ts';

export interface Reading {
  /** SI value. */
  readonly value: number;
  /** What was understood, in the field's unit: "9.525 mm". */
  readonly echo: string;
}

/** The key of the failure that says: only the expression reader can tell. */
export const needsExpression = 'needsExpression';

/** Beyond these no field of the sheet has a meaning; a slip of the keyboard does not become a design. */
const largest = 1e15;
const smallest = 1e-18;

interface Spelling {
  readonly text: string;
  readonly unit: Unit;
  readonly dimension: Dimension;
}

/** All spellings, longest first, so that "mm" is never read as "m" and a rest. */
const spellings: readonly Spelling[] = (Object.keys(units) as Dimension[])
  .flatMap((dimension) =>
    units[dimension].flatMap((unit) => unit.spellings.map((text) => ({ text, unit, dimension }))),
  )
  .sort((a, b) => b.text.length - a.text.length);

interface Term {
  readonly number: number;
  readonly isFraction: boolean;
  /** undefined: none was written. */
  readonly unit: Unit | undefined;
  readonly sign: 1 | -1;
  /** Written after a plus or minus, not merely beside the one before ("4 min 10 s"). */
  readonly joinedBySign: boolean;
}

/**
 * Reads what a builder types into a field: "3/8 in", "1-1/2 in", "22 mOhm", "2u2", "1,5 mm", "100 mm + 1/4 in",
 * "4 min 10 s". A bare number is in the field's unit. Products and brackets are answered with the failure
 * `needsExpression`; every other failure says what is wrong and what would be right.
 */
export function readQuantity(text: string, dimension: Dimension, defaultUnit: string): Outcome<Reading> {
  const typed = normalise(text);
  // A standing-wave ratio is usually written "1.5:1".
  const plain = dimension === 'number' ? typed.replace(/ ?: ?1$/, '') : typed;
  if (plain === '') return failure('empty', `Type ${expectation(dimension, defaultUnit)}.`);
  if (plain.length > longestText) {
    return failure('tooLong', `More than ${longestText} characters: type the figure alone.`);
  }
  if (/±|\+\/-/.test(plain)) {
    return failure(
      'tolerance',
      'The value alone is expected; how sure it is stands under “How the entries were measured”.',
    );
  }
  const terms = scanTerms(plain, dimension);
  if (!terms.ok) return terms;
  const value = addTerms(terms.value, dimension, findUnit(dimension, defaultUnit));
  return value.ok ? asReading(value.value, dimension, defaultUnit) : value;
}

/** The last gate: only finite values of a thinkable size pass. Shared with the expression reader. */
export function asReading(value: number, dimension: Dimension, defaultUnit: string): Outcome<Reading> {
  const size = Math.abs(value);
  if (!Number.isFinite(value) || size > largest || (size !== 0 && size < smallest)) {
    return failure('absurd', `That is no usable size for ${dimensionWords[dimension]}.`);
  }
  return success({ value, echo: writeEcho(value, dimension, defaultUnit) });
}

function scanTerms(plain: string, dimension: Dimension): Outcome<readonly Term[]> {
  const terms: Term[] = [];
  let at = 0;
  while (at < plain.length) {
    const lead = /^ ?([+-]?) ?/.exec(plain.slice(at))!;
    at += lead[0].length;
    const term = scanTerm(plain, at, dimension);
    if (!term.ok) return term;
    const { number, isFraction, unit, end } = term.value;
    const sign = lead[1] === '-' ? -1 : 1;
    terms.push({
      number,
      isFraction,
      unit,
      sign,
      joinedBySign: lead[1] !== '',
    });
    at = end;
  }
  return success(terms);
}

type ScannedTerm = Pick<Term, 'number' | 'isFraction' | 'unit'> & { readonly end: number };

/** A unit found after a number: the bare prefix already multiplied out, and the characters used. */
interface Tail {
  readonly multiplier: number;
  readonly unit: Unit | undefined;
  readonly length: number;
}

function scanTerm(plain: string, at: number, dimension: Dimension): Outcome<ScannedTerm> {
  const rest = plain.slice(at);
  const scanned = scanNumber(rest);
  if (!scanned.ok) {
    if (scanned.reason.key !== 'noNumber') return scanned;
    return isExpression(rest) ? expressionNeeded() : noNumber(plain, at, dimension);
  }
  const { number, letter, isFraction, length } = scanned.value;
  const tail = plain.slice(at + length);
  const read =
    letter === ''
      ? readTail(tail, dimension)
      : readLetterTail(rest.slice(0, length), letter, tail, dimension);
  if (!read.ok) return read;
  const { multiplier, unit, length: used } = read.value;
  const end = skipSpace(plain, at + length + used);
  return success({ number: number * multiplier, isFraction, unit, end });
}

/** After "4k7": the letter is the prefix; the base unit may follow. */
function readLetterTail(typed: string, letter: string, tail: string, dimension: Dimension): Outcome<Tail> {
  const multiplier = prefixFactor(letter, dimension);
  if (multiplier === undefined) return noPrefix(typed, letter, dimension);
  const named = matchUnit(tail, dimension);
  const length = named?.unit.factor === 1 ? named.length : 0;
  return success({ multiplier, unit: baseUnit(dimension), length });
}

/** After a plain number: a unit, a bare prefix, or nothing. */
function readTail(tail: string, dimension: Dimension): Outcome<Tail> {
  const named = matchUnit(tail, dimension);
  if (named) {
    const wrong = checkEnd(tail.slice(named.length));
    return wrong ?? success({ multiplier: 1, unit: named.unit, length: named.length });
  }
  const bare = /^ ?([pnumkKMGRrVv])(?![A-Za-z0-9])/.exec(tail);
  const multiplier = bare ? prefixFactor(bare[1]!, dimension) : undefined;
  if (bare && multiplier !== undefined) {
    return success({ multiplier, unit: baseUnit(dimension), length: bare[0].length });
  }
  if (/^ ?($|[+-])/.test(tail)) return success({ multiplier: 1, unit: undefined, length: 0 });
  return explainTail(tail, dimension);
}

function skipSpace(plain: string, at: number): number {
  return plain[at] === ' ' ? at + 1 : at;
}

/** The unit with factor one and no offset: what a bare prefix multiplies. */
function baseUnit(dimension: Dimension): Unit {
  return (
    units[dimension].find((each) => each.factor === 1 && each.offset === undefined) ?? units[dimension][0]!
  );
}

/** The unit at the start of the text, spaces inside it overlooked ("k ohm", "W / (m K)"). */
function matchUnit(text: string, dimension: Dimension): { unit: Unit; length: number } | undefined {
  for (const spelling of spellings) {
    if (spelling.dimension !== dimension) continue;
    const length = lengthOf(text, spelling.text);
    if (length > 0 && endsWord(text, length, spelling.text)) return { unit: spelling.unit, length };
  }
  return undefined;
}

/** How many characters of the text spell this unit; 0 when it is another. */
function lengthOf(text: string, spelling: string): number {
  let at = 0;
  for (const character of spelling) {
    while (text[at] === ' ') at++;
    if (text[at] !== character) return 0;
    at++;
  }
  return at;
}

/** A unit ends where its letters end: "mm" in "mmm" is none; "mm2" is not "mm". */
function endsWord(text: string, length: number, spelling: string): boolean {
  const next = text[length] ?? '';
  if (/[A-Za-z°%]/.test(next)) return false;
  if (/["'°%]$/.test(spelling)) return true;
  return !/[0-9^/]/.test(next) && !/^ ?\^/.test(text.slice(length));
}

function checkEnd(tail: string): Failure | undefined {
  if (tail === '' || /^ ?[+\-0-9.]/.test(tail)) return undefined;
  if (isExpression(tail)) return expressionNeeded();
  return failure('afterUnit', `“${tail.trim()}” after the unit is not understood.`);
}

function addTerms(terms: readonly Term[], dimension: Dimension, field: Unit): Outcome<number> {
  if (terms.length === 0) return failure('noNumber', 'No number found.');
  const first = terms[0]!;
  if (terms.length === 1) {
    return success(single({ ...first, number: first.sign * first.number }, dimension, field));
  }
  if (terms.some((term) => term.unit === undefined) && terms.some((term) => term.unit !== undefined)) {
    return failure('unitOnEach', 'Give each part its unit, as in 100 mm + 1/4 in.');
  }
  const loose = terms.slice(1).filter((term) => !term.joinedBySign);
  if (loose.length > 0 && !isCompound(terms, dimension)) {
    return failure(
      'twoNumbers',
      'Two numbers side by side: write one, without spaces inside, or put + or − between them.',
    );
  }
  return dimension === 'temperature'
    ? addTemperatures(terms, field)
    : success(addPlain(terms, dimension, field));
}

function single(term: Term, dimension: Dimension, field: Unit): number {
  // 1/3 in a field of per cent means a third of the whole, not a third of one per cent.
  if (term.unit === undefined && term.isFraction && dimension === 'share') return term.number;
  return toSI(term.number, term.unit ?? field);
}

/** "4 min 10 s", "5 ft 3 in": each part with its unit, units falling, no signs between. */
function isCompound(terms: readonly Term[], dimension: Dimension): boolean {
  if (dimension === 'temperature') return false;
  return terms.every((term, index) => {
    if (term.unit === undefined) return false;
    const before = terms[index - 1];
    return before === undefined || (!term.joinedBySign && before.unit!.factor > term.unit.factor);
  });
}

function addPlain(terms: readonly Term[], dimension: Dimension, field: Unit): number {
  const compound = isCompound(terms, dimension);
  const sign = compound ? terms[0]!.sign : 1;
  return terms.reduce((sum, term) => {
    const own = compound ? sign : term.sign;
    return sum + own * single(term, dimension, field);
  }, 0);
}

/** The first part is a point on the scale, the others are steps: they must be written in K (or have no unit at all). */
function addTemperatures(terms: readonly Term[], field: Unit): Outcome<number> {
  const [first, ...steps] = terms;
  const unit = first!.unit ?? field;
  if (steps.some((step) => step.unit?.offset !== undefined && step.unit.offset !== 0)) {
    return failure('temperatureStep', 'A step of temperature is written in K, as in 25 °C + 10 K.');
  }
  const start = toSI(first!.sign * first!.number, unit);
  return success(
    steps.reduce((sum, step) => sum + step.sign * step.number * (step.unit ?? field).factor, start),
  );
}

// ---- what is said when it cannot be read ----

function isExpression(text: string): boolean {
  return /[*^()]|\/|sqrt|\bpi\b/.test(text);
}

function expressionNeeded() {
  return failure(needsExpression, 'Working this out.');
}

/** "mm, cm or in expected". */
function unitList(dimension: Dimension): string {
  const names = offeredUnits(dimension)
    .map((each) => each.symbol)
    .filter(Boolean);
  if (names.length < 2) return names[0] ?? 'a number without unit';
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}

function expectation(dimension: Dimension, unit: string): string {
  const bare = dimension === 'count' || dimension === 'number';
  if (bare) return 'a number';
  return `${dimensionWords[dimension]}, for example ${dimension === 'temperature' ? '25' : '12'} ${findUnit(dimension, unit).symbol}`;
}

function noNumber(plain: string, at: number, dimension: Dimension) {
  const word = plain.slice(at);
  if (word === '') return failure('noNumber', `A number is missing after “${plain}”.`);
  if (units[dimension].every(({ symbol }) => symbol === '')) {
    return failure('noNumber', `“${word}” is no number.`);
  }
  return failure('noNumber', `“${word}” is no number; ${unitList(dimension)} expected after one.`);
}

function noPrefix(typed: string, letter: string, dimension: Dimension) {
  return failure(
    'noPrefix',
    `“${typed}”: the letter ${letter} inside a number has no meaning for ${dimensionWords[dimension]}; ${unitList(dimension)} expected.`,
  );
}

function explainTail(tail: string, dimension: Dimension) {
  const word = /^ ?[^\s+\-0-9*()]*/.exec(tail)![0].trim();
  if (/^ ?[0-9.]/.test(tail)) {
    return failure(
      'twoNumbers',
      'Two numbers side by side: write one, without spaces inside, or put + or − between them.',
    );
  }
  if (/^awg$/i.test(word)) return failure('wireSize', 'AWG is a wire size, chosen under “Wire size”.');
  if (dimension === 'decibel' && /^dBd$/i.test(word)) {
    return failure('dBd', 'Add 2.15 dB to a gain in dBd and give it in dBi.');
  }
  const other = matchOther(tail);
  if (other && other.dimension !== dimension) {
    if (isExpression(tail)) return expressionNeeded();
    const shown = other.text.replace('ohm', 'Ω');
    return failure(
      'otherDimension',
      `${unitList(dimension)} expected; ${shown} is ${dimensionWords[other.dimension]}.`,
    );
  }
  if (isExpression(tail)) return expressionNeeded();
  return failure(
    'unknownUnit',
    `“${word === '' ? tail.trim() : word}” is not a unit known here; ${unitList(dimension)} expected.`,
  );
}

function matchOther(tail: string): Spelling | undefined {
  return spellings.find((spelling) => {
    const length = lengthOf(tail, spelling.text);
    return length > 0 && endsWord(tail, length, spelling.text);
  });
}
