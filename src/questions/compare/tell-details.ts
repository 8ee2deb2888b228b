/** Details of a comparison: the rush, money by part, pieces by ware, what is different, where prices turn it round. */
import { nowParts, yearParts } from '../../comparing/costs.js';
import { list, paragraphs, table, type Block, type Column } from '../../tell/block.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { inputName } from '../../tell/input-name.js';
import { english } from '../../tell/words.js';
import type { ComparedAlternative, Comparison } from './answer.js';
import { nearFlips, plainData } from './facts.js';
import { signed } from './money-text.js';
import type { Telling } from './changes-text.js';

const figures = (titles: readonly string[]): Column[] =>
  titles.map((title, at) => ({ title, as: at === 0 ? 'words' : 'figures' }));

export function detailBlocks(
  comparison: Comparison,
  ordered: readonly ComparedAlternative[],
  telling: Telling,
): Block[] {
  const { formats, whole, name } = telling;
  const say = english.compare;
  const { head } = say;
  const base = comparison.alternatives[0]!;
  const none = english.answer.none;
  // What is to be planned for has no verdict of money.
  const choices = ordered.filter(({ id }) => !comparison.ranking.notRanked.includes(id));
  const parts = <K extends string>(
    caption: string,
    keys: readonly K[],
    titles: Readonly<Record<K, string>>,
    of: (one: ComparedAlternative) => Readonly<Record<K, number>>,
  ): Block => {
    const used = keys.filter((key) => choices.some((one) => Math.abs(of(one)[key]) >= 0.5));
    return table({
      caption,
      columns: figures([head.alternative, ...used.map((key) => titles[key])]),
      rows: choices.map((one) => [
        name(one.id),
        ...used.map((key) =>
          one.id === 'base' ? whole(of(one)[key]) : signed(of(one)[key] - of(base)[key], whole),
        ),
      ]),
    });
  };
  const flips = comparison.alternatives.flatMap((one) =>
    nearFlips(one).map(({ what, price, flipsAt }) => [
      name(one.id),
      say.prices[what] ?? what,
      formats.money(price),
      formats.money(flipsAt),
    ]),
  );
  return [
    table({
      caption: say.rushTitle,
      columns: figures([
        head.alternative,
        head.level,
        head.minutes,
        head.drinks,
        head.shelf,
        head.racks,
        head.busy,
        head.served,
        head.away,
      ]),
      rows: ordered.map((one) => [
        name(one.id),
        one.certified === null ? none : formats.percent(one.certified.level),
        formats.decimal(one.minutesShort),
        formats.decimal(one.drinksShort, 2),
        formats.decimal(one.shelfM2),
        formats.count(one.racks),
        one.machinesBusy === null ? none : formats.percent(one.machinesBusy, 0),
        formats.decimal(one.guests.seated),
        formats.decimal(one.guests.turnedAway),
      ]),
    }),
    paragraphs([say.minutesNote], 'small'),
    parts(say.nowTitle, nowParts, say.now, ({ now }) => now),
    parts(say.yearTitle, yearParts, say.year, ({ year }) => year),
    stockTable(ordered, base, telling),
    ...(ordered.length > 1
      ? [
          list(
            comparison.alternatives.slice(1).map((one) => changesOf(one, name)),
            say.changesTitle,
          ),
        ]
      : []),
    table({
      caption: say.breakEvenTitle,
      columns: figures([
        say.breakEvenHead.alternative,
        say.breakEvenHead.what,
        say.breakEvenHead.price,
        say.breakEvenHead.flips,
      ]).map((column, at) => (at === 1 ? { ...column, as: 'words' } : column)),
      rows: flips,
    }),
    paragraphs(flips.length === 0 ? [] : [say.farOff], 'small'),
  ];
}

function stockTable(
  ordered: readonly ComparedAlternative[],
  base: ComparedAlternative,
  { formats, name }: Telling,
): Block {
  const ware = [
    ...new Map(
      [base, ...ordered].flatMap(({ stock }) =>
        stock.map((line) => [line.ware, line.name] as const),
      ),
    ),
  ];
  const pieces = (one: ComparedAlternative, id: string): number =>
    one.stock.find((line) => line.ware === id)?.pieces ?? 0;
  return table({
    caption: english.compare.stockTitle,
    columns: figures([
      english.compare.head.alternative,
      ...ware.map(([, title]) => shorten(cleanText(title), 20)),
    ]),
    rows: ordered.map((one) => [
      name(one.id),
      ...ware.map(([id]) =>
        one.id === 'base'
          ? formats.count(pieces(one, id))
          : signed(pieces(one, id) - pieces(base, id), formats.count),
      ),
    ]),
  });
}

const changesOf = (
  { id, changes, note }: ComparedAlternative,
  name: (id: string) => string,
): string =>
  `${name(id)}: ${[...changes.map((change) => shorten(changeText(change), 120)), shorten(cleanText(note), 200)].filter((part) => part !== '').join('; ')}`;

/** "clearing.every: 5 min" → what that input is in words, and its value. */
function changeText(change: string): string {
  const clean = cleanText(change);
  const at = clean.indexOf(': ');
  return at < 0 ? clean : `${inputName(clean.slice(0, at))}: ${plainData(clean.slice(at + 2))}`;
}
