/** The guide's table: a column a house, a row an item; racks, shelf, people and money below. */
import type { TableBlock } from '../../tell/block.js';
import type { Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import type { GuideHouse, GuideStock } from './answer.js';
import { say } from './words.js';

/** Kinds of ware that one page has room for; CSV and JSON have all. */
const MOST_WARE = 16;
/** Columns that a terminal has room for, and in which pieces and pieces a seat stand side by side. */
export const MOST_WIDE = 4;

/** @param share of takeaway that all have, for the caption; null: each column says its own */
export function housesTable(
  houses: readonly GuideHouse[],
  formats: Formats,
  share: number | null,
): TableBlock {
  const percent = (value: number): string => formats.percent(value, 0);
  const first = houses[0]!;
  const apart = houses.length > MOST_WIDE;
  const row = (name: string, cell: (house: GuideHouse) => string): string[] => [
    name,
    ...houses.map(cell),
  ];
  const people = (name: string, what: 'makers' | 'clearers' | 'hands' | 'machines'): string[] =>
    row(name, (house) => {
      const [count, busy] = [house[what], house.busy[what]];
      if (count === null) return '';
      return `${formats.count(count)}${busy === null ? '' : ` (${percent(busy)})`}`;
    });
  const rows = [
    ...first.stock
      .slice(0, MOST_WARE)
      .flatMap((line, at) => [
        row(shortName(line.name), ({ stock }) => piecesText(stock[at]!, formats, !apart)),
        ...(apart ? [row(say.perSeat, ({ stock }) => formats.decimal(stock[at]!.perSeat, 2))] : []),
        ...(line.aCup === null
          ? []
          : [
              row(say.aCup, ({ stock }) =>
                stock[at]!.aCup === null ? '' : formats.decimal(stock[at]!.aCup!, 2),
              ),
            ]),
      ]),
    ...(first.stock.length <= MOST_WARE
      ? []
      : [
          row(say.moreWare(formats.count(first.stock.length - MOST_WARE)), ({ stock }) =>
            formats.count(stock.slice(MOST_WARE).reduce((sum, { pieces }) => sum + pieces, 0)),
          ),
        ]),
    row(say.ware, (house) => moneyText(house, formats)),
    ...kindsOf(houses).map(({ kind, name }) =>
      row(say.racks(name), ({ racks }) =>
        formats.count(racks.find((one) => one.kind === kind)?.racks ?? 0),
      ),
    ),
    row(say.racksCost, ({ racksCost }) => formats.money(racksCost)),
    row(say.shelf, ({ shelfM2 }) => formats.area(shelfM2)),
    people(say.makers, 'makers'),
    people(say.clearers, 'clearers'),
    people(say.hands, 'hands'),
    people(say.machines, 'machines'),
    row(say.guests, ({ guestsAnHour }) => formats.count(guestsAnHour)),
    row(say.paperCups, ({ paperCups }) => formats.count(paperCups)),
  ].filter(([, ...cells]) => cells.some((text) => text !== ''));
  return {
    kind: 'table',
    caption:
      (share === null ? say.houses : say.housesAt(percent(share))) +
      (apart ? '' : say.seatInBrackets),
    columns: [
      { title: say.item, as: 'words' },
      ...houses.map(({ seats, takeaway }) => ({
        title:
          share === null
            ? say.seatsAway(formats.count(seats), percent(takeaway))
            : say.seats(formats.count(seats)),
        as: 'figures' as const,
      })),
    ],
    rows,
  };
}

/** "33 ± 2 (1.27)"; figures that belong together stay on one line. */
function piecesText(
  { pieces, high, perSeat }: GuideStock,
  formats: Formats,
  seat: boolean,
): string {
  const off = high === null ? '' : `\u00A0±\u00A0${formats.count(high - pieces)}`;
  return `${formats.count(pieces)}${off}${seat ? ` (${formats.decimal(perSeat, 2)})` : ''}`;
}

const moneyText = ({ cost, costHigh }: GuideHouse, formats: Formats): string =>
  `${formats.money(cost)}${costHigh === null ? '' : ` ±\u00A0${formats.count(Math.ceil(costHigh - cost))}`}`;

/** Kinds of racks that any of the houses has. */
const kindsOf = (houses: readonly GuideHouse[]): { kind: string; name: string }[] =>
  [...new Map(houses.flatMap(({ racks }) => racks.map(({ kind, name }) => [kind, name])))].map(
    ([kind, name]) => ({ kind, name }),
  );
