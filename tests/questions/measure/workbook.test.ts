/** The sheet as a workbook says what the CSV says, typed either way; pictures of laws show what was measured. */
import { parse } from 'csv-parse/sync';
import { readFileSync } from 'node:fs';
import write from 'write-excel-file/universal';
import { describe, expect, it } from 'vitest';
import { fitLaw, lawCdf } from '../../../src/measuring/fit-law.js';
import { sharesCharts } from '../../../src/questions/measure/charts/counted-shares.js';
import { measuredInputs } from '../../../src/questions/measure/inputs.js';
import { lawCharts } from '../../../src/questions/measure/charts/fitted-laws.js';
import { sheetFacts } from '../../../src/questions/measure/facts.js';
import { sheetsOf } from '../../../src/questions/measure/given-sheets.js';
import { asCsv, linesXlsx, sheetXlsx } from '../../../src/questions/measure/workbook.js';
import { sheetCsv, sheetLines } from '../../../src/questions/measure/template.js';
import { dirtyAt, dirtyNotes } from '../../../src/questions/measure/dirty.js';
import { compile } from '../../../src/scenario/compile.js';
import { PARTS } from '../../../src/measuring/sheet.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { renderSvg } from '../../../src/tell/render-svg.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { morningOf } from '../../measuring/morning.js';
import { fixtureContext } from '../../tell/fixture.js';

const read = readScenario(readFileSync('scenarios/1-commuter-bar.yaml', 'utf8'), 'demo', {
  piecesPerRack: piecesPerRackOf,
});
if (!read.ok) throw new Error('the demo cannot be read');
const { scenario, inputs } = read;
const facts = sheetFacts(scenario, contextOf(scenario, inputs, '0', piecesPerRackOf), PARTS);
const named = (name: string, bytes: Uint8Array) => ({ name, bytes });
const textOf = async (bytes: Uint8Array): Promise<string> => {
  const read = await asCsv(named('sheet.xlsx', bytes));
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return new TextDecoder().decode(read.value[0]!.bytes);
};

describe('the sheet as a workbook', () => {
  it('has the cells of the CSV, empty', async () => {
    const lines = (text: string) => text.split(/\r?\n/).map((line) => line.replace(/,+$/, ''));
    expect(lines(await textOf(await sheetXlsx(facts)))).toEqual(lines(sheetCsv(facts)));
    expect(sheetLines(facts).length).toBeGreaterThan(40);
  });

  it('filled in, is read as the CSV is', async () => {
    const { csv } = morningOf(scenario, 'workbook', 0);
    const cells = parse(csv, { relax_column_count: true, skip_empty_lines: false }) as string[][];
    const filled = await asCsv(named('sheet.xlsx', await linesXlsx(cells)));
    if (!filled.ok) throw new Error(filled.problems[0]!.message);
    const today = '2026-01-16';
    const [one, other] = [filled.value[0]!, named('sheet.csv', new TextEncoder().encode(csv))].map(
      (file) => sheetsOf(file, facts, today),
    );
    expect(other!.ok).toBe(true);
    expect(one).toEqual(other);
  });

  it('takes times that a spreadsheet keeps as parts of a day, and days as dates', async () => {
    const blob = await write([
      {
        sheet: 'Morning',
        data: [
          [
            { value: 'date' },
            { value: new Date(Date.UTC(2026, 0, 15)), type: Date, format: 'yyyy-mm-dd' },
          ],
          [{ value: (8 * 60 + 5) / 1440 }, { value: 3 }, { value: 0.5 }],
        ],
      },
    ] as never).toBlob();
    expect(await textOf(new Uint8Array(await blob.arrayBuffer()))).toBe(
      'date,2026-01-15,\n08:05,3,12:00\n',
    );
  });

  it('that is none is refused with a remedy', async () => {
    const broken = new Uint8Array([0x50, 0x4b, 3, 4, 1, 2, 3]);
    const read = await asCsv(named('sheet.xlsx', broken));
    expect(read).toMatchObject({ ok: false, problems: [{ file: 'sheet.xlsx' }] });
  });
});

describe('the picture of a law', () => {
  it('has a step at each measured time, the curves of all three laws, and says how well it fits', async () => {
    const times = [9, 11, 14, 16, 18, 22, 25, 31, 38, 52];
    const fit = fitLaw(times, '1');
    const [drawn] = lawCharts(
      [
        {
          path: 'guests.dwell',
          at: ['guests', 'dwell'],
          value: '',
          range: null,
          source: '',
          n: times.length,
          mean: 23.6,
          low: null,
          high: null,
          sd: 13,
          unit: 'min',
          law: { fit, times },
        },
      ],
      fixtureContext(),
    );
    expect(drawn!.table.rows.map(([time]) => time)).toEqual(times);
    expect(drawn!.table.rows.at(-1)!.slice(1)).toEqual([
      1,
      ...fit.tried.map((law) => lawCdf(law, 52)),
    ]);
    expect(drawn!.words).toContain(fit.fit!.p >= 0.1 ? 'It fits: ' : 'It fits ');
    // Stays are fitted as multiples of their party size's mean, and the axis says so.
    expect(drawn!.table.columns[0]!.title).toBe('multiple of the mean of its party size');
    const svg = await renderSvg(drawn!.spec);
    for (const { law } of fit.tried) expect(svg).toContain(law);
  });
});

describe('the picture of shares', () => {
  it('has each party size and share as counted, its interval, and what the scenario had', async () => {
    const { csv } = morningOf(scenario, 'shares', 0);
    const sheet = sheetsOf(named('sheet.csv', new TextEncoder().encode(csv)), facts, '2026-01-16');
    if (!sheet.ok) throw new Error(sheet.problems[0]!.message);
    const unmeasured = inputs.map((one) => ({ ...one, basis: 'assumed' as const }));
    const { measured } = measuredInputs(sheet.value, scenario, unmeasured, null, () => ({
      read: () => null,
      now: null,
    }));
    const [drawn, ...more] = sharesCharts(measured, fixtureContext());
    expect(more).toEqual([]);
    const rows = drawn!.table.rows as [string, number, number, number, number][];
    expect(rows.map(([name]) => name).slice(0, 4)).toEqual([
      'Guests on their own',
      'Parties of 2',
      'Parties of 3',
      'Parties of 4 or more',
    ]);
    const sizes = rows.slice(0, 4);
    const sum = (column: 1 | 4) => sizes.reduce((all, row) => all + row[column], 0);
    expect(sum(1)).toBeCloseTo(1, 9);
    expect(sum(4)).toBeCloseTo(1, 9);
    for (const [name, share, low, high] of rows) {
      expect(low, name).toBeLessThanOrEqual(share);
      expect(high, name).toBeGreaterThanOrEqual(share);
    }
    expect(rows.find(([name]) => name.includes('stay in'))![4]).toBe(scenario.guests.staysIn);
    expect(await renderSvg(drawn!.spec)).toContain('in the scenario before');
    expect(sharesCharts([], fixtureContext())).toEqual([]);
  });
});

describe('dirty pieces at three moments', () => {
  const model = compile(scenario, piecesPerRackOf);
  const counted = (row: number, tables: number, bench: number) => ({
    row,
    minute: 8 * 60 + 15 * row,
    tables,
    bench,
  });
  const note = (dirty: readonly ReturnType<typeof counted>[]) =>
    dirtyNotes(dirty, model, facts.fromMinute, '1');

  it('lie where simulated mornings have them, and the sentence says where they do not', () => {
    const { tables, bench } = dirtyAt(model, '1', (8 * 60 + 15 - facts.fromMinute) * 60_000);
    expect(tables.low).toBeLessThan(tables.high);
    expect(note([counted(1, tables.high, bench.high)])[0]).toContain('agree with the rush');
    expect(note([counted(1, tables.high + 1, bench.low)])[0]).toContain(
      'There were more on tables at 08:15 than the rush has',
    );
    expect(note([])).toEqual([]);
  });

  it('are seldom called odd on mornings of the house itself', () => {
    const mornings = 40;
    let odd = 0;
    const span = dirtyAt(model, '1', 90 * 60_000, 200);
    for (let at = 0; at < mornings; at += 1) {
      // Days beyond those that the span was read on, by another seed.
      const day = dirtyAt(model, `morning ${at}`, 90 * 60_000, 1);
      const { tables, bench } = { tables: day.tables.low, bench: day.bench.low };
      if (tables < span.tables.low || tables > span.tables.high) odd += 1;
      if (bench < span.bench.low || bench > span.bench.high) odd += 1;
    }
    // 80 counts at 0.7 % and the error of 200 days: 4 is beyond three standard errors.
    expect(odd).toBeLessThan(4);
  });
});
