/** A cell: text, a number (written with a decimal point, whatever the machine's language) or nothing. */
export type CsvCell = string | number | null | undefined;

const needsQuotes = /[",\r\n]/;

function writeCell(cell: CsvCell): string {
  if (cell === null || cell === undefined) return '';
  const text = String(cell);
  return needsQuotes.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Rows as CSV: commas, lines ended by CR LF, quotes only where needed. Source: RFC 4180 (2005), section 2. */
export function writeCsv(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(writeCell).join(',')}\r\n`).join('');
}
