/** The comparison for a terminal: the recommendation in words, then the alternatives side by side. */
import { nowParts, yearParts } from '../../comparing/costs.js';
import type { Comparison } from './answer.js';
import { digitsOf } from '../size/facts.js';
import { cautionsFor } from '../../tell/cautions.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { inputName } from '../../tell/input-name.js';
import { levelLines, mapLines, movesLines, planningLines } from './parts.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, textTable, wrapText, type Formats } from '../../tell/format.js';
import { beatNote, otherGuests, recommendation } from './facts.js';
import { english, listed, type Words } from '../../tell/words.js';

const WIDTH = 100;
/** Table of money parts may be a little wider than text. */
const WIDE = 118;

/** What `cuptide compare` prints for people; the last line ends in a newline. */
export function compareText(comparison: Comparison, context: ReportContext): string {
  const words = context.words ?? english;
  const say = words.compare;
  const formats = formatsFor(context);
  const whole = wholeMoney(context, formats);
  const { alternatives } = comparison;
  const name = (id: string): string =>
    shorten(cleanText(alternatives.find((one) => one.id === id)?.name ?? id), 34);
  const years = formats.decimal(
    comparison.horizonYears,
    Number.isInteger(comparison.horizonYears) ? 0 : 1,
  );
  const right = (titles: readonly string[]) =>
    titles.map((title, at) => ({ title, right: at > 0 }));
  const byTotal = comparison.ranking.order.map((id) => alternatives.find((one) => one.id === id)!);
  const drawn = alternatives.some(({ chanceCheaper }) => chanceCheaper !== null);
  const many = alternatives.length > 1;
  const money = textTable(
    right([
      say.head.alternative,
      say.head.pieces,
      say.head.stock,
      say.head.now,
      say.head.year,
      say.head.total(years),
      say.head.against,
      say.head.interval,
      say.head.cut,
      ...(drawn ? [say.head.chance] : []),
    ]),
    byTotal.map((one) => {
      const against = one.totalAgainstBase;
      return [
        name(one.id),
        formats.count(one.pieces),
        whole(one.stockCost),
        whole(one.nowTotal),
        whole(one.yearTotal),
        whole(one.total),
        against === null ? '–' : signed(against.difference, whole),
        against === null ? '–' : `${signed(against.low, whole)} to ${signed(against.high, whole)}`,
        against?.varianceCut == null ? '–' : `${formats.decimal(against.varianceCut)} ×`,
        ...(drawn
          ? [one.chanceCheaper === null ? '–' : formats.percent(one.chanceCheaper.level, 0)]
          : []),
      ];
    }),
    WIDE,
  );
  const rush = textTable(
    right([
      say.head.alternative,
      say.head.minutes,
      say.head.drinks,
      say.head.staff,
      say.head.shelf,
      say.head.racks,
      say.head.busy,
      say.head.served,
      say.head.away,
    ]),
    byTotal.map((one) => [
      name(one.id),
      formats.decimal(one.minutesShort),
      formats.decimal(one.drinksShort, 2),
      formats.count(one.staffMinutes),
      formats.decimal(one.shelfM2),
      formats.count(one.racks),
      one.machinesBusy === null ? '–' : formats.percent(one.machinesBusy, 0),
      formats.decimal(one.guests.seated),
      formats.decimal(one.guests.turnedAway),
    ]),
    WIDTH,
  );
  const parts = <K extends string>(
    keys: readonly K[],
    titles: Readonly<Record<K, string>>,
    of: (one: (typeof byTotal)[number]) => Readonly<Record<K, number>>,
  ): string[] => {
    const used = keys.filter((key) => byTotal.some((one) => Math.abs(of(one)[key]) >= 0.5));
    return textTable(
      right([say.head.alternative, ...used.map((key) => titles[key])]),
      byTotal.map((one) => [name(one.id), ...used.map((key) => whole(of(one)[key]))]),
      WIDTH,
    );
  };
  const ware = [
    ...new Map(
      alternatives.flatMap(({ stock }) => stock.map((line) => [line.ware, line.name] as const)),
    ),
  ];
  // A price ten times off is no question for a buyer.
  const near = ({
    price,
    flipsAt,
  }: {
    readonly price: number;
    readonly flipsAt: number | null;
  }): boolean => flipsAt !== null && flipsAt > price / 10 && flipsAt < price * 10;
  const flips = alternatives.flatMap((one) =>
    one.breakEven
      .filter(near)
      .map((line) => [
        name(one.id),
        say.prices[line.what] ?? line.what,
        formats.money(line.price),
        formats.money(line.flipsAt!),
      ]),
  );
  const missed = alternatives
    .filter(({ certified }) => certified !== null && certified.high < comparison.level)
    .map(({ id }) => name(id));
  const sections: string[][] = [
    many ? wrapText(recommendation(comparison, formats, whole, words, name), WIDTH) : [],
    many
      ? notes(comparison, formats, words, name).flatMap((note) =>
          wrapText(`! ${note}`, WIDTH, '  '),
        )
      : [],
    beatLines(comparison, whole, words),
    missed.length === 0 ? [] : wrapText(say.missed(listed(missed, words)), WIDTH, '  '),
    [say.moneyTitle, '', ...money, ...(many ? wrapText(say.cutNote, WIDTH) : [])],
    [say.rushTitle, '', ...rush, ...wrapText(say.minutesNote, WIDTH)],
    [say.nowTitle, '', ...parts(nowParts, say.now, ({ now }) => now)],
    [say.yearTitle, '', ...parts(yearParts, say.year, ({ year }) => year)],
    [
      say.stockTitle,
      '',
      ...textTable(
        right([say.head.alternative, ...ware.map(([, title]) => shorten(cleanText(title), 14))]),
        byTotal.map((one) => [
          name(one.id),
          ...ware.map(([id]) => {
            const found = one.stock.find((line) => line.ware === id);
            return found === undefined ? '–' : formats.count(found.pieces);
          }),
        ]),
        WIDTH,
      ),
    ],
    many
      ? [
          say.changesTitle,
          '',
          ...alternatives
            .slice(1)
            .flatMap((one) =>
              wrapText(
                `${name(one.id)}: ${[...one.changes.map((change) => shorten(cleanText(change), 90)), cleanText(one.note)].filter((part) => part !== '').join('; ')}`,
                WIDTH,
                '  ',
              ),
            ),
        ]
      : [],
    flips.length === 0
      ? []
      : [
          say.breakEvenTitle,
          '',
          ...textTable(
            [
              { title: say.breakEvenHead.alternative },
              { title: say.breakEvenHead.what },
              { title: say.breakEvenHead.price, right: true },
              { title: say.breakEvenHead.flips, right: true },
            ],
            flips,
            WIDTH,
          ),
          say.farOff,
        ],
    comparison.worth === null ? [] : levelLines(comparison.worth, formats, words),
    comparison.map === null ? [] : mapLines(comparison.map, formats, whole, words),
    comparison.moves === null ? [] : movesLines(comparison.moves, formats, whole, words),
    comparison.planning === null ? [] : planningLines(comparison.planning, formats, whole, words),
    assumedLines(context, words),
    wrapText(
      say.frame(
        years,
        formats.percent(comparison.discount, digitsOf(comparison.discount)),
        formats.count(comparison.daysAYear),
      ),
      WIDTH,
    ),
    wrapText(
      say.days(
        formats.count(comparison.days),
        formats.count(comparison.mostDays),
        shorten(cleanText(comparison.seed), 40),
      ),
      WIDTH,
    ),
    cautionsFor(context)
      .filter(({ id }) => ['services', 'sanitising', 'lifting'].includes(id))
      .flatMap(({ title, text, defersTo }) =>
        wrapText(`${title}: ${text} (${words.cautions.defers} ${defersTo}.)`, WIDTH, '  '),
      ),
    [say.informs],
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')
    .replaceAll('\u00A0', ' ')}\n`;
}

/** Prices and shares of the comparison that were filled in. */
function assumedLines({ inputs }: ReportContext, words: Words): string[] {
  const filledIn = inputs.filter(
    ({ path, origin }) => origin === 'default' && path.startsWith('costs.'),
  );
  const list = filledIn.map(
    ({ path, value, range }) =>
      `${inputName(path, words)} ${cleanText(value)}${range === null ? '' : ` (${cleanText(range[0])} to ${cleanText(range[1])})`}`,
  );
  return list.length === 0 ? [] : wrapText(words.compare.assumed(list.join('; ')), WIDTH);
}

function beatLines(
  comparison: Comparison,
  whole: (amount: number) => string,
  words: Words,
): string[] {
  const told = beatNote(comparison, whole, words);
  return told === null ? [] : wrapText(told.text, WIDTH, told.flagged ? '  ' : '');
}

function notes(
  comparison: Comparison,
  formats: Formats,
  words: Words,
  name: (id: string) => string,
): string[] {
  const say = words.compare;
  if (comparison.equalGuests) return [say.equalGuests];
  return otherGuests(comparison).map(({ id, seated, pieces }) =>
    seated > 0
      ? say.admits(name(id), formats.decimal(seated), piecesText(pieces, formats))
      : say.admitsFewer(name(id), formats.decimal(-seated)),
  );
}

const piecesText = (pieces: number, formats: Formats): string =>
  `${formats.count(pieces)} ${pieces === 1 ? 'piece' : 'pieces'}`;

/** Money without decimals, for tables of large amounts. */
export function wholeMoney(
  { currency, locale }: Pick<ReportContext, 'currency' | 'locale'>,
  formats: Formats,
): (amount: number) => string {
  try {
    const format = new Intl.NumberFormat(locale, {
      style: 'currency',
      currency,
      maximumFractionDigits: 0,
    });
    return (amount) => format.format(Math.round(amount) + 0).replace(/[\u202F ]/g, '\u00A0');
  } catch {
    return (amount) => formats.money(amount);
  }
}

export const signed = (amount: number, whole: (amount: number) => string): string =>
  Math.round(amount) > 0 ? `+${whole(amount)}` : whole(amount);
