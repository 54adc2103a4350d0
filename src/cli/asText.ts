import type { Design } from '../../shared/design/schema.ts';
import type { Caution, ExposureRow, Solution } from '../../shared/solution.ts';
import { disclaimer, standingLines } from '../../shared/standing.ts';
import { sources } from '../engine/catalogue/sources.ts';

const width = 96;

/** Lines of at most the width of the terminal text, each indented. */
export function wrap(text: string, indent: string): string {
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

function cautionLines({ severity, title, figure, sentence, action, source }: Caution): string[] {
  const from = sources[source];
  return [
    `  [${severity}] ${title} (${figure})`,
    wrap(sentence, '    '),
    wrap(action, '    '),
    ...(from ? [wrap(`Source: ${[from.title, from.part].filter(Boolean).join(', ')}`, '    ')] : []),
  ];
}

function exposureLines(design: Design, rows: readonly ExposureRow[]): string[] {
  const american = design.antenna.limitSet === 'fcc';
  const head = ['band', 'E V/m', 'H A/m', 'average W', 'at least m', ...(american ? ['US rule'] : [])];
  const table = rows.map((row) => [
    `${row.chosen ? '* ' : '  '}${row.band}`,
    row.electric.toPrecision(3),
    row.magnetic.toPrecision(3),
    row.averagePower.toPrecision(3),
    row.distance === null ? 'no number' : String(row.distance),
    ...(american ? [exemptionCell(row)] : []),
  ]);
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, column) => (column < 5 ? cell.padEnd(11) : cell))
      .join('')
      .trimEnd();
  return ['Distance from the antenna by band (estimates, rounded up)', line(head), ...table.map(line)];
}

function exemptionCell({ exemption, judgedAt }: ExposureRow): string {
  return exemption === null ? 'say how near people come' : `${exemption} (${judgedAt} m)`;
}

/** The verdicts, what could not be computed, and the cautions, as plain text for a terminal. */
export function asText(design: Design, solution: Solution): string {
  const parts = [design.name, ''];
  for (const verdict of solution.verdicts) {
    parts.push(`${verdict.name} [${verdict.state}]: ${verdict.headline}`);
    parts.push(wrap(verdict.sentence, '    '));
  }
  parts.push('', 'Services', wrap(solution.dutyWords, '    '));
  for (const { name, definition } of Object.values(solution.words)) {
    parts.push(wrap(`${name}: ${definition}.`, '    '));
  }
  if (solution.reasons.length > 0) {
    parts.push('', 'Not computed');
    for (const reason of solution.reasons) parts.push(wrap(reason.sentence, '    '));
  }
  parts.push('', 'Cautions');
  for (const caution of solution.cautions) parts.push(...cautionLines(caution));
  if (solution.exposure.length > 0) parts.push('', ...exposureLines(design, solution.exposure));
  if (solution.notes.length > 0) {
    parts.push('', 'Notes');
    for (const item of solution.notes) parts.push(wrap(`(${item.kind}) ${item.sentence}`, '    '));
  }
  parts.push('', ...standingLines.map((line) => wrap(line, '')), '', wrap(disclaimer, ''));
  return `${parts.join('\n')}\n`;
}
