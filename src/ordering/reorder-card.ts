/** The reorder card of a ware: what to hang beside the shelf. */
import { counted } from '../quantities/counted.js';
import { formatMoney } from './money.js';
import type { OrderLine, OrderSheet } from './order-sheet.js';

export interface ReorderCard {
  readonly ware: string;
  readonly title: string;
  /** What to do, in one sentence. */
  readonly rule: string;
  readonly rows: readonly { readonly label: string; readonly text: string }[];
}

/** The card of one line of a sheet. */
export function reorderCard(line: OrderLine, sheet: OrderSheet): ReorderCard {
  const carton = line.reorder?.cartons;
  const amount =
    line.reorder === null
      ? ''
      : carton === null || carton === undefined
        ? counted(line.reorder.pieces, 'piece')
        : `${counted(carton, 'carton')} (${counted(line.reorder.pieces, 'piece')})`;
  const from = line.supplierName === null ? '' : ` from ${line.supplierName}`;
  const rule =
    line.reorderPoint === null
      ? 'Cannot be ordered again: what you have must last until you change the range.'
      : `Count every ${sheet.reviewDays} days. Fewer than ${line.reorderPoint}: order ${amount} or more${from}, up to ${line.orderUpTo}.`;
  return {
    ware: line.ware,
    title: line.colour === null ? line.name : `${line.name}, ${line.colour}`,
    rule,
    rows: [
      { label: 'Must be clean at opening', text: `${line.par}` },
      {
        label: 'Hold',
        text: `${line.hold} (${line.spares.besideMachine} spare beside the machine, ${line.spares.inStore} in the store)`,
      },
      {
        label: 'Lost per year, on average',
        text: `${line.lossesAYear.total.toFixed(1)} (${line.lossesAYear.breakage.toFixed(1)} broken, ${line.lossesAYear.walkOff.toFixed(1)} walked off, ${line.lossesAYear.retirement.toFixed(1)} retired)`,
      },
      ...(line.landedPerPieceMinor === null
        ? []
        : [
            {
              label: 'A lost piece costs',
              text: formatMoney(
                line.landedPerPieceMinor,
                sheet.currency,
                sheet.locale ?? undefined,
              ),
            },
          ]),
      {
        label: 'Next order expected',
        text:
          line.nextOrder === null
            ? 'not while you keep this range'
            : `${line.nextOrder.expected} (${line.nextOrder.earliest} at the earliest${line.nextOrder.latest === null ? '' : `, ${line.nextOrder.latest} at the latest`}, 9 in 10)`,
      },
      ...(line.lastOrder === null
        ? []
        : [{ label: 'Last order', text: `by ${line.lastOrder.by}, up to ${line.lastOrder.upTo}` }]),
      ...(line.economicOrder === null
        ? []
        : [
            {
              label: 'Cheapest order size for this item alone',
              text: `${counted(line.economicOrder.pieces, 'piece')}, every ${line.economicOrder.years.toFixed(1)} years`,
            },
          ]),
    ],
  };
}
