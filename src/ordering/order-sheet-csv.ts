/** The order sheet as CSV (RFC 4180): a row a ware, then a row a takeaway size, numbers without units or grouping. */
import { minorDigits } from '../quantities/money.js';
import { isShared } from './costs/index.js';
import { inUnits } from './money.js';
import type { OrderLine, OrderSheet } from './order-sheet.js';
import { safeText } from './safe-text.js';
import type { RepeatSupply } from './schema.js';
import type { TakeawayLine } from './takeaway.js';

type Cell = string | number | null;

/** Repeat supply in words, as the sheets show it. */
export const repeatWords = (repeat: RepeatSupply | null): string =>
  repeat === null ? '' : typeof repeat === 'string' ? repeat : `until ${repeat.until}`;

/** Columns of the file; names with a unit or a currency where one belongs. */
function columns(sheet: OrderSheet): readonly {
  readonly title: string;
  readonly ware: (line: OrderLine) => Cell;
  readonly takeaway?: (line: TakeawayLine) => Cell;
}[] {
  const { currency } = sheet;
  const money = (minor: number | null, extra = 0): Cell =>
    minor === null ? null : inUnits(minor, currency).toFixed(minorDigits(currency) + extra);
  return [
    { title: 'kind', ware: () => 'ware', takeaway: (line) => `takeaway ${line.kind}, a week` },
    { title: 'ware', ware: (line) => safeText(line.ware), takeaway: (line) => safeText(line.id) },
    { title: 'name', ware: (line) => safeText(line.name), takeaway: (line) => safeText(line.name) },
    { title: 'colour', ware: (line) => safeText(line.colour ?? '') },
    { title: 'par', ware: (line) => line.par },
    { title: 'on hand', ware: (line) => line.onHand },
    {
      title: 'needed',
      ware: (line) => line.needed,
      takeaway: (line) => Number(line.aWeek.toFixed(1)),
    },
    {
      title: 'pieces',
      ware: (line) => line.pieces,
      takeaway: (line) => line.sleevesAWeek * line.sleeve,
    },
    { title: 'supplier', ware: (line) => safeText(line.supplierName ?? '') },
    { title: 'repeat supply', ware: (line) => repeatWords(line.repeat) },
    {
      title: 'pieces per carton',
      ware: (line) => line.cartonPieces,
      takeaway: (line) => line.sleeve,
    },
    { title: 'cartons', ware: (line) => line.cartons, takeaway: (line) => line.sleevesAWeek },
    { title: `price a carton, ${currency}`, ware: (line) => money(line.cartonMinor) },
    ...sheet.totals.costs
      .filter(({ landed }) => landed)
      .map(({ id, name }) => ({
        title: `${name.toLowerCase()}${isShared(id) ? ' share' : ''}, ${currency}`,
        ware: (line: OrderLine): Cell =>
          money(line.costs.find((cost) => cost.id === id)?.minor ?? null),
        ...(id === 'goods' ? { takeaway: (line: TakeawayLine) => money(line.minorAWeek) } : {}),
      })),
    { title: `landed, ${currency}`, ware: (line) => money(line.landedMinor) },
    { title: `landed a piece, ${currency}`, ware: (line) => money(line.landedPerPieceMinor, 2) },
    { title: 'beside the machine', ware: (line) => line.spares.besideMachine },
    { title: 'in the store', ware: (line) => line.spares.inStore },
    { title: 'reorder below', ware: (line) => line.reorderPoint },
    { title: 'order up to', ware: (line) => line.orderUpTo },
    { title: 'reorder pieces', ware: (line) => line.reorder?.pieces ?? null },
    { title: 'next order expected', ware: (line) => line.nextOrder?.expected ?? null },
    { title: 'life-of-range pieces', ware: (line) => line.lifeOfRange },
    { title: 'last order by', ware: (line) => line.lastOrder?.by ?? null },
  ];
}

/** The whole file, lines ended by CR LF. */
export function orderSheetCsv(sheet: OrderSheet): string {
  const all = columns(sheet);
  const rows: readonly (readonly Cell[])[] = [
    all.map(({ title }) => title),
    ...sheet.lines.map((line) => all.map(({ ware }) => ware(line))),
    ...sheet.takeaway.map((line) => all.map(({ takeaway }) => takeaway?.(line) ?? null)),
  ];
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

/** RFC 4180, rules 5 to 7: quotes round a field that holds a comma, a quote or a line break; quotes inside doubled. */
function field(cell: Cell): string {
  const text = cell === null ? '' : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
