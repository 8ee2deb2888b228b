/** The files of a study over sites: the result table, every draw, where to measure, and the page whose table sorts and filters. */
import { minorDigits } from '../../../quantities/money.js';
import type { ReportContext } from '../../../tell/context.js';
import { shortName } from '../../../tell/section-parts.js';
import type { OutFile } from '../../question.js';
import { csvText, figure, type Cell } from '../csv.js';
import { sortedPage, sortedTable, type PageParts } from '../sorted-page.js';
import { say as sitesSay } from '../words.js';
import type { AcrossAnswer, SiteHouse } from './answer.js';
import {
  acrossFormats,
  chanceText,
  furtherBlocks,
  houseName,
  leadBlocks,
  spreadText,
  totalTexts,
  verdictText,
} from './tell.js';
import { say } from './words.js';

export async function acrossFiles(
  answer: AcrossAnswer,
  context: ReportContext,
  page: PageParts,
): Promise<OutFile[]> {
  const { drawn, ...shown } = answer;
  return [
    { ending: 'what-if.csv', content: csvText(tableRows(answer)) },
    ...(drawn.length === 0 ? [] : [{ ending: 'draws.csv', content: csvText(drawRows(answer)) }]),
    ...(answer.measure === null
      ? []
      : [{ ending: 'measure.csv', content: csvText(measureRows(answer)) }]),
    { ending: 'what-if.html', content: await acrossPage(answer, context, page) },
    { ending: 'what-if.json', content: `${JSON.stringify(shown, null, 1)}\n` },
  ];
}

/** A row for each site and house. */
export function tableRows({ table, currency }: AcrossAnswer): Cell[][] {
  const money = (value: number | undefined): Cell =>
    value === undefined ? null : figure(value, minorDigits(currency));
  const percent = (share: number | undefined): Cell =>
    share === undefined ? null : figure(100 * share, 2);
  return [
    [
      'id',
      'name',
      'alternative',
      'said',
      'best',
      `difference, ${currency}`,
      `difference low, ${currency}`,
      `difference high, ${currency}`,
      `ware difference, ${currency}`,
      `ware low, ${currency}`,
      `ware high, ${currency}`,
      `ware cost, ${currency}`,
      `ware cost 5 % of draws, ${currency}`,
      `ware cost middle draw, ${currency}`,
      `ware cost 95 % of draws, ${currency}`,
      'cheaper, percent of draws',
      'cheaper low, percent',
      'cheaper high, percent',
      'not here',
    ],
    ...table.map((line) => [
      line.site,
      line.name,
      line.house,
      line.said,
      line.best ? 'yes' : '',
      money(line.total?.difference),
      money(line.total?.low),
      money(line.total?.high),
      money(line.stock?.difference),
      money(line.stock?.low),
      money(line.stock?.high),
      money(line.stockCost ?? undefined),
      money(line.spread?.low),
      money(line.spread?.middle),
      money(line.spread?.high),
      percent(line.chanceCheaper?.level),
      percent(line.chanceCheaper?.low),
      percent(line.chanceCheaper?.high),
      line.not,
    ]),
  ];
}

/** A row for each site, house and draw. */
export const drawRows = ({ drawn, currency }: AcrossAnswer): Cell[][] => [
  ['id', 'alternative', 'draw', `ware cost, ${currency}`, `all money, ${currency}`],
  ...drawn.flatMap(({ site, houses, stock, total }) =>
    houses.flatMap((house, at) =>
      stock[at]!.map((cost, draw): Cell[] => [site, house, draw + 1, cost, total[at]![draw]!]),
    ),
  ),
];

export const measureRows = ({ measure, currency }: AcrossAnswer): Cell[][] => [
  [
    'id',
    `ware low, ${currency}`,
    `ware high, ${currency}`,
    `ware low then, ${currency}`,
    `ware high then, ${currency}`,
    'pieces low',
    'pieces high',
    'narrows the sum, percent',
    'narrows the pieces, percent',
    'with those above, percent',
    'parts of the sheet',
  ],
  ...measure!.sites.map((one): Cell[] => [
    one.site,
    figure(one.now.costLow, 2),
    figure(one.now.costHigh, 2),
    figure(one.foretold.costLow, 2),
    figure(one.foretold.costHigh, 2),
    figure(one.now.piecesLow, 1),
    figure(one.now.piecesHigh, 1),
    figure(100 * one.narrows, 2),
    figure(100 * one.narrowsPieces, 2),
    figure(100 * one.withAbove, 2),
    one.parts.join(' '),
  ]),
];

function acrossPage(
  answer: AcrossAnswer,
  context: ReportContext,
  page: PageParts,
): Promise<string> {
  const formats = acrossFormats(context);
  const { count, money } = formats;
  const decided = ({ said }: SiteHouse): boolean => said === 'cheaper' || said === 'dearer';
  return sortedPage(
    {
      title: say.heading(
        shortName(answer.base),
        sitesSay.siteCount(answer.sites.length, count(answer.sites.length)),
      ),
      base: answer.base,
      seed: answer.seed,
      before: leadBlocks(answer, formats),
      table: sortedTable({
        caption: say.tableCaption,
        only: say.page.only,
        shown: say.page.shown,
        first: say.site,
        picture: null,
        heads: [
          say.alternative,
          say.verdict,
          say.difference,
          say.interval,
          say.ware,
          say.stockCost,
          say.spread,
          say.chance,
        ],
        rows: answer.table.map((line) => {
          const [difference, interval] = totalTexts(line, formats);
          return {
            name: shortName(line.name),
            text: `${line.site} ${line.name} ${houseName(answer, line.house)} ${verdictText(line)}`,
            stands: decided(line),
            cells: [
              { text: houseName(answer, line.house) },
              { text: verdictText(line) },
              { text: difference, value: line.said === null ? null : line.total!.difference },
              { text: interval, value: line.said === null ? null : line.total!.low },
              {
                text: line.stock === null ? say.none : money(line.stock.difference),
                value: line.stock?.difference ?? null,
              },
              {
                text: line.stockCost === null ? say.none : money(line.stockCost),
                value: line.stockCost,
              },
              { text: spreadText(line.spread, formats), value: line.spread?.high ?? null },
              { text: chanceText(line, formats), value: line.chanceCheaper?.level ?? null },
            ],
          };
        }),
      }),
      after: furtherBlocks(answer, formats),
    },
    context,
    page,
  );
}
