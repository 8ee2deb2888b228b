/**
 * The sheet as CSV, workbook and cards. CSV is read back by csv-parse; the workbook's formulas are worked out anew.
 */
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orderSheetCsv } from '../../src/ordering/order-sheet-csv.js';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';
import { reorderCard } from '../../src/ordering/reorder-card.js';
import { safeText } from '../../src/ordering/safe-text.js';
import { readBack, worked } from './read-workbook.js';
import { sampleSheet, sampleSlice, sampleSupply } from './sheet-sample.js';

describe('CSV', () => {
  test('a row a ware and a takeaway size, read back by another library', async () => {
    const sheet = await sampleSheet();
    const text = orderSheetCsv(sheet);
    expect(text.endsWith('\r\n')).toBe(true);
    const rows = parse<Record<string, string>>(text, { columns: true });
    expect(rows).toHaveLength(sheet.lines.length + sheet.takeaway.length);
    sheet.lines.forEach((line, index) => {
      const row = rows[index]!;
      expect(row['ware']).toBe(line.ware);
      expect(Number(row['pieces'])).toBe(line.pieces);
      if (line.landedMinor !== null)
        expect(Math.round(Number(row['landed, EUR']) * 100)).toBe(line.landedMinor);
    });
    expect(rows.at(-1)).toMatchObject({
      kind: 'takeaway cup, a week',
      name: "'@Paper cup",
      pieces: '550',
    });
  });

  test('names that begin like a formula are made text', async () => {
    const rows = parse<Record<string, string>>(orderSheetCsv(await sampleSheet()), {
      columns: true,
    });
    expect(rows[1]).toMatchObject({ name: '\'+Saucer "plain"' });
    expect(rows[2]).toMatchObject({ supplier: "'=Mill, Lane & Co" });
  });

  test('no name whatever makes a cell that a spreadsheet would run, nor one more row or column', async () => {
    const sheet = await sampleSheet();
    const nasty = fc.oneof(
      fc.string(),
      fc
        .tuple(
          fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', '\0', '\u001b', '＝'),
          fc.string(),
        )
        .map(([sign, rest]) => sign + rest),
      fc.constantFrom("=cmd|' /C calc'!A0", '"\r\n=1+1,"', '@SUM(A1)'),
    );
    fc.assert(
      fc.property(nasty, (name) => {
        const named: OrderSheet = {
          ...sheet,
          lines: sheet.lines.map((line) => ({ ...line, name, supplierName: name })),
        };
        const rows = parse(orderSheetCsv(named));
        expect(rows).toHaveLength(1 + sheet.lines.length + sheet.takeaway.length);
        for (const row of rows)
          for (const cell of row)
            expect(/^[=+@\t\r\n＝]/u.test(cell) || /^-(?!\d)/.test(cell)).toBe(false);
        expect(rows[1]![2]).toBe(safeText(name));
        for (const cell of rows.flat()) expect(cell).not.toMatch(/[\p{Cc}\p{Cs}]/u);
      }),
      { seed: 20, numRuns: 300 },
    );
  });
});

describe('the workbook', () => {
  test.each([
    ['by value', sampleSlice],
    ['by mass', { ...sampleSlice, shareFreightBy: 'mass', orders: 4 }],
  ])(
    'formulas come to the values beside them, and to the sheet, freight shared %s',
    async (_, slice) => {
      const sheet = await sampleSheet({ supply: sampleSupply(slice) });
      const book = await readBack(sheet);
      let formulas = 0;
      for (const [name, cells] of book) {
        for (const [place, { formula, value }] of cells) {
          if (formula === null) continue;
          formulas++;
          expect(worked(book, name, formula), `${name}!${place} ${formula}`).toBeCloseTo(
            Number(value),
            8,
          );
        }
      }
      expect(formulas).toBeGreaterThan(20);
      const order = book.get('Order')!;
      const bought = sheet.lines.filter((line) => line.landedMinor !== null);
      for (let row = 2; row < 2 + bought.length; row++) {
        const line = sheet.lines.find((one) => safeText(one.name) === order.get(`A${row}`)!.value)!;
        expect(order.get(`I${row}`)!.value).toBe(line.cartons);
        expect(order.get(`J${row}`)!.value).toBe(line.pieces);
        expect(Math.round(Number(order.get(`L${row}`)!.value) * 100)).toBe(line.goodsMinor);
        for (const [column, minor] of [
          ['M', line.freightMinor],
          ['N', line.taxMinor],
          ['O', line.landedMinor],
        ] as const)
          expect(Number(order.get(`${column}${row}`)!.value) * 100).toBeCloseTo(minor!, 6);
      }
      const total = 2 + sheet.lines.length;
      expect(order.get(`A${total}`)!.value).toBe('Total');
      expect(Math.round(Number(order.get(`L${total}`)!.value) * 100)).toBe(sheet.totals.goodsMinor);
      expect(Number(order.get(`O${total}`)!.value) * 100).toBeCloseTo(
        sheet.totals.totalMinor - sheet.totals.handlingMinor,
        6,
      );
    },
  );

  test('numbers are numbers, and names that begin like a formula are text', async () => {
    const book = await readBack(await sampleSheet());
    const order = [...book.get('Order')!].filter(
      ([place]) => !place.endsWith('1') || place.length > 2,
    );
    for (const [place, cell] of order)
      if (/^[E-P]/.test(place)) expect(typeof cell.value).toBe('number');
    expect(order.map(([, { value }]) => value)).toContain("'=Mill, Lane & Co");
    for (const [, { value, formula }] of order)
      if (formula === null && typeof value === 'string') expect(value).not.toMatch(/^[=+@-]/);
  });

  test('another number of cartons is priced anew: goods, freight by its step, tax', async () => {
    const sheet = await sampleSheet();
    const book = await readBack(sheet);
    const place = sheet.consignments.findIndex(({ supplier }) => supplier === 'quay') + 2;
    expect(place).toBeGreaterThan(1);
    const row = [2, 3, 4, 5].find(
      (one) =>
        book.get('Order')!.get(`C${one}`)?.value === 'Quay Tableware' &&
        book.get('Order')!.get(`I${one}`) !== undefined,
    )!;
    // Two cartons of that line, none of the supplier's others: 14 + 2 × 5, no free freight below 450.
    const order = new Map(book.get('Order')!);
    for (const one of [2, 3, 4, 5])
      if (order.get(`C${one}`)?.value === 'Quay Tableware' && order.has(`I${one}`))
        order.set(`I${one}`, { formula: null, value: one === row ? 2 : 0 });
    const changed = new Map([...book, ['Order', order]]);
    const at = (name: string, cell: string): number =>
      worked(changed, name, book.get(name)!.get(cell)!.formula!);
    const goods = 2 * Number(order.get(`K${row}`)!.value);
    expect(goods).toBeLessThan(450);
    expect(at('Consignments', `D${place}`)).toBeCloseTo(goods, 9);
    expect(at('Consignments', `E${place}`)).toBe(24);
    expect(at('Consignments', `H${place}`)).toBeCloseTo(Math.round(23 * (goods + 24)) / 100, 9);
    expect(at('Order', `M${row}`)).toBe(24);
  });

  test('an order of nothing still opens', async () => {
    const sheet = await sampleSheet({ ware: [], supply: sampleSupply({}), takeaway: [] });
    expect([...(await readBack(sheet)).keys()]).toEqual([
      'Order',
      'Consignments',
      'Freight',
      'Takeaway a week',
      'Reorder cards',
      'Notes',
    ]);
  });
});

describe('reorder cards', () => {
  test('say when, how many, and what a lost piece costs', async () => {
    const sheet = await sampleSheet({ supply: sampleSupply({ ...sampleSlice, orders: 4 }) });
    const line = sheet.lines.find(({ ware }) => ware === 'saucer')!;
    const card = reorderCard(line, sheet);
    expect(card.title).toBe('+Saucer "plain", white');
    expect(card.rule).toBe(
      `Count every 28 days. Fewer than ${line.reorderPoint}: order ${line.reorder!.cartons} ${line.reorder!.cartons === 1 ? 'carton' : 'cartons'} (${line.reorder!.pieces} pieces) or more from Quay Tableware, up to ${line.orderUpTo}.`,
    );
    expect(card.rows.find(({ label }) => label === 'A lost piece costs')!.text).toMatch(
      /^€\d\.\d\d$/,
    );
    const glass = sheet.lines.find(({ ware }) => ware === 'glass')!;
    expect(reorderCard(glass, sheet).rule).toBe(
      'Cannot be ordered again: what you have must last until you change the range.',
    );
  });
});
