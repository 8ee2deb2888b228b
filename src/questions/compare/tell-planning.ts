/** The planning table as blocks: the same house at other sizes. */
import { paragraphs, table, type Block } from '../../tell/block.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { PlanningRow } from './answer.js';
import type { Telling } from './changes-text.js';

export function planningBlocks(
  rows: readonly PlanningRow[],
  { formats, whole, words }: Telling,
): Block[] {
  const say = words.compare;
  const { planningHead: head } = say;
  const none = words.answer.none;
  return [
    table({
      caption: say.planningTitle,
      columns: [
        head.seats,
        ...(rows[0]?.stock ?? []).map(({ name }) => shorten(cleanText(name), 14)),
        head.cost,
        head.certified,
        head.busy,
      ].map((title, at) => ({ title, as: at === 0 ? 'words' : 'figures' })),
      rows: rows.map((row) => [
        formats.count(row.seats),
        ...row.stock.map(
          ({ pieces, perSeat }) => `${formats.count(pieces)} (${formats.decimal(perSeat)})`,
        ),
        whole(row.stockCost),
        row.certified === null ? none : formats.percent(row.certified.level),
        row.machinesBusy === null ? none : formats.percent(row.machinesBusy, 0),
      ]),
    }),
    paragraphs([say.planningNote], 'small'),
  ];
}
