/** Reads CSV by the grammar of RFC 4180, section 2; throws where a text does not follow it. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  const cell = /("(?:[^"]|"")*"|[^",\r\n]*)(,|\r\n)/y;
  while (cell.lastIndex < text.length) {
    const from = cell.lastIndex;
    const found = cell.exec(text);
    if (!found) throw new Error(`no cell at ${from}: ${text.slice(from, from + 40)}`);
    const raw = found[1] ?? '';
    row.push(raw.startsWith('"') ? raw.slice(1, -1).replaceAll('""', '"') : raw);
    if (found[2] === ',') continue;
    rows.push(row);
    row = [];
  }
  if (row.length > 0) throw new Error('the last line has no end');
  return rows;
}
