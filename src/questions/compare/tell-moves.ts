/** What moves the order, as blocks: which input to measure first, and why. */
import { heading, paragraphs, table, type Block } from '../../tell/block.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor } from '../../tell/format.js';
import { inputName } from '../../tell/input-name.js';
import { listed, english } from '../../tell/words.js';
import type { MovesAnswer } from './answer.js';
import { whatMovesTheOrder, whatMovesTheOrderTable } from './charts/what-moves-the-order.js';
import { plainData } from './facts.js';
import { signed, wholeMoney } from './money-text.js';

/** Inputs in the table; the table behind the picture has them all. */
const MOST_INPUTS = 12;

function movesChart(moves: MovesAnswer, context: ReportContext): Chart {
  const look = { locale: context.locale, formats: formatsFor(context) };
  return chart(
    'what-moves-the-order',
    whatMovesTheOrder(moves, context.currency, look),
    whatMovesTheOrderTable(moves),
  );
}

export function movesBlocks(moves: MovesAnswer, context: ReportContext): Block[] {
  const say = english.compare;
  const formats = formatsFor(context);
  const whole = wholeMoney(context, formats);
  const { movesHead: head } = say;
  /** Few days have a price of their own: what is said is how far they move from it. */
  const against = (cost: number): string => signed(cost - moves.stockCost, whole);
  const lessOrMore = (cost: number): string =>
    cost < moves.stockCost
      ? say.less(whole(moves.stockCost - cost))
      : say.more(whole(cost - moves.stockCost));
  const width = ({ low, high }: { readonly low: number; readonly high: number }): number =>
    Math.abs(high - low);
  const moving = moves.inputs
    .filter((input) => width(input) > 0)
    .toSorted((a, b) => width(b) - width(a));
  const drawn = moves.draws > 0;
  const none = english.answer.none;
  const rank = (value: number | null): string =>
    value === null ? none : formats.decimal(value, 2);
  const { paths, now, left } = moves.measureFirst;
  const still = moves.inputs.length - moving.length;
  return [
    heading(english.sections.moves.head),
    paragraphs([
      paths.length > 0
        ? say.measure(
            listed(paths.map((path) => shorten(inputName(path), 60))),
            whole(now),
            whole(left),
          )
        : english.sections.moves.nothingToMeasure,
      ...(moves.spread === null
        ? []
        : [
            say.spread(
              formats.count(moves.draws),
              lessOrMore(moves.spread.low),
              lessOrMore(moves.spread.middle),
              lessOrMore(moves.spread.high),
            ),
          ]),
    ]),
    { kind: 'picture', pictures: [movesChart(moves, context)] },
    table({
      caption: say.movesTitle(formats.count(moves.days)),
      columns: [
        { title: head.input, as: 'words' },
        { title: head.basis, as: 'words', spare: true },
        { title: head.range, as: 'words', spare: true },
        { title: head.low, as: 'figures' },
        { title: head.high, as: 'figures' },
        { title: head.swing, as: 'figures' },
        ...(drawn ? [{ title: head.rank, as: 'figures' as const, spare: true }] : []),
      ],
      rows: moving
        .slice(0, MOST_INPUTS)
        .map(({ path, basis, lowValue, highValue, low, high, correlation }) => [
          shorten(inputName(path), 48),
          basis,
          shorten(cleanText(rangeText(lowValue, highValue)), 48),
          against(low),
          against(high),
          whole(width({ low, high })),
          ...(drawn
            ? [
                correlation === null
                  ? none
                  : `${rank(correlation.value)} (${english.answer.to(rank(correlation.low), rank(correlation.high))})`,
              ]
            : []),
        ]),
    }),
    paragraphs(
      [
        ...(still === 0 ? [] : [say.unmoved(formats.count(still))]),
        ...(moves.withoutRange.length === 0
          ? []
          : [say.withoutRange(formats.count(moves.withoutRange.length))]),
        ...(drawn ? [say.rankNote] : []),
      ],
      'small',
    ),
  ];
}

/** Both ends; what begins them alike, such as the law of a duration, is left out. */
function rangeText(low: string, high: string): string {
  const [from, to] = [plainData(low), plainData(high)];
  const law = /^[a-z]+: /i.exec(from)?.[0] ?? '';
  return law !== '' && to.startsWith(law)
    ? `${from.slice(law.length)} … ${to.slice(law.length)}`
    : `${from} … ${to}`;
}
