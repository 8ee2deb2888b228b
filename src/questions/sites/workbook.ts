/** The answer about all sites as a workbook: a sheet of sites, and one each of the order, the roll-out, spares and the guide. */
import write from 'write-excel-file/universal';
import { head, number, text, type SheetCell } from '../../ordering/workbook-cells.js';
import { inUnits } from '../../ordering/money.js';
import type { ReportContext } from '../../tell/context.js';
import { landedBesideGoods } from '../order/money.js';
import type { SitesAnswer } from './answer.js';
import { figure, siteRows, type Cell } from './csv.js';

export async function sitesWorkbook(
  answer: SitesAnswer,
  context: ReportContext,
): Promise<Uint8Array<ArrayBuffer>> {
  const sheets = [
    { name: 'Sites', rows: siteRows(answer, context) },
    ...(answer.order === null ? [] : [{ name: 'Order', rows: orderRows(answer) }]),
    ...(answer.rollOut === null ? [] : [{ name: 'When to order', rows: rollOutRows(answer) }]),
    ...(answer.spares.lines.length === 0 ? [] : [{ name: 'Spares', rows: sparesRows(answer) }]),
    ...(answer.guide === null ? [] : [{ name: 'Guide', rows: guideRows(answer) }]),
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
      `with ${landedBesideGoods()}, ${currency}`,
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

/** A row for each ware: spares in all, by where they are kept. */
function sparesRows({ spares, ware }: SitesAnswer): Cell[][] {
  const chance = `${figure(100 * spares.confidence, 2)} %`;
  return [
    [
      'item',
      'id',
      'sites',
      'needed clean',
      `at the sites, each sure to ${chance}`,
      `at the sites, all at once sure to ${chance}`,
      `in one place, all at once sure to ${chance}`,
    ],
    ...spares.lines.map((line): Cell[] => [
      ware.find(({ id }) => id === line.ware)?.name ?? line.ware,
      line.ware,
      line.sites,
      line.par,
      line.each,
      line.all,
      line.central,
    ]),
  ];
}

/** A row for each ware: pieces as a fixed number and so many a guest; the first is all ware. */
function guideRows({ guide, ware }: SitesAnswer): Cell[][] {
  return [
    [
      'item',
      'id',
      'fixed pieces',
      'pieces for each guest an hour who sits',
      'typical error, percent',
      'largest error, percent',
      'at site',
    ],
    ...guide!.rules.map((rule): Cell[] => [
      ware.find(({ id }) => id === rule.ware)?.name ?? 'All items',
      rule.ware ?? '',
      figure(rule.fixed, 2),
      figure(rule.perGuest, 3),
      figure(100 * rule.typicalError, 1),
      figure(100 * rule.worst.error, 1),
      rule.worst.site,
    ]),
  ];
}
