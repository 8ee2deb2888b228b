/** The answer about all sites as a workbook: a sheet of sites, one of the order, one of the roll-out. */
import write from 'write-excel-file/universal';
import { head, number, text, type SheetCell } from '../../ordering/workbook-cells.js';
import { inUnits } from '../../ordering/money.js';
import type { ReportContext } from '../../tell/context.js';
import type { SitesAnswer } from './answer.js';
import { siteRows, type Cell } from './csv.js';

export async function sitesWorkbook(
  answer: SitesAnswer,
  context: ReportContext,
): Promise<Uint8Array<ArrayBuffer>> {
  const sheets = [
    { name: 'Sites', rows: siteRows(answer, context) },
    ...(answer.order === null ? [] : [{ name: 'Order', rows: orderRows(answer) }]),
    ...(answer.rollOut === null ? [] : [{ name: 'When to order', rows: rollOutRows(answer) }]),
  ].map(({ name, rows }) => ({
    sheet: name,
    data: rows.map((row, at) => row.map((cell) => (at === 0 ? head(String(cell)) : cellOf(cell)))),
    columns: rows[0]!.map((_, at) => ({ width: at === 1 ? 28 : 14 })),
    stickyRowsCount: 1,
    orientation: 'landscape' as const,
  }));
  const blob = await write(sheets as never).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

const cellOf = (cell: Cell): SheetCell =>
  typeof cell === 'number'
    ? number(cell, Number.isInteger(cell) ? '#,##0' : '#,##0.00')
    : text(cell);

/** A row for each drop and ware. */
export function orderRows({ order, ware, currency }: SitesAnswer): Cell[][] {
  const name = (id: string): string => ware.find((one) => one.id === id)?.name ?? id;
  return [
    [
      'drop',
      'item',
      'id',
      'supplier',
      'needed clean',
      'there',
      'pieces ordered',
      'cartons',
      'pieces a carton',
      `with freight and tax, ${currency}`,
      'order on',
      'delivery',
    ],
    ...order!.drops.flatMap(({ drop, lines, consignments }) =>
      lines.map((line) => [
        drop,
        name(line.ware),
        line.ware,
        line.supplier,
        line.par,
        line.have,
        line.pieces,
        line.cartons,
        line.cartonPieces,
        inUnits(line.landedMinor, currency),
        line.supplier === null ? null : order!.date,
        consignments.find(({ supplier }) => supplier === line.supplier)?.delivery ?? null,
      ]),
    ),
  ];
}

/** A row for each order, supplier and ware. */
export function rollOutRows({ rollOut, ware }: SitesAnswer): Cell[][] {
  const name = (id: string): string => ware.find((one) => one.id === id)?.name ?? id;
  return [
    ['order by', 'item', 'id', 'pieces', 'cartons', 'supplier', 'drop', 'openings', 'sites'],
    ...rollOut!.orders.flatMap(({ drop, openings, sites, parts }) =>
      parts.flatMap(({ orderBy, supplier, lines }) =>
        lines.map((line) => [
          orderBy,
          name(line.ware),
          line.ware,
          line.pieces,
          line.cartons,
          supplier,
          drop,
          openings.join(' '),
          sites.join(' '),
        ]),
      ),
    ),
  ];
}
