import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../shared/csv.ts';
import { readCsv } from '../readCsv.ts';

describe('CSV', () => {
  // RFC 4180, section 2, rules 1 and 5 to 7, with the examples given there.
  it.each([
    ['plain cells bare, lines ended by CR LF', [['aaa', 'bbb', 'ccc']], 'aaa,bbb,ccc\r\n'],
    ['line ends and commas quoted', [['aaa', 'b\r\nbb', 'c,c']], 'aaa,"b\r\nbb","c,c"\r\n'],
    ['quotes doubled', [['aaa', 'b"bb', 'ccc']], 'aaa,"b""bb",ccc\r\n'],
    ['nothing is an empty cell', [[null, undefined, '']], ',,\r\n'],
    ['numbers with a point', [[1234567.5, -0.001, 2e-12]], '1234567.5,-0.001,2e-12\r\n'],
  ])('%s', (_, rows, text) => {
    expect(writeCsv(rows)).toBe(text);
  });

  it('any text comes back as it went', () => {
    const table = fc.array(fc.array(fc.string(), { minLength: 2, maxLength: 5 }), { minLength: 1 });
    const nasty = fc.array(
      fc.array(fc.constantFrom('"', ',', '\r\n', '\n', 'a""b', '', '";'), { minLength: 2, maxLength: 4 }),
    );
    fc.assert(
      fc.property(fc.oneof(table, nasty), (rows) => {
        expect(readCsv(writeCsv(rows))).toEqual(rows);
      }),
    );
  });
});
