import type { Edge, Target, VerdictKey } from '../../shared/answers.ts';
import type { Design } from '../../shared/design/schema.ts';
import { remedies, solveFor } from '../engine/answers.ts';
import { entryFor } from '../engine/catalogue/index.ts';
import { readQuantity } from '../engine/quantity/read.ts';
import { metricUnits } from '../engine/quantity/units.ts';
import { remediesText, unknownText } from './answersText.ts';

/** What the command line asks beside the verdicts. */
export interface AnswerOptions {
  readonly remedies: boolean;
  readonly for: string | undefined;
  readonly unknown: string | undefined;
  readonly target: readonly string[];
  readonly edge: string;
  readonly json: boolean;
}

/** What to print, and whether there is an answer to the question; or what was wrong with it. */
export type Printed =
  | { readonly ok: true; readonly answered: boolean; readonly text: string }
  | { readonly ok: false; readonly message: string };

const verdictNames: Readonly<Record<string, VerdictKey>> = {
  ssb: 'ssb',
  cw: 'cw',
  keyDown: 'keyDown',
  'key-down': 'keyDown',
  supply: 'supply',
  people: 'people',
};

/** Failures that lie in the question, not in the design. */
const wrongQuestions = new Set([
  'noSuchField',
  'noSuchQuantity',
  'notAnUnknown',
  'quantityIsGiven',
  'noTarget',
]);

function wrong(message: string): Printed {
  return { ok: false, message };
}

const asJson = (value: unknown) => `${JSON.stringify(value, null, 2)}\n`;

/** "keyDown.safeDuty=50 %": the value as the page reads it, in the usual unit of the quantity if it has none. */
export function readTarget(
  text: string,
): { readonly ok: true; readonly target: Target } | { readonly ok: false; readonly message: string } {
  const at = text.indexOf('=');
  if (at < 1)
    return {
      ok: false,
      message: `“${text}” is no target; write QUANTITY=VALUE, as in keyDown.safeDuty=50 %`,
    };
  const quantity = text.slice(0, at).trim();
  const entry = entryFor(quantity);
  if (!entry) return { ok: false, message: `there is no quantity “${quantity}”; --json lists them all` };
  const read = readQuantity(text.slice(at + 1), entry.dimension, metricUnits[entry.dimension]);
  if (!read.ok) return { ok: false, message: `${quantity}: ${read.reason.sentence}` };
  return { ok: true, target: { quantity, value: read.value.value } };
}

function remediesOf(design: Design, options: AnswerOptions, edge: Edge): Printed {
  const verdict = options.for === undefined ? undefined : verdictNames[options.for];
  if (options.for !== undefined && verdict === undefined) {
    return wrong(`--for takes one of ${Object.keys(verdictNames).join(', ')}`);
  }
  const list = remedies(design, { verdict, edge });
  return { ok: true, answered: true, text: options.json ? asJson(list) : remediesText(design.name, list) };
}

function unknownOf(design: Design, options: AnswerOptions, edge: Edge): Printed {
  const targets: Target[] = [];
  for (const text of options.target) {
    const read = readTarget(text);
    if (!read.ok) return wrong(read.message);
    targets.push(read.target);
  }
  const answer = solveFor(design, { path: options.unknown ?? '', targets }, edge);
  if (!answer.ok && wrongQuestions.has(answer.reason.key)) return wrong(answer.reason.sentence);
  if (options.json) {
    const found = answer.ok ? answer.value : { reason: answer.reason };
    return { ok: true, answered: answer.ok, text: asJson(found) };
  }
  return {
    ok: true,
    answered: answer.ok,
    text: answer.ok ? unknownText(design.name, answer.value) : `${answer.reason.sentence}\n`,
  };
}

/** Answers `--remedies` and `--unknown`; null when neither was asked. */
export function answer(design: Design, options: AnswerOptions): Printed | null {
  if (options.edge !== 'nominal' && options.edge !== 'pessimistic') {
    return wrong('--edge takes nominal or pessimistic');
  }
  if (options.remedies) return remediesOf(design, options, options.edge);
  if (options.unknown !== undefined) return unknownOf(design, options, options.edge);
  return null;
}

/** What cannot be asked together; null when all is well. */
export function contradiction(options: AnswerOptions): string | null {
  if (options.remedies && options.unknown !== undefined) return '--remedies and --unknown exclude each other';
  if (options.unknown !== undefined && options.target.length === 0)
    return '--unknown needs --target QUANTITY=VALUE';
  if (options.unknown === undefined && options.target.length > 0) return '--target needs --unknown PATH';
  if (!options.remedies && options.for !== undefined) return '--for needs --remedies';
  return null;
}
