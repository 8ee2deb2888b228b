/** The stocktake in blocks: a sentence for each finding, the count, and the loss rates. */
import type { RateUpdate, StocktakeLine } from '../../ordering/stocktake.js';
import { fold, heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { listed } from '../../tell/words.js';
import { answerWords } from '../../tell/words/answer.js';
import { costNames, moneyIn } from '../order/money.js';
import { isShared } from '../../ordering/costs/index.js';
import type { TopUp } from '../../ordering/top-up.js';
import type { StocktakeAnswer } from './study.js';
import { say } from './words.js';

export function stocktakeBlocks(answer: StocktakeAnswer, context: ReportContext): Block[] {
  const formats = formatsFor(context);
  const { count } = formats;
  const nameOf = (id: string): string =>
    shortName(context.ware.find((ware) => ware.id === id)?.name ?? id);
  return [
    heading(say.heading(count(answer.days), answer.date)),
    paragraphs([askFirst(answer, nameOf)], 'alarm'),
    paragraphs([leadOf(answer, nameOf, formats)], 'lead'),
    list(
      answer.lines.map((line) => findingOf(line, answer, nameOf(line.ware), formats)),
      say.findings,
    ),
    paragraphs([say.expected], 'small'),
    paragraphs([
      chargesOf(answer),
      answer.uncounted.length === 0 ? '' : say.uncounted(listed(answer.uncounted.map(nameOf))),
    ]),
    countTable(answer, nameOf, formats),
    fold(say.rates, ratesBlocks(answer, nameOf, formats)),
  ];
}

function leadOf(
  { lines, order, waiting, unquoted, ...money }: StocktakeAnswer,
  nameOf: (id: string) => string,
  { count }: Formats,
): string {
  const wanted = lines.filter(({ topUp }) => topUp > 0);
  if (wanted.length === 0) return say.leadNothing;
  const sentence = (
    some: readonly StocktakeLine[],
    { lines: bought, totalMinor, costs }: TopUp,
    priced: (list: string, total: string, costs: string) => string,
    unpriced: (list: string, why: string) => string,
  ): string[] => {
    const named = some.map(({ ware, topUp }) => {
      const sold = bought.find((line) => line.ware === ware);
      const pieces = sold?.pieces ?? topUp;
      return {
        text: answerWords.pieces(count(pieces), nameOf(ware), pieces === 1),
        sold: sold !== undefined,
      };
    });
    const list = (sold: boolean): string =>
      listed(named.filter((one) => one.sold === sold).map(({ text }) => text));
    const [sold, unsold] = [list(true), list(false)];
    return [
      ...(sold === ''
        ? []
        : [priced(sold, moneyIn(money)(totalMinor), costNames(besideGoods(costs)))]),
      ...(unsold === ''
        ? []
        : [unpriced(unsold, unquoted ? say.unpriced.noSupplier : say.unpriced.notSold)]),
    ];
  };
  const sure = wanted.filter(({ question }) => question === null);
  const questioned = wanted.filter(({ question }) => question !== null);
  return [
    ...sentence(sure, order, say.lead, say.leadUnpriced),
    ...sentence(questioned, waiting, say.leadWait, say.leadWaitUnpriced),
  ].join(' ');
}

/** What is shared between the pieces of an order, such as its freight: a sentence each. */
const chargesOf = ({ order, waiting, ...money }: StocktakeAnswer): string =>
  order.costs
    .flatMap(({ id, name, landed }, at) => {
      const amounts = [order, waiting].flatMap(({ costs }) =>
        costs[at]!.minor === 0 ? [] : moneyIn(money)(costs[at]!.minor),
      );
      return landed && isShared(id) && amounts.length > 0
        ? [say.charge(name, listed(amounts))]
        : [];
    })
    .join(' ');

const besideGoods = <T extends { readonly id: string }>(costs: readonly T[]): readonly T[] =>
  costs.filter(({ id }) => id !== 'goods');

function askFirst({ lines }: StocktakeAnswer, nameOf: (id: string) => string): string {
  const questioned = lines.filter(({ question }) => question !== null);
  return questioned.length === 0
    ? ''
    : say.askFirst(listed(questioned.map(({ ware }) => nameOf(ware))));
}

function findingOf(
  line: StocktakeLine,
  answer: StocktakeAnswer,
  name: string,
  formats: Formats,
): string {
  const { count } = formats;
  const gone =
    line.missing === 0
      ? say.noneGone(name, count(line.expected))
      : say.gone(
          count(line.missing),
          count(line.expected),
          name,
          say.time(answer.days),
          line.broken === null
            ? ''
            : say.brokenAndMissing(count(line.broken), count(line.missing - line.broken)),
        );
  const retired = line.retired === 0 ? '' : say.retired(count(line.retired));
  return `${gone}${retired}${againstUsual(line, formats)}${(line.question === null ? say.aYear : say.usualAYear)(count(line.counted), count(line.goAYear))}${orderOf(line, answer, formats)}`;
}

/** Chance below which a count is more than luck; common practice, no source. */
const BY_LUCK = 0.1;
/** Within so many times of what is usual a count is usual, luck or not. */
const NEAR = 1.15;

function againstUsual(
  { missing, usual, question, chance }: StocktakeLine,
  { count, decimal }: Formats,
): string {
  const times = usual > 0 ? missing / usual : null;
  const mean = usual < 10 ? decimal(usual) : count(Math.round(usual));
  if (question === 'too few gone') return say.tooFew(mean);
  if (question === 'too many gone')
    return times === null || times > 99
      ? say.tooManyUnknown(mean)
      : say.tooMany(decimal(times), mean);
  if (times === null) return say.asUsual(mean);
  // Among many pieces even a small share more is more than luck.
  if (times > NEAR && chance.ofAsMany < BY_LUCK) return say.times(decimal(times), mean);
  if (times < 1 / NEAR && chance.ofAsFew < BY_LUCK) return say.fewer(mean);
  return times >= 0.67 && times <= 1.5 ? say.asUsual(mean) : say.byLuck(mean);
}

function orderOf(line: StocktakeLine, answer: StocktakeAnswer, { count }: Formats): string {
  const { reorderPoint, par } = line.policy;
  if (line.topUp === 0)
    return reorderPoint === null
      ? say.enoughForGood(count(line.counted))
      : say.enough(count(line.counted), count(reorderPoint));
  const sure = line.question === null;
  const { lines } = sure ? answer.order : answer.waiting;
  const bought = lines.find(({ ware }) => ware === line.ware);
  if (bought !== undefined)
    return (sure ? say.orderNow : say.orderLater)(
      count(bought.pieces),
      say.priced(
        say.carton(bought.cartons),
        moneyIn(answer)(bought.landedMinor),
        costNames(besideGoods(bought.costs)),
      ),
      moreThanNeeded(line.topUp, bought, count),
    );
  return reorderPoint === null
    ? say.shortForGood(count(line.counted), count(par))
    : (sure ? say.orderUnquoted : say.orderLaterUnquoted)(
        count(line.topUp),
        answer.unquoted ? '' : say.notSold,
      );
}

/** Why so many more than are needed. */
function moreThanNeeded(
  needed: number,
  { pieces, cartons }: { readonly pieces: number; readonly cartons: number },
  count: (pieces: number) => string,
): string {
  if (pieces === needed) return '';
  return Math.ceil((needed * cartons) / pieces) < cartons
    ? say.smallestOrder(count(needed))
    : say.wholeCartons(count(needed));
}

const countTable = (
  { lines }: StocktakeAnswer,
  nameOf: (id: string) => string,
  { count }: Formats,
): Block =>
  table({
    caption: say.countCaption,
    columns: say.countHead.map((title, at) => ({ title, as: at === 0 ? 'words' : 'figures' })),
    rows: lines.map((line) => [
      nameOf(line.ware),
      count(line.expected),
      count(line.counted),
      count(line.retired),
      line.broken === null ? say.none : count(line.broken),
      count(line.missing - (line.broken ?? 0)),
      line.policy.reorderPoint === null ? say.none : count(line.policy.reorderPoint),
      count(line.topUp),
    ]),
  });

function ratesBlocks(
  { lines }: StocktakeAnswer,
  nameOf: (id: string) => string,
  { decimal, percent }: Formats,
): Block[] {
  const rate = (value: number): string => decimal(value, 2);
  const interval = ({ low, high }: { low: number; high: number }): string =>
    say.interval(rate(low), rate(high));
  const columns = (titles: readonly string[]) =>
    titles.map((title, at) => ({
      title,
      as: at === 0 ? ('words' as const) : ('figures' as const),
    }));
  const change = (update: RateUpdate): string[] => [
    rate(update.prior.mean),
    rate(update.posterior.mean),
    interval(update.posterior),
    percent(update.weightOfAssumed, 0),
  ];
  return [
    table({
      caption: say.brokenCaption,
      columns: columns([...say.brokenHead, ...say.rateHead]),
      rows: lines.flatMap(({ ware, seen, breakage }) =>
        seen === null || breakage === null
          ? []
          : [[nameOf(ware), rate(seen.rate), interval(seen), ...change(breakage)]],
      ),
    }),
    table({
      caption: say.walkedCaption,
      columns: columns([say.countHead[0]!, ...say.rateHead]),
      rows: lines.flatMap(({ ware, walkOff }) =>
        walkOff === null ? [] : [[nameOf(ware), ...change(walkOff)]],
      ),
    }),
    paragraphs([say.ratesNote], 'small'),
  ];
}
