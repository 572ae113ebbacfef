import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText, readCsvText } from '../../src/report/csv-text.ts';

/** Cells with everything that breaks careless writers. */
const cell = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc.string({ unit: 'grapheme', maxLength: 8 }),
  fc.stringMatching(/^[=+\-@'",;\r\n\t a1]{0,8}$/),
);
const table = fc
  .integer({ min: 2, max: 5 })
  .chain((width) =>
    fc.array(fc.array(cell, { minLength: width, maxLength: width }), {
      minLength: 1,
      maxLength: 6,
    }),
  )
  .filter((rows) => rows.every((row) => row.some((text) => text !== '')));

describe('comma-separated values', () => {
  it('writes RFC 4180: CRLF after every row, quotes doubled inside quotes', () => {
    // RFC 4180, section 2, rules 1, 6 and 7.
    expect(
      csvText([
        ['aaa', 'b,bb', 'c"cc'],
        ['zzz', 'y\r\nyy', null],
      ]),
    ).toBe('aaa,"b,bb","c""cc"\r\nzzz,"y\r\nyy",\r\n');
  });

  it('gives a reference parser back what was written, formulas guarded', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const read = parse(csvText(rows), { record_delimiter: '\r\n', relax_column_count: true });
        const guarded = rows.map((row) =>
          row.map((text) => (/^'*[=+\-@\t\r]/.test(text) ? `'${text}` : text)),
        );
        expect(read).toEqual(guarded);
      }),
      { numRuns: 300 },
    );
  });

  it('reads back exactly what it wrote', () => {
    fc.assert(
      fc.property(table, (rows) => {
        expect(readCsvText(csvText(rows))).toEqual(rows);
      }),
      { numRuns: 300 },
    );
  });

  it('reads what the reference parser reads, with bare line feeds and a byte order mark too', () => {
    const text = '\ufeffa,b\n1,"x\ny"\r\n\n2,"say ""hi"""\n3,';
    expect(readCsvText(text)).toEqual(
      parse(text, {
        bom: true,
        skip_empty_lines: true,
        record_delimiter: ['\r\n', '\n'],
      }),
    );
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', "'=1"])(
    'keeps a spreadsheet from running %j',
    (text) => {
      // OWASP, "CSV Injection": cells that begin with = + - @, tab or carriage return.
      expect(parse(csvText([[text, 'x']]))[0]?.[0]).toMatch(/^'/);
    },
  );

  it('leaves numbers alone, negative ones too', () => {
    expect(csvText([[-20, 0.1]])).toBe('-20,0.1\r\n');
  });

  it('says where a quoted field never ends', () => {
    expect(() => readCsvText('a,b\r\n1,"x\r\n')).toThrow(
      'Line 3 has a quoted field that does not end where it should.',
    );
  });
});
