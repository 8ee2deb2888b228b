/** Columns of the workbook's sheets with formulas, and where the rows of a consignment stand: formulas point at both. */
import type { ChargeRates } from './costs/charge.js';
import { isShared, type CostAmount } from './costs/index.js';
import type { OrderLine, OrderSheet } from './order-sheet.js';

interface Column {
  readonly id: string;
  readonly title: string;
  readonly width: number;
}

/** Letters of columns by what they hold, such as `cartons`. */
export type Letters = (id: string) => string;

/** A, B ... Z, AA, AB. */
export const lettersOf = (columns: readonly Column[]): Letters => {
  const letters = new Map(
    columns.map(({ id }, at) => [
      id,
      `${at < 26 ? '' : String.fromCharCode(64 + Math.floor(at / 26))}${String.fromCharCode(65 + (at % 26))}`,
    ]),
  );
  return (id) => letters.get(id)!;
};

const column = (id: string, title: string, width: number): Column => ({ id, title, width });

/** A row a ware; a column a landed cost. */
export const orderColumns = ({ totals, currency }: OrderSheet): readonly Column[] => [
  column('ware', 'Ware', 24),
  column('colour', 'Colour', 12),
  column('supplier', 'Supplier', 20),
  column('repeat', 'Repeat supply', 14),
  column('par', 'Par', 8),
  column('onHand', 'On hand', 9),
  column('needed', 'Needed', 9),
  column('cartonPieces', 'Pieces a carton', 10),
  column('cartons', 'Cartons', 9),
  column('pieces', 'Pieces', 9),
  column('price', `Price a carton, ${currency}`, 12),
  ...totals.costs
    .filter(({ landed }) => landed)
    .map(({ id, name }) => column(id, `${isShared(id) ? `${name} share` : name}, ${currency}`, 12)),
  column('landed', `Landed, ${currency}`, 12),
  column('each', `Landed a piece, ${currency}`, 12),
  column('reorder', 'Reorder below', 10),
  column('upTo', 'Order up to', 10),
  column('next', 'Next order expected', 14),
  column('mass', 'Kg a carton', 9),
];

/** A row a consignment; a column a cost. */
export const consignmentColumns = ({ totals, currency }: OrderSheet): readonly Column[] => {
  const costs = (some: (cost: CostAmount) => boolean): readonly Column[] =>
    totals.costs.filter(some).map(({ id, name }) => column(id, `${name}, ${currency}`, 12));
  return [
    column('supplier', 'Supplier', 24),
    column('cartons', 'Cartons', 10),
    column('mass', 'Mass, kg', 12),
    ...costs(({ id, landed }) => landed && id !== 'tax'),
    column('step', 'Freight step as ordered', 16),
    column('rate', 'Tax rate', 10),
    ...costs(({ id, landed }) => !landed || id === 'tax'),
    column('total', `Total, ${currency}`, 12),
    column('delivery', 'Delivery expected', 14),
    column('freeFrom', `Freight free from, ${currency}`, 12),
  ];
};

/** Lines of each consignment together, in the order of consignments, then what is not ordered from anybody. */
export function grouped(sheet: OrderSheet): {
  readonly lines: readonly OrderLine[];
  readonly rowsOf: ReadonlyMap<string, readonly [first: number, last: number]>;
} {
  const lines: OrderLine[] = [];
  const rowsOf = new Map<string, readonly [number, number]>();
  for (const { supplier } of sheet.consignments) {
    const own = sheet.lines.filter(
      (line) => line.supplier === supplier && line.landedMinor !== null,
    );
    // Row 1 is the head; rows count from 1.
    rowsOf.set(supplier, [lines.length + 2, lines.length + 1 + own.length]);
    lines.push(...own);
  }
  lines.push(...sheet.lines.filter((line) => line.landedMinor === null));
  return { lines, rowsOf };
}

/** Costs that tax is on, in the order of columns; goods and freight always. */
export const taxedIds = (charges: readonly ChargeRates[]): readonly string[] => [
  'goods',
  'freight',
  ...charges.filter(({ taxed }) => taxed).map(({ id }) => id),
];
