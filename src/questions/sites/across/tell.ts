/** Alternatives, uncertain inputs and measuring over sites as blocks. */
import { fold, heading, paragraphs, table, type Block } from '../../../tell/block.js';
import type { ReportContext } from '../../../tell/context.js';
import type { Formats } from '../../../tell/format.js';
import { shortName } from '../../../tell/section-parts.js';
import { wholeMoney } from '../../compare/money-text.js';
import { sitesFormats } from '../tell.js';
import { say as sitesSay } from '../words.js';
import type { AcrossAnswer, SiteHouse } from './answer.js';
import type { Span } from './rows.js';
import type { Spread } from '../../compare/spread.js';
import { say } from './words.js';

/** Rows of a table on a terminal; all are in the files. */
const MOST_ROWS = 60;

export type AcrossShown = Omit<AcrossAnswer, 'drawn'>;

/** Amounts are large and none is exact: whole units of the currency. */
export function acrossFormats(context: ReportContext): Formats {
  const formats = sitesFormats(context);
  return { ...formats, money: wholeMoney(context, formats) };
}

export function acrossBlocks(answer: AcrossShown, context: ReportContext): Block[] {
  const formats = acrossFormats(context);
  return [
    ...leadBlocks(answer, formats),
    ...(answer.alternatives.length === 0
      ? []
      : [fold(say.tableCaption, [houseTable(answer, formats)])]),
    ...furtherBlocks(answer, formats),
    paragraphs([`${sitesSay.informs} ${sitesSay.made(context.version, answer.seed)}`], 'small'),
  ];
}

export const spanText = (span: Span | null, { money }: Formats): string =>
  span === null ? say.none : say.range(money(span.low), money(span.high));

export const spreadText = (spread: Spread | null, { money }: Formats): string =>
  spread === null ? say.none : say.range(money(spread.low), money(spread.high));

export const chanceText = (line: Pick<SiteHouse, 'chanceCheaper'>, { percent }: Formats): string =>
  line.chanceCheaper === null ? say.none : percent(line.chanceCheaper.level, 0);

/** The difference in money and its interval; what is to be planned for has none. */
export const totalTexts = ({ total, said }: SiteHouse, formats: Formats): [string, string] =>
  total === null || said === null
    ? [say.none, say.none]
    : [formats.money(total.difference), spanText(total, formats)];

/** Name of an alternative by its id. */
export const houseName = (
  { alternatives }: Pick<AcrossShown, 'alternatives'>,
  id: string,
): string => alternatives.find((one) => one.id === id)?.name ?? say.asItIs;

/** What is said of one house of a site. */
export const verdictText = ({ said, not, best, house }: SiteHouse): string =>
  not !== null
    ? say.cannot(not)
    : said === null
      ? house === 'base'
        ? say.none
        : say.planFor
      : `${say.said[said]}${best ? `, ${say.best}` : ''}`;

export function leadBlocks(answer: AcrossShown, formats: Formats): Block[] {
  const { sites, alternatives, failed, horizonYears, confidence, held } = answer;
  const { count, percent } = formats;
  return [
    heading(
      say.heading(shortName(answer.base), sitesSay.siteCount(sites.length, count(sites.length))),
    ),
    ...(failed.length === 0
      ? []
      : [
          paragraphs(
            failed.map((one) => say.failed(one.site, one.failed)),
            'alarm',
          ),
        ]),
    ...(alternatives.length === 0
      ? []
      : [
          paragraphs([
            say.compareLead(`${count(horizonYears)} years`, percent(confidence, 0), count(held)),
          ]),
          allTable(answer, formats),
          paragraphs([say.allNote], 'small'),
        ]),
  ];
}

function allTable({ alternatives, draws }: AcrossShown, formats: Formats): Block {
  const { count, money } = formats;
  return table({
    caption: say.compareCaption,
    columns: [
      { title: say.alternative, as: 'words' },
      { title: say.cheaper, as: 'figures' },
      { title: say.dearer, as: 'figures' },
      { title: say.open, as: 'figures' },
      { title: say.notAt, as: 'figures', spare: true },
      { title: say.bestAt, as: 'figures', spare: true },
      { title: say.all, as: 'figures' },
      { title: say.interval, as: 'figures' },
      { title: say.ware, as: 'figures', spare: true },
      ...(draws === null ? [] : [{ title: say.chance, as: 'figures' as const }]),
    ],
    rows: alternatives.map((one) => {
      const { name, planFor, counts, notAt, bestAt, at, total, stock } = one;
      const decided = (counts.cheaper ?? 0) + (counts.dearer ?? 0);
      const ware = stock === null ? say.none : money(stock.difference);
      const chance = draws === null ? [] : [planFor ? say.none : chanceText(one, formats)];
      return planFor
        ? [
            name,
            say.planFor,
            say.none,
            say.none,
            count(notAt),
            say.none,
            say.none,
            say.none,
            ware,
            ...chance,
          ]
        : [
            name,
            count(counts.cheaper ?? 0),
            count(counts.dearer ?? 0),
            count(at - decided),
            count(notAt),
            count(bestAt),
            total === null ? say.none : money(total.difference),
            spanText(total, formats),
            ware,
            ...chance,
          ];
    }),
  });
}

function houseTable(answer: AcrossShown, formats: Formats): Block {
  const { money } = formats;
  return table({
    caption: say.tableCaption,
    columns: [
      { title: say.site, as: 'words' },
      { title: say.alternative, as: 'words' },
      { title: say.verdict, as: 'words' },
      { title: say.difference, as: 'figures' },
      { title: say.interval, as: 'figures', spare: true },
      { title: say.stockCost, as: 'figures' },
      ...(answer.draws === null ? [] : [{ title: say.spread, as: 'figures' as const }]),
    ],
    rows: answer.table
      .slice(0, MOST_ROWS)
      .map((line) => [
        shortName(line.name),
        houseName(answer, line.house),
        verdictText(line),
        ...totalTexts(line, formats),
        line.stockCost === null ? say.none : money(line.stockCost),
        ...(answer.draws === null ? [] : [spreadText(line.spread, formats)]),
      ]),
  });
}

/** All but the result table. */
export function furtherBlocks(answer: AcrossShown, formats: Formats): Block[] {
  return [
    ...drawsBlocks(answer, formats),
    ...measureBlocks(answer, formats),
    ...(answer.table.length > MOST_ROWS
      ? [{ ...paragraphs([say.more(formats.count(MOST_ROWS))], 'small'), only: 'text' as const }]
      : []),
  ];
}

function drawsBlocks(
  { draws, asked, drawDays, table: lines }: AcrossShown,
  formats: Formats,
): Block[] {
  if (draws === null) return [];
  const { count, money } = formats;
  const own = lines.filter(({ house }) => house === 'base');
  return [
    heading(say.drawsHead, 2),
    paragraphs([
      say.drawsLead(count(asked.draws), count(drawDays)),
      ...(own.length < 2
        ? []
        : [say.sum(spreadText(draws.alike, formats), spreadText(draws.apart, formats))]),
    ]),
    table({
      caption: say.drawsCaption,
      columns: [
        { title: say.site, as: 'words' },
        { title: say.low, as: 'figures' },
        { title: say.middle, as: 'figures' },
        { title: say.high, as: 'figures' },
      ],
      rows: own
        .slice(0, MOST_ROWS)
        .map(({ name, spread }) => [
          shortName(name),
          ...(spread === null
            ? [say.none, say.none, say.none]
            : [money(spread.low), money(spread.middle), money(spread.high)]),
        ]),
    }),
  ];
}

function measureBlocks({ measure, asked, sites }: AcrossShown, formats: Formats): Block[] {
  if (!asked.measure) return [];
  if (measure === null || measure.sites.every(({ narrows }) => narrows <= 0))
    return [heading(say.measureHead, 2), paragraphs([say.nothing])];
  const { count, money, percent } = formats;
  const ware = ({ costLow, costHigh }: typeof measure.now): string =>
    say.range(money(costLow), money(costHigh));
  const pieces = ({ piecesLow, piecesHigh }: typeof measure.now): string =>
    say.range(count(piecesLow), count(piecesHigh));
  const share = (value: number): string => percent(Math.max(0, value), 1);
  const name = (id: string): string => shortName(sites.find((one) => one.id === id)?.name ?? id);
  return [
    heading(say.measureHead, 2),
    paragraphs([say.measureLead(ware(measure.now), ware(measure.foretold))]),
    table({
      caption: say.measureCaption,
      columns: [
        { title: say.site, as: 'words' },
        { title: say.pieces, as: 'figures', spare: true },
        { title: say.wareRange, as: 'figures' },
        { title: say.narrows, as: 'figures' },
        { title: say.narrowsPieces, as: 'figures', spare: true },
        { title: say.withAbove, as: 'figures' },
      ],
      rows: measure.sites
        .slice(0, MOST_ROWS)
        .map((one) => [
          name(one.site),
          pieces(one.now),
          ware(one.now),
          share(one.narrows),
          share(one.narrowsPieces),
          share(one.withAbove),
        ]),
    }),
  ];
}
