/** What to order now: a row a ware, from the par to what a piece costs on the shelf. */
import type { OrderLine, OrderSheet } from '../../ordering/order-sheet.js';
import { table, type Block } from '../../tell/block.js';
import type { Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { moneyIn } from './money.js';
import type { OrderStudy } from './study.js';
import { say } from './words.js';

interface NowColumn {
  readonly title: string;
  readonly cell: (line: OrderLine) => string;
  readonly total: string;
  /** Left out where room is short. */
  readonly spare?: boolean;
}

export function nowTable(
  { sheet, unquoted }: Pick<OrderStudy, 'sheet' | 'unquoted'>,
  formats: Formats,
): Block {
  const { count } = formats;
  const pieces = (title: string, of: (line: OrderLine) => number): NowColumn => ({
    title,
    cell: (line) => count(of(line)),
    total: count(sheet.lines.reduce((sum, line) => sum + of(line), 0)),
  });
  const columns: readonly NowColumn[] = [
    { title: say.now.item, cell: ({ name }) => shortName(name), total: say.total },
    pieces(say.now.par, ({ par }) => par),
    pieces(say.now.hold, ({ hold }) => hold),
    pieces(say.now.order, (line) => (unquoted ? line.needed : line.pieces)),
    ...(unquoted ? [] : pricedColumns(sheet, formats)),
  ];
  return table({
    caption: say.orderCaption,
    columns: columns.map(({ title, spare }, at) => ({
      title,
      as: at === 0 ? 'words' : 'figures',
      ...(spare === true ? { spare } : {}),
    })),
    rows: sheet.lines.map((line) => columns.map(({ cell }) => cell(line))),
    totals: columns.map(({ total }) => total),
  });
}

/** Cartons and what they cost: a column a landed cost. */
function pricedColumns(sheet: OrderSheet, { count }: Formats): readonly NowColumn[] {
  const money = moneyIn(sheet);
  return [
    {
      title: say.now.cartons,
      cell: ({ cartons, cartonPieces }) =>
        cartons === null ? say.none : `${cartons} × ${cartonPieces}`,
      total: count(sheet.totals.cartons),
    },
    ...sheet.totals.costs
      .filter(({ landed }) => landed)
      .map(({ id, name, minor }): NowColumn => ({
        title: name,
        cell: ({ costs }) => money(costs.find((cost) => cost.id === id)?.minor ?? null),
        total: money(minor),
        spare: id !== 'goods',
      })),
    {
      title: say.landedEach,
      cell: ({ landedPerPieceMinor }) => money(landedPerPieceMinor),
      total: '',
    },
  ];
}
