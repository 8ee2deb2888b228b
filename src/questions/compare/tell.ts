/** The comparison as blocks: what is recommended, a verdict a line, money side by side, the rest folded. */
import { digitsOf } from '../size/facts.js';
import { daysOf } from '../size/lead.js';
import {
  fold,
  heading,
  list,
  paragraphs,
  table,
  type Block,
  type Column,
} from '../../tell/block.js';
import { cautionsFor } from '../../tell/cautions.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor } from '../../tell/format.js';
import { inputName } from '../../tell/input-name.js';
import { listed, english } from '../../tell/words.js';
import type { ComparedAlternative, Comparison } from './answer.js';
import { compareCharts } from './charts/compare-charts.js';
import { missedLevel, otherGuests } from './facts.js';
import { signed, wholeMoney, yearsText } from './money-text.js';
import { changesText, habitText, type Telling } from './changes-text.js';
import { isNothing, verdictSentence } from './sentence.js';
import { detailBlocks } from './tell-details.js';
import { levelBlocks, levelLead } from './tell-level.js';
import { mapBlocks } from './tell-map.js';
import { movesBlocks } from './tell-moves.js';
import { planBlocks } from './tell-plans.js';

/** Columns of a name at most: tables wrap it, sentences carry it whole. */
const NAME = 60;
export const shortName = (name: string): string => shorten(cleanText(name), NAME);

export function tellComparison(comparison: Comparison, context: ReportContext): Block[] {
  const say = english.compare;
  const formats = formatsFor(context);
  const { alternatives, ranking, map, moves, worth } = comparison;
  const name = (id: string): string =>
    shortName(alternatives.find((one) => one.id === id)?.name ?? id);
  const telling: Telling = {
    formats,
    whole: wholeMoney(context, formats),
    name,
    days: daysOf(context),
  };
  const all = ranking.order.map((id) => alternatives.find((one) => one.id === id)!);
  const ordered = all.filter(({ id }) => !ranking.notRanked.includes(id));
  const many = alternatives.length > 1;
  const charts = compareCharts(comparison, context);
  const pictures = (id: string): Block => ({
    kind: 'picture',
    pictures: charts.filter((one) => one.id === id),
  });
  return [
    heading(many ? say.head1 : english.sections.alternatives.head),
    paragraphs(many ? leads(comparison, telling) : [english.sections.alternatives.none], 'lead'),
    paragraphs(alarms(comparison, telling), 'alarm'),
    list(
      ordered
        .filter(({ id }) => id !== 'base' && id !== ranking.best)
        .map((one) => verdictSentence(comparison, one, telling)),
    ),
    ...planBlocks(comparison, telling),
    ...(ordered.length > 1 ? [moneyTable(comparison, ordered, telling)] : []),
    paragraphs(notes(comparison, context, telling), 'small'),
    pictures('alternatives-cost'),
    fold(say.details, [
      ...detailBlocks(comparison, all, telling),
      ...(worth === null ? [] : levelBlocks(worth, telling)),
      pictures('level-against-money'),
    ]),
    ...(map === null ? [] : mapBlocks(map, context)),
    ...(moves === null ? [] : movesBlocks(moves, context)),
    paragraphs(
      [
        ...cautionsFor(context)
          .filter(({ id }) => ['services', 'sanitising', 'lifting'].includes(id))
          .map(
            ({ title, text, defersTo }) =>
              `${title}: ${text} (${english.cautions.defers} ${defersTo}.)`,
          ),
        say.informs,
      ],
      'small',
    ),
  ];
}

/** The answer itself: what to do, which level to think of, which habit to try first. */
function leads(comparison: Comparison, telling: Telling): string[] {
  const { formats, whole, name } = telling;
  const say = english.compare;
  const { alternatives, ranking, habits, worth, horizonYears } = comparison;
  const best = alternatives.find(({ id }) => id === ranking.best)!;
  const own = alternatives[0]!.atBest;
  const habit =
    habits === null || habits.said !== 'cheaper' || own === null || own.waitMinutes === null
      ? ''
      : say.habitsFirst(
          habitText(own, formats),
          changesText(habits, telling),
          whole(-habits.difference.difference),
          whole(-habits.difference.high),
          whole(-habits.difference.low),
          yearsText(horizonYears, formats),
        );
  const { chanceCheaper } = best;
  const lessOrMore = (amount: number): string =>
    amount < 0 ? say.less(whole(-amount)) : say.more(whole(amount));
  return [
    habit,
    ranking.best === 'base'
      ? alternatives.length - 1 === ranking.notRanked.length
        ? ''
        : habit === ''
          ? say.bestIsBase
          : say.habitOnly
      : habit === ''
        ? say.best(verdictSentence(comparison, best, telling))
        : say.thenBest(
            verdictSentence(comparison, best, telling),
            lessOrMore(best.atBest?.againstBase?.difference ?? 0),
            yearsText(horizonYears, formats),
          ),
    ranking.asGood.length === 0 ? '' : say.asGood(name(best.id), listed(ranking.asGood.map(name))),
    chanceCheaper === null
      ? ''
      : say.underRanges(
          name(best.id),
          formats.percent(chanceCheaper.level, 0),
          formats.percent(chanceCheaper.low, 0),
          formats.percent(chanceCheaper.high, 0),
        ),
    worth === null ? '' : levelLead(worth, telling),
  ].filter((text) => text !== '');
}

function alarms(comparison: Comparison, { formats, name }: Telling): string[] {
  const say = english.compare;
  const missed = missedLevel(comparison).map(({ id }) => name(id));
  return [
    ...(missed.length === 0 ? [] : [say.missed(listed(missed))]),
    ...(comparison.equalGuests
      ? [say.equalGuests]
      : otherGuests(comparison).map(({ id, seated, pieces }) =>
          seated > 0
            ? say.admits(
                name(id),
                formats.decimal(seated),
                `${formats.count(pieces)} ${pieces === 1 ? 'piece' : 'pieces'}`,
              )
            : say.admitsFewer(name(id), formats.decimal(-seated)),
        )),
  ];
}

function moneyTable(
  comparison: Comparison,
  ordered: readonly ComparedAlternative[],
  { formats, whole, name }: Telling,
): Block {
  const say = english.compare;
  const { head } = say;
  const { alternatives, horizonYears } = comparison;
  const base = alternatives[0]!;
  const drawn = ordered.some(({ chanceCheaper }) => chanceCheaper !== null);
  const none = english.answer.none;
  const figures = (title: string, spare = false): Column => ({
    title,
    as: 'figures',
    ...(spare ? { spare } : {}),
  });
  const years = yearsText(horizonYears, formats);
  /** Staff time that is not counted as cash, over the horizon. */
  const perYear = base.yearTotal === 0 ? 0 : (base.total - presentNow(base)) / base.yearTotal;
  const withStaff = (one: ComparedAlternative): number =>
    one.total + (one.staffAYear - one.year.staff) * perYear;
  const row = (one: ComparedAlternative): string[] => {
    const isBase = one.id === 'base';
    const money = (of: (house: ComparedAlternative) => number): string =>
      isBase ? whole(of(base)) : signed(of(one) - of(base), whole);
    const against = one.totalAgainstBase;
    return [
      name(one.id),
      isBase || one.said === null
        ? none
        : say.short[one.said === 'open' && isNothing(against!) ? 'alike' : one.said],
      isBase ? formats.count(base.pieces) : signed(one.pieces - base.pieces, formats.count),
      isBase ? whole(base.now.ware) : signed(one.stockAgainstBase!.difference, whole),
      money(({ nowTotal }) => nowTotal),
      money(({ yearTotal }) => yearTotal),
      money(({ total }) => total),
      against === null
        ? none
        : english.answer.to(signed(against.low, whole), signed(against.high, whole)),
      isBase
        ? formats.count(base.staffMinutes)
        : signed(one.staffMinutes - base.staffMinutes, formats.count),
      money(withStaff),
      isBase
        ? base.atBest === null
          ? none
          : whole(base.atBest.total)
        : one.atBest?.againstBase == null
          ? none
          : signed(one.atBest.againstBase.difference, whole),
      ...(drawn
        ? [one.chanceCheaper === null ? none : formats.percent(one.chanceCheaper.level, 0)]
        : []),
    ];
  };
  return table({
    caption: say.moneyTitle,
    columns: [
      { title: head.alternative, as: 'words' },
      { title: head.said, as: 'words' },
      figures(head.pieces, true),
      figures(head.stock, true),
      figures(head.now),
      figures(head.year),
      figures(head.against(years)),
      figures(head.interval, true),
      figures(head.staff),
      figures(head.withStaff, true),
      figures(head.atBest, true),
      ...(drawn ? [figures(head.chance, true)] : []),
    ],
    rows: ordered.map(row),
  });
}

/** What of the total does not recur every year. */
const presentNow = (one: ComparedAlternative): number => one.total - one.yearWorth;

function notes(comparison: Comparison, context: ReportContext, telling: Telling): string[] {
  const { formats } = telling;
  const say = english.compare;
  const { horizonYears, discount, daysAYear, kinds, staffCounted, ranking, days, mostDays, seed } =
    comparison;
  const assumed = context.inputs.filter(
    ({ origin, value, path }) =>
      origin === 'default' &&
      /staff hours/.test(value) &&
      (path.startsWith('costs.') ||
        /^washing\.machines\[\d+\]\.(price|installation)$/.test(path)) &&
      !path.startsWith('costs.shortDrink'),
  );
  const names = [...new Set(assumed.map(({ path }) => inputName(path)))];
  return [
    ...(names.length === 0 ? [] : [say.assumedMoney(listed(names))]),
    say.frame(
      yearsText(horizonYears, formats),
      formats.percent(discount, digitsOf(discount)),
      kinds === null
        ? say.daysLikeThis(formats.count(daysAYear))
        : say.daysOfKinds(
            formats.count(daysAYear),
            listed(
              kinds.map((kind) =>
                say.daysOfKind(formats.count(kind.daysAYear), shorten(cleanText(kind.name), 40)),
              ),
            ),
          ),
    ),
    ...(kinds === null ? [] : [say.kindsNote]),
    say.staffFrame(formats.percent(staffCounted, digitsOf(staffCounted))),
    ...(comparison.hardlyMatter.length === 0
      ? []
      : [say.hardlyMatter(listed(comparison.hardlyMatter))]),
    ...(comparison.habits === null ? [] : [say.bestNote]),
    ...(comparison.alternatives.length > 1
      ? [
          say.together(
            formats.count(ranking.differences),
            formats.count(days),
            formats.count(mostDays),
            shorten(cleanText(seed), 40),
          ),
        ]
      : []),
  ];
}
