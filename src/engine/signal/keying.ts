import morse from '../../../reference-data/morse.json' with { type: 'json' };
import { failure, type Outcome, success } from '../../../shared/outcome.ts';

/** A stretch of time with the key down (on) or up. */
export interface Segment {
  readonly on: boolean;
  /** Seconds. */
  readonly duration: number;
}

export interface KeyingPattern {
  /** Marks and spaces in turn, beginning with a mark and ending with the word space, to be repeated. */
  readonly segments: readonly Segment[];
  /** Length of a dot with normal weight, seconds. */
  readonly dotTime: number;
  /** Length of the whole pattern, seconds. */
  readonly period: number;
  /** Share of the pattern with the key down. */
  readonly keyedShare: number;
}

export interface KeyingOptions {
  /** Text sent over and over, the word space of seven units after it included. PARIS is the standard word. */
  readonly text?: string;
  /** Length of a mark plus space of a dot taken by the mark, 0.5 is normal; each mark grows at the cost of the space after it. */
  readonly weight?: number;
}

const characters: Readonly<Record<string, string>> = morse.characters;
const { dash, elementGap, characterGap, wordGap } = morse.units;
/** Units of the standard word PARIS with the word space after it: dot time = 60 s/(50 WPM). */
const unitsPerWord = 50;
const weightRange = [0.3, 0.7] as const;

/**
 * Length of a dot: 1.2 s over the speed in words per minute.
 *
 * @param keyingSpeed PARIS words per minute, above 0
 */
export function dotTime(keyingSpeed: number): number {
  return 60 / unitsPerWord / keyingSpeed;
}

/**
 * Key-down and key-up times of a text in Morse code, repeated without end.
 *
 * @param keyingSpeed words per minute by the standard word PARIS, above 0
 * @returns a reason if a character has no Morse code, the text is empty, or weight or speed make no sense
 * @see Recommendation ITU-R M.1677-1 (2009), lengths and spacing (from memory)
 */
export function keyingPattern(keyingSpeed: number, options: KeyingOptions = {}): Outcome<KeyingPattern> {
  const { text = 'PARIS', weight = 0.5 } = options;
  if (last?.keyingSpeed === keyingSpeed && last.text === text && last.weight === weight) return last.pattern;
  const pattern = findPattern(keyingSpeed, text, weight);
  last = { keyingSpeed, text, weight, pattern };
  return pattern;
}

/** The last pattern asked for: every part of a design that is keyed asks for the same one. */
let last: (Required<KeyingOptions> & { keyingSpeed: number; pattern: Outcome<KeyingPattern> }) | null = null;

function findPattern(keyingSpeed: number, text: string, weight: number): Outcome<KeyingPattern> {
  if (!(keyingSpeed > 0 && keyingSpeed < 1e4)) {
    return failure('keying speed out of range', 'The keying speed must be above 0 words per minute.', {
      keyingSpeed,
    });
  }
  if (!(weight >= weightRange[0] && weight <= weightRange[1])) {
    return failure('keying weight out of range', 'The keying weight must lie between 30 % and 70 %.', {
      weight,
    });
  }
  const units = morseUnits(text);
  if (!units.ok) return units;
  const unit = dotTime(keyingSpeed);
  const lengthening = 2 * weight - 1;
  let down = 0;
  let period = 0;
  const segments = units.value.map((length, i) => {
    const on = i % 2 === 0;
    const duration = (length + (on ? lengthening : -lengthening)) * unit;
    period += duration;
    if (on) down += duration;
    return { on, duration };
  });
  return success({ segments, dotTime: unit, period, keyedShare: down / period });
}

/** Lengths, in units, of mark, space, mark, space... of a text, ending with the word space. */
function morseUnits(text: string): Outcome<number[]> {
  const words = text.toUpperCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return failure('no text to key', 'There is no text to send.');
  const units: number[] = [];
  for (const word of words) {
    for (const character of word) {
      const code = Object.hasOwn(characters, character) ? characters[character]! : '';
      if (code === '') return failure('no morse code', `There is no Morse code for “${character}”.`);
      for (const element of code) units.push(element === '-' ? dash : 1, elementGap);
      units[units.length - 1] = characterGap;
    }
    units[units.length - 1] = wordGap;
  }
  return success(units);
}
