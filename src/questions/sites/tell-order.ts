/** The pooled order and the roll-out as blocks. */
import { costsOf, type CostAmount } from '../../ordering/costs/index.js';
import { heading, paragraphs, table, type Block } from '../../tell/block.js';
import type { Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { english } from '../../tell/words.js';
import { costNames, landedBesideGoods } from '../order/money.js';
import type { SitesAnswer } from './answer.js';
import type { ChainOrder, DropOrder } from './chain-order.js';
import type { RollOut } from './roll-out.js';
import { listed, moneyOf, wareName } from './tell-parts.js';
import { say } from './words.js';

export function orderBlocks(answer: SitesAnswer, formats: Formats): Block[] {
  const { order } = answer;
  if (order === null) return [];
  const money = moneyOf(answer, formats);
  const { count } = formats;
  return [
    heading(say.orderHead, 2),
    paragraphs([
      say.orderLead(
        money(order.cost.openingMinor),
        costNames(besideGoods(order)),
        say.dropCount(order.drops.length, count(order.drops.length)),
        order.date,
      ),
      say.allOrders(money(order.cost.totalMinor), count(order.horizonDays)),
      ...comparisons(order, money, formats),
      provedText(order, formats),
      `${say.sparesAt[order.sparesAt]}${order.drops.length === 1 ? '' : ` ${say.breaks}`}`,
      ...(order.unsold.length === 0
        ? []
        : [say.unsold(order.unsold.map(wareName(answer)).join(', '))]),
    ]),
    ...order.drops.map((drop) => dropTable(drop, answer, formats)),
  ];
}

/** Costs that the order has, beside goods. */
const besideGoods = ({ drops }: ChainOrder): readonly CostAmount[] => {
  const all = drops.flatMap(({ consignments }) => consignments.flatMap(({ costs }) => costs));
  return costsOf([]).filter(
    (cost) => cost.id !== 'goods' && all.some(({ id, minor }) => id === cost.id && minor > 0),
  );
};

function comparisons(
  { alone, oneDrop, cost, horizonDays }: ChainOrder,
  money: (minor: number) => string,
  { count, percent }: Formats,
): string[] {
  return [
    ...(alone === null
      ? []
      : [
          say.alone(
            money(alone.openingMinor),
            money(alone.totalMinor),
            count(horizonDays),
            `${money(alone.totalMinor - cost.totalMinor)} (${percent(alone.totalMinor === 0 ? 0 : 1 - cost.totalMinor / alone.totalMinor, 0)})`,
          ),
        ]),
    ...(oneDrop === null ? [] : [say.oneDrop(money(oneDrop.totalMinor), money(cost.totalMinor))]),
  ];
}

const provedText = ({ cost: { proved, gap } }: ChainOrder, { percent }: Formats): string =>
  proved ? say.proved(percent(gap ?? 0)) : say.notProved(percent(gap ?? 1, 0));

function dropTable(drop: DropOrder, answer: SitesAnswer, formats: Formats): Block {
  const money = moneyOf(answer, formats);
  const name = wareName(answer);
  const { count } = formats;
  return table({
    caption: say.dropCaption(
      say.dropName(drop.drop),
      say.siteCount(drop.sites.length, count(drop.sites.length)),
    ),
    columns: [
      { title: say.item, as: 'words' },
      { title: say.par, as: 'figures' },
      { title: say.have, as: 'figures', spare: true },
      { title: say.ordered, as: 'figures' },
      { title: say.cartons, as: 'figures' },
      { title: say.supplier, as: 'words', spare: true },
      { title: say.landed(landedBesideGoods()), as: 'figures' },
    ],
    rows: drop.lines.map((line) => [
      name(line.ware),
      count(line.par),
      count(line.have),
      count(line.pieces),
      count(line.cartons),
      line.supplier === null
        ? say.none
        : shortName(drop.consignments.find((one) => one.supplier === line.supplier)!.name),
      money(line.landedMinor),
    ]),
    totals: [
      say.total,
      count(drop.lines.reduce((sum, { par }) => sum + par, 0)),
      count(drop.lines.reduce((sum, { have }) => sum + have, 0)),
      count(drop.lines.reduce((sum, { pieces }) => sum + pieces, 0)),
      count(drop.lines.reduce((sum, { cartons }) => sum + cartons, 0)),
      '',
      money(drop.lines.reduce((sum, { landedMinor }) => sum + landedMinor, 0)),
    ],
  });
}

/** What the calendar costs, beside the two plain ways where they are others. */
const rollLead = (
  { costMinor, atOnceMinor, eachMinor }: RollOut,
  money: (minor: number) => string,
): string =>
  [
    say.rollLead(money(costMinor)),
    ...(eachMinor === atOnceMinor
      ? []
      : [
          atOnceMinor === costMinor ? say.rollIsOnce : say.rollOnce(money(atOnceMinor)),
          ...(eachMinor === costMinor ? [] : [say.rollEach(money(eachMinor))]),
        ]),
  ].join(' ');

export function rollOutBlocks(answer: SitesAnswer, formats: Formats): Block[] {
  const { rollOut, order } = answer;
  if (rollOut === null) return [];
  const money = moneyOf(answer, formats);
  const name = wareName(answer);
  return [
    heading(say.rollHead, 2),
    paragraphs([
      rollLead(rollOut, money),
      ...(order === null
        ? []
        : [
            say.rollSpares(formats.count(answer.spares.reviewDays), money(order.cost.openingMinor)),
          ]),
      ...(rollOut.undated.length === 0 ? [] : [say.undated(listed(rollOut.undated, formats))]),
    ]),
    table({
      caption: say.rollCaption(formats.percent(rollOut.onTime, 0)),
      columns: [
        { title: say.orderBy, as: 'words' },
        { title: say.supplier, as: 'words', spare: true },
        { title: say.drop, as: 'words', spare: true },
        { title: say.forOpening, as: 'words' },
        { title: say.forSites, as: 'words' },
        { title: say.what, as: 'words' },
      ],
      rows: rollOut.orders.flatMap((order) =>
        order.parts.map((part) => [
          `${part.orderBy}${part.late ? say.late : ''}`,
          shortName(part.name),
          order.drop,
          order.openings.join(', '),
          listed(order.sites, formats),
          part.lines
            .map(({ ware, pieces }) =>
              english.answer.pieces(formats.count(pieces), name(ware), pieces === 1),
            )
            .join(', '),
        ]),
      ),
    }),
  ];
}
