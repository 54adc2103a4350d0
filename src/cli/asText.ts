import type { Design } from '../../shared/design/schema.ts';
import type { Solution } from '../../shared/solution.ts';

const width = 96;

function wrap(text: string, indent: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line && line.length + word.length + 1 > width - indent.length) {
      lines.push(line);
      line = word;
    } else {
      line = line ? `${line} ${word}` : word;
    }
  }
  if (line) lines.push(line);
  return lines.map((l) => indent + l).join('\n');
}

const verdictNames: Readonly<Record<string, string>> = {
  ssb: 'SSB',
  cw: 'CW',
  keyDown: 'Key-down',
  supply: '12 V input',
  people: 'People',
};

/** The verdicts, what could not be computed, and the cautions, as plain text for a terminal. */
export function asText(design: Design, solution: Solution): string {
  const parts = [design.name, ''];
  for (const verdict of solution.verdicts) {
    parts.push(`${verdictNames[verdict.key]} [${verdict.state}]: ${verdict.headline}`);
    parts.push(wrap(verdict.sentence, '    '));
  }
  if (solution.reasons.length > 0) {
    parts.push('', 'Not computed');
    for (const reason of solution.reasons) parts.push(wrap(reason.sentence, '    '));
  }
  parts.push('', 'Cautions');
  for (const caution of solution.cautions) {
    parts.push(`  [${caution.severity}] ${caution.title}`);
    parts.push(wrap(caution.sentence, '    '));
    parts.push(wrap(caution.action, '    '));
  }
  if (solution.notes.length > 0) {
    parts.push('', 'Notes');
    for (const item of solution.notes) parts.push(wrap(`(${item.kind}) ${item.sentence}`, '    '));
  }
  return `${parts.join('\n')}\n`;
}
