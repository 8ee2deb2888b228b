/** What a reader takes along: CSV by RFC 4180 that no spreadsheet runs, and a picture that stands alone. */
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChartTable } from '../../../src/tell/charts/chart-table.js';
import { letterCharts } from '../../../src/questions/size/charts/letter-charts.js';
import { chartCsv, safeCell } from '../../../src/tell/charts/picture-files.js';
import { standaloneSvg } from '../../../src/tell/charts/standalone-svg.js';
import { formatsFor } from '../../../src/tell/format.js';
import { fixtureAnswer, fixtureContext, fixtureRisk } from '../fixture.js';

const formats = formatsFor(fixtureContext());
const oneColumn = (
  rows: readonly (string | number | null)[],
  as: ChartTable['columns'][number]['as'] = 'text',
): ChartTable => ({
  caption: 'x',
  columns: [
    { title: 'a', as },
    { title: 'b', as: 'text' },
  ],
  rows: rows.map((value) => [value, 'x']),
});

/** csv-parse reads RFC 4180; it is held against what we write. */
describe('CSV', () => {
  it('any text comes back as it was, or with an apostrophe where it would be a formula', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc
            .string({ unit: 'binary', maxLength: 30 })
            .filter(
              (text) =>
                text.trim() === text &&
                !/[\p{Cc}\p{Cs}\u200E\u200F\u061C\u2028\u2029\u202A-\u202E\u2066-\u2069\uFEFF\uFFFE\uFFFF]/u.test(
                  text,
                ),
            ),
          { minLength: 1, maxLength: 8 },
        ),
        (texts) => {
          const read = parse(chartCsv(oneColumn(texts), formats), {
            record_delimiter: '\r\n',
          }) as string[][];
          expect(
            read.slice(1).map(([text]) => text!.replace(/^'(?=[=+\-@\t\r\n＝＋－＠])/u, '')),
          ).toEqual(texts.map((text) => text.replace(/^'(?=[=+\-@\t\r\n＝＋－＠])/u, '')));
        },
      ),
      { seed: 20 },
    );
  });

  it('no control character reaches a cell, and a break becomes a space', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
        expect(safeCell(text)).not.toMatch(/\p{Cc}/u);
      }),
      { seed: 20 },
    );
    expect(safeCell('a\r\nb\u0000')).toBe('a b');
    expect(safeCell('\t=1')).toBe("'=1");
  });

  /** The signs of the OWASP advice on CSV injection. */
  it.each(['=1+1', '+cmd|calc', '-1+1', '@SUM(A1)', '-€5', '＝1'])('%j is no formula', (text) => {
    expect(
      (
        parse(chartCsv(oneColumn([text]), formats), { record_delimiter: '\r\n' }) as string[][]
      )[1]![0],
    ).toBe(`'${text}`);
  });

  it.each(['-5', '+12.5', '-1,234.5', '-3 %', '−2', '12', '-1 234,5'])(
    '%j is a plain number',
    (text) => {
      expect(safeCell(text).replaceAll('"', '')).toBe(text);
    },
  );

  it('quotes what RFC 4180 says must be, and ends lines with CR LF', () => {
    expect(safeCell('a"b')).toBe('"a""b"');
    expect(safeCell('a,b')).toBe('"a,b"');
    expect(safeCell('plain')).toBe('plain');
    expect(chartCsv(oneColumn(['y']), formats)).toBe('a,b\r\ny,x\r\n');
  });

  it('figures have a decimal point whatever the place, times are those of the clock, unknown is empty', () => {
    expect(
      chartCsv(
        oneColumn([1234.5, -0.25, 0.1 + 0.2, null], 'decimal'),
        formatsFor({ ...fixtureContext(), locale: 'de-DE' }),
      ),
    ).toBe('a,b\r\n1234.5,x\r\n-0.25,x\r\n0.3,x\r\n,x\r\n');
    expect(chartCsv(oneColumn([95], 'clock'), formats)).toBe('a,b\r\n08:35,x\r\n');
  });

  it('has the rows of every table of a letter, as many fields in each', () => {
    for (const { table } of letterCharts(fixtureAnswer(), fixtureContext(), [fixtureRisk()])) {
      const read = parse(chartCsv(table, formats)) as string[][];
      expect(read).toHaveLength(table.rows.length + 1);
      for (const row of read) expect(row).toHaveLength(table.columns.length);
    }
  });
});

it('a picture alone has a ground and an ink', () => {
  expect(standaloneSvg('<svg width="1"><g/></svg>', '#FFF', '#000')).toBe(
    '<?xml version="1.0" encoding="UTF-8"?>\n<svg color="#000" width="1"><rect width="100%" height="100%" fill="#FFF"/><g/></svg>\n',
  );
  expect(standaloneSvg('<svg width="1"><text>15&nbsp;min</text></svg>')).toContain('>15\u00A0min<');
});
