import {
  effortWords,
  type Remedy,
  type RemedyList,
  type UnknownAnswer,
  type VerdictEffect,
} from '../../shared/answers.ts';
import { wrap } from './asText.ts';

function effectText({ name, before, after, gain }: VerdictEffect): string {
  const states = before === after ? after : `${before} -> ${after}`;
  return gain === '' ? `${name} ${states}` : `${name} ${states}, ${gain}`;
}

function remedyLines(remedy: Remedy, place: number): readonly string[] {
  const mark = remedy.enough ? 'enough' : 'not enough';
  const effects = remedy.effects.filter((effect) => effect.change !== 'same').map(effectText);
  return [
    wrap(`${place}. ${remedy.title} [${mark}; ${effortWords[remedy.effort]}]`, '  '),
    ...(effects.length > 0 ? [wrap(`${effects.join('; ')}.`, '     ')] : []),
    ...remedy.sideEffects.map((sentence) => wrap(sentence, '     ')),
    ...remedy.newCautions.map((caution) =>
      wrap(`New caution: ${caution.title} (${caution.figure}).`, '     '),
    ),
    `     Edit: ${remedy.edits.map(({ path, value }) => `${path} = ${JSON.stringify(value)}`).join(', ')}`,
  ];
}

/** What is enough stands first: pairs come before the changes that are not enough alone. */
function inOrder(
  { reach }: RemedyList,
  alone: readonly string[],
  together: readonly string[],
): readonly string[] {
  if (together.length === 0) return alone;
  return reach === 'pair'
    ? ['Two together', ...together, '', 'One alone, not enough', ...alone]
    : [...alone, '', 'Two together', ...together];
}

/** The ranked list of remedies as plain text. */
export function remediesText(name: string, list: RemedyList): string {
  const missing = list.missing === '' ? [] : [wrap(`Missing: ${list.missing}.`, '    ')];
  const alone = list.remedies.flatMap((one, i) => remedyLines(one, i + 1));
  const together = list.pairs.flatMap((one, i) => remedyLines(one, i + 1));
  return `${[
    name,
    '',
    `${list.name} [${list.state}]`,
    ...missing,
    wrap(list.sentence, '    '),
    '',
    ...inOrder(list, alone, together),
    '',
    wrap(list.figures, ''),
  ].join('\n')}\n`;
}

/** The answer to an unknown as plain text. */
export function unknownText(name: string, answer: UnknownAnswer): string {
  const found = answer.found.flatMap((one) => [
    `  ${one.words}: ${[one.reachedWords, ...one.others.map(({ words }) => words)].join(', ')}   (${one.edit.path} = ${JSON.stringify(one.value)})`,
    ...one.verdicts.map((verdict) => `      ${verdict.name} [${verdict.state}]: ${verdict.headline}`),
  ]);
  return `${[name, '', wrap(answer.sentence, ''), '', ...found, '', wrap(answer.figures.join(' '), '')].join('\n')}\n`;
}
