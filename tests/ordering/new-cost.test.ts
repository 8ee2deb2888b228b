/**
 * A cost more in the list of charges is in all that is made of an order, with nothing else changed: 9.00 for each pallet begun
 * of five cartons, taxed. What it comes to is counted here anew.
 */
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { needNow, type BuyTask } from '../../src/ordering/buy.js';
import { chooseBuy } from '../../src/ordering/choose-buy.js';
import { chargeAt, type Charge } from '../../src/ordering/costs/charge.js';
import { charges } from '../../src/ordering/costs/charges.js';
import { orderSheetCsv } from '../../src/ordering/order-sheet-csv.js';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';
import { bridgeBlocks } from '../../src/questions/order/bridge.js';
import { nowTable } from '../../src/questions/order/now-table.js';
import { formatsFor } from '../../src/tell/format.js';
import { fixtureContext } from '../tell/fixture.js';
import { readBack, worked } from './read-workbook.js';
import { sampleSheet, sampleSlice, sampleSupply } from './sheet-sample.js';
import { solver } from './solver.js';
import { quoteOf, supplierOf } from './supply-samples.js';

const pallets = chargeAt({
  id: 'pallets',
  name: 'Pallets',
  landed: true,
  taxed: true,
  rates: () => ({
    fixedMinor: 0,
    perCartonMinor: 0,
    perKgMinor: 0,
    lot: { cartons: 5, minor: 900 },
  }),
});
const list = charges as Charge[];
let sheet: OrderSheet;
beforeAll(async () => {
  list.push(pallets);
  sheet = await sampleSheet({ supply: sampleSupply({ ...sampleSlice, orders: 1 }) });
});
afterAll(() => void list.splice(list.indexOf(pallets), 1));

const palletsOf = (cartons: number): number => Math.ceil(cartons / 5) * 900;

test('totals, landed costs and bridge hold it, to the cent', () => {
  let [pallets, total] = [0, 0];
  for (const one of sheet.consignments) {
    const own = palletsOf(one.cartons);
    const taxed = one.goodsMinor + one.freightMinor + own;
    expect(one.taxMinor).toBe(Math.round(taxed * one.taxRate));
    expect(one.totalMinor).toBe(taxed + one.taxMinor + one.handlingMinor);
    const lines = sheet.lines.filter(({ supplier }) => supplier === one.supplier);
    const shares = lines.flatMap(({ costs }) => costs.filter(({ id }) => id === 'pallets'));
    expect(shares.reduce((sum, { minor }) => sum + minor, 0)).toBe(own);
    expect(lines.reduce((sum, { landedMinor }) => sum + (landedMinor ?? 0), 0)).toBe(
      taxed + one.taxMinor,
    );
    pallets += own;
    total += one.totalMinor;
  }
  expect(pallets).toBeGreaterThan(900);
  expect(sheet.totals.totalMinor).toBe(total);
  expect(sheet.bridges.ordered.totalMinor).toBe(total);
  expect(sheet.bridges.ordered.costs.map(({ name, minor }) => [name, minor])).toContainEqual([
    'Pallets',
    pallets,
  ]);
});

test('terminal, letter and CSV show it', () => {
  const context = fixtureContext();
  const { columns } = nowTable({ sheet, unquoted: false }, formatsFor(context)) as {
    columns: readonly { readonly title: string }[];
  };
  expect(columns.map(({ title }) => title)).toContain('Pallets');
  expect(JSON.stringify(bridgeBlocks(sheet, context))).toContain('"Pallets"');
  const rows = parse<Record<string, string>>(orderSheetCsv(sheet), { columns: true });
  for (const row of rows.filter((one) => one['landed, EUR'] !== ''))
    expect(Number(row['landed, EUR'])).toBeCloseTo(
      ['goods', 'freight share', 'pallets share', 'tax'].reduce(
        (sum, name) => sum + Number(row[`${name}, EUR`]),
        0,
      ),
      6,
    );
});

test('the workbook prices it anew', async () => {
  const book = await readBack(sheet);
  for (const [name, cells] of book)
    for (const [place, { formula, value }] of cells)
      if (formula !== null)
        expect(worked(book, name, formula), `${name}!${place} ${formula}`).toBeCloseTo(
          Number(value),
          8,
        );
  const first = sheet.consignments[0]!;
  expect(book.get('Consignments')!.get('F1')!.value).toBe('Pallets, EUR');
  expect(book.get('Consignments')!.get('F2')!.value).toBe(palletsOf(first.cartons) / 100);
});

test('the solver knows it: a dearer supplier with larger cartons needs one pallet fewer', async () => {
  // 72 pieces: six cartons of 12 are 216.00 and two pallets, 234.00; three of 24 are 223.20 and one pallet, 232.20.
  const task: BuyTask = {
    suppliers: [
      supplierOf('quay', [quoteOf('cup', 12, 300)]),
      supplierOf('mill', [quoteOf('cup', 24, 310)]),
    ],
    needs: [needNow('cup', { quay: 72, mill: 72 })],
    rounds: 1,
    handlingMinor: 0,
  };
  const buy = await chooseBuy(task, solver);
  expect(buy.ok && [buy.value.proved, buy.value.totalMinor, buy.value.lines[0]!.supplier]).toEqual([
    true,
    23_220,
    'mill',
  ]);
});
