/** The section of the alternatives: the recommendation, the table, what supports them. */
import type { ComparedAlternative, Comparison } from './answer.js';
import { digitsOf } from '../size/facts.js';
import { cautionsFor } from '../../tell/cautions.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { signed, wholeMoney } from './text.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { inputName } from '../../tell/input-name.js';
import { english, listed, type Words } from '../../tell/words.js';
import {
  beatNote,
  missedLevel,
  nearFlips,
  otherGuests,
  plainData,
  recommendation,
  yearsText,
} from './facts.js';
import { mapBody } from './map-section.js';
import type { ReportContext } from '../../tell/context.js';
import { movesBody } from './moves-section.js';
import {
  folded,
  heading,
  joined,
  listUnder,
  paragraph,
  pictureList,
  shortName,
  table,
} from '../../tell/section-parts.js';

type Whole = (amount: number) => string;

/**
 * @param pictures the charts of `compareCharts`, drawn
 * @returns HTML that begins with a heading of the second level
 */
export function alternativesSection(
  comparison: Comparison,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string {
  const words = context.words ?? english;
  const say = words.sections.alternatives;
  const formats = formatsFor(context);
  const whole = wholeMoney(context, formats);
  const { alternatives, ranking, worth, map, moves } = comparison;
  const name = (id: string): string =>
    shortName(alternatives.find((one) => one.id === id)?.name ?? id);
  const many = alternatives.length > 1;
  const beat = beatNote(comparison, whole, words);
  const missed = missedLevel(comparison).map(({ id }) => name(id));
  const ordered = ranking.order.map((id) => alternatives.find((one) => one.id === id)!);
  const own = pictures.filter(
    ({ id }) => id === 'alternatives-cost' || id === 'level-against-money',
  );
  const told = own.map((one) =>
    one.id === 'level-against-money' && worth !== null
      ? { ...one, words: `${levelSentence(worth, formats, words)} ${one.words}` }
      : one,
  );
  return joined([
    heading(say.head),
    paragraph(many ? recommendation(comparison, formats, whole, words, name) : say.none),
    beat === null
      ? ''
      : paragraph(beat.text.replace(/^! /, ''), beat.flagged ? 'alarm' : undefined),
    missed.length === 0 ? '' : paragraph(say.missed(listed(missed, words)), 'alarm'),
    ...(comparison.equalGuests
      ? [paragraph(words.compare.equalGuests)]
      : otherGuests(comparison).map(({ id, seated, pieces }) =>
          paragraph(
            seated > 0
              ? say.admits(name(id), formats.decimal(seated), formats.count(pieces))
              : say.admitsFewer(name(id), formats.decimal(-seated)),
            'alarm',
          ),
        )),
    moneyTable(comparison, ordered, formats, whole, words, name),
    listUnder(
      words.compare.changesTitle,
      alternatives.slice(1).map((one) => changesOf(one, words, name)),
    ),
    paragraph(
      words.compare.frame(
        yearsText(comparison.horizonYears, formats),
        formats.percent(comparison.discount, digitsOf(comparison.discount)),
        formats.count(comparison.daysAYear),
      ),
      'small',
    ),
    paragraph(
      words.compare.days(
        formats.count(comparison.days),
        formats.count(comparison.mostDays),
        shorten(cleanText(comparison.seed), NAME),
      ),
      'small',
    ),
    pictureList(told, formats, words),
    folded(
      say.more,
      joined([
        rushTable(ordered, formats, words, name),
        stockTable(ordered, formats, words, name),
        flipsTable(alternatives, formats, words, name),
      ]),
    ),
    map === null ? '' : mapBody(map, context, pictures),
    moves === null ? '' : movesBody(moves, context, pictures),
    ...cautionsFor(context)
      .filter(({ id }) => id === 'services' || id === 'sanitising')
      .map(({ title, text, defersTo }) =>
        paragraph(`${title}: ${text} (${words.cautions.defers} ${defersTo}.)`, 'small'),
      ),
    paragraph(words.compare.informs, 'small'),
  ]);
}

/** Longest seed told. */
const NAME = 40;

function moneyTable(
  comparison: Comparison,
  ordered: readonly ComparedAlternative[],
  formats: Formats,
  whole: Whole,
  words: Words,
  name: (id: string) => string,
): string {
  const { head } = words.compare;
  const drawn = ordered.some(({ chanceCheaper }) => chanceCheaper !== null);
  const none = words.answer.none;
  return table({
    caption: words.compare.moneyTitle,
    head: [
      head.alternative,
      head.stock,
      head.now,
      head.year,
      head.total(yearsText(comparison.horizonYears, formats)),
      head.against,
      head.interval,
      ...(drawn ? [head.chance] : []),
      head.staff,
      head.away,
    ],
    rows: ordered.map((one) => {
      const against = one.totalAgainstBase;
      return [
        name(one.id),
        whole(one.stockCost),
        whole(one.nowTotal),
        whole(one.yearTotal),
        whole(one.total),
        against === null ? none : signed(against.difference, whole),
        against === null
          ? none
          : words.answer.to(signed(against.low, whole), signed(against.high, whole)),
        ...(drawn
          ? [one.chanceCheaper === null ? none : formats.percent(one.chanceCheaper.level, 0)]
          : []),
        formats.count(one.staffMinutes),
        formats.decimal(one.guests.turnedAway),
      ];
    }),
  });
}

function rushTable(
  ordered: readonly ComparedAlternative[],
  formats: Formats,
  words: Words,
  name: (id: string) => string,
): string {
  const { head, rushTitle, minutesNote } = words.compare;
  return joined([
    table({
      caption: rushTitle,
      head: [
        head.alternative,
        head.minutes,
        head.drinks,
        head.shelf,
        head.racks,
        head.busy,
        head.served,
      ],
      rows: ordered.map((one) => [
        name(one.id),
        formats.decimal(one.minutesShort),
        formats.decimal(one.drinksShort, 2),
        formats.decimal(one.shelfM2),
        formats.count(one.racks),
        one.machinesBusy === null ? words.answer.none : formats.percent(one.machinesBusy, 0),
        formats.decimal(one.guests.seated),
      ]),
    }),
    paragraph(minutesNote, 'small'),
  ]);
}

function stockTable(
  ordered: readonly ComparedAlternative[],
  formats: Formats,
  words: Words,
  name: (id: string) => string,
): string {
  const ware = [
    ...new Map(
      ordered.flatMap(({ stock }) => stock.map((line) => [line.ware, line.name] as const)),
    ),
  ];
  return table({
    caption: words.compare.stockTitle,
    head: [
      words.compare.head.alternative,
      ...ware.map(([, title]) => shorten(cleanText(title), 20)),
      words.compare.head.pieces,
    ],
    rows: ordered.map((one) => [
      name(one.id),
      ...ware.map(([id]) => {
        const found = one.stock.find((line) => line.ware === id);
        return found === undefined ? words.answer.none : formats.count(found.pieces);
      }),
      formats.count(one.pieces),
    ]),
  });
}

function flipsTable(
  alternatives: readonly ComparedAlternative[],
  formats: Formats,
  words: Words,
  name: (id: string) => string,
): string {
  const { breakEvenHead: head, breakEvenTitle, prices, farOff } = words.compare;
  const rows = alternatives.flatMap((one) =>
    nearFlips(one).map(({ what, price, flipsAt }) => [
      name(one.id),
      prices[what] ?? what,
      formats.money(price),
      formats.money(flipsAt),
    ]),
  );
  return rows.length === 0
    ? ''
    : joined([
        table({
          caption: breakEvenTitle,
          head: [head.alternative, head.what, head.price, head.flips],
          rows,
        }),
        paragraph(farOff, 'small'),
      ]);
}

const changesOf = (
  { id, changes, note }: ComparedAlternative,
  words: Words,
  name: (id: string) => string,
): string =>
  `${name(id)}: ${[...changes.map((change) => shorten(changeText(change, words), 120)), shorten(cleanText(note), 200)].filter((part) => part !== '').join('; ')}`;

/** "clearing.every: 5 min" → what that input is in words, and its value. */
function changeText(change: string, words: Words): string {
  const clean = cleanText(change);
  const at = clean.indexOf(': ');
  return at < 0
    ? clean
    : `${inputName(clean.slice(0, at), words)}: ${plainData(clean.slice(at + 2))}`;
}

function levelSentence(
  worth: NonNullable<Comparison['worth']>,
  formats: Formats,
  words: Words,
): string {
  const percent = (level: number): string => formats.percent(level, digitsOf(level));
  const { level, knee } = words.compare;
  return `${level(percent(worth.recommended), percent(worth.chosen), formats.money(worth.shortDrinkCost), formats.percent(worth.newsvendor))}${worth.knee === null ? '' : ` ${knee(percent(worth.knee))}`}`;
}
