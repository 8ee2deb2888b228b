/** The section of what moves the order: which input to measure first, and why. */
import type { MovesAnswer } from './answer.js';
import { chart, type Chart } from '../../tell/charts/chart-table.js';
import { whatMovesTheOrder, whatMovesTheOrderTable } from './charts/what-moves-the-order.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { wholeMoney } from './text.js';
import { formatsFor } from '../../tell/format.js';
import type { ReportChart } from '../../tell/html-picture.js';
import { inputName } from '../../tell/input-name.js';
import { english, listed } from '../../tell/words.js';
import { plainData } from './facts.js';
import type { ReportContext } from '../../tell/context.js';
import { heading, joined, paragraph, pictureList, table } from '../../tell/section-parts.js';

/** Inputs told in the table; the table behind the picture has them all. */
const MOST_INPUTS = 12;

export function movesCharts(moves: MovesAnswer, context: ReportContext): Chart[] {
  const words = context.words ?? english;
  return [
    chart(
      'what-moves-the-order',
      whatMovesTheOrder(
        moves,
        context.currency,
        { locale: context.locale, formats: formatsFor(context) },
        words,
      ),
      whatMovesTheOrderTable(moves, words),
    ),
  ];
}

/** @param pictures the charts of `movesCharts`, drawn */
export const movesSection = (
  moves: MovesAnswer,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string =>
  joined([
    movesBody(moves, context, pictures),
    paragraph((context.words ?? english).compare.informs, 'small'),
  ]);

export function movesBody(
  moves: MovesAnswer,
  context: ReportContext,
  pictures: readonly ReportChart[],
): string {
  const words = context.words ?? english;
  const say = words.compare;
  const formats = formatsFor(context);
  const whole = wholeMoney(context, formats);
  const { movesHead: head } = say;
  const width = ({ low, high }: { readonly low: number; readonly high: number }): number =>
    Math.abs(high - low);
  const moving = moves.inputs
    .filter((input) => width(input) > 0)
    .toSorted((a, b) => width(b) - width(a));
  const { paths, now, left } = moves.measureFirst;
  const still = moves.inputs.length - moving.length;
  return joined([
    heading(words.sections.moves.head),
    paragraph(
      paths.length > 0
        ? say.measure(
            listed(
              paths.map((path) => shorten(inputName(path, words), 60)),
              words,
            ),
            whole(now),
            whole(left),
          )
        : words.sections.moves.nothingToMeasure,
    ),
    moves.spread === null
      ? ''
      : paragraph(
          say.spread(
            formats.count(moves.draws),
            whole(moves.spread.low),
            whole(moves.spread.middle),
            whole(moves.spread.high),
          ),
        ),
    pictureList(
      pictures.filter(({ id }) => id === 'what-moves-the-order'),
      formats,
      words,
    ),
    table({
      caption: say.movesTitle(formats.count(moves.days)),
      words: [1, 2],
      head: [head.input, head.basis, head.range, head.low, head.high, head.swing],
      rows: moving
        .slice(0, MOST_INPUTS)
        .map(({ path, basis, lowValue, highValue, low, high }) => [
          shorten(inputName(path, words), 60),
          basis,
          shorten(cleanText(rangeText(lowValue, highValue)), 60),
          whole(low),
          whole(high),
          whole(width({ low, high })),
        ]),
    }),
    still === 0 ? '' : paragraph(say.unmoved(formats.count(still)), 'small'),
    moves.withoutRange.length === 0
      ? ''
      : paragraph(say.withoutRange(formats.count(moves.withoutRange.length)), 'small'),
  ]);
}

/** Both ends; what begins them alike, such as the law of a duration, is left out. */
function rangeText(low: string, high: string): string {
  const [from, to] = [plainData(low), plainData(high)];
  const law = /^[a-z]+: /i.exec(from)?.[0] ?? '';
  return law !== '' && to.startsWith(law)
    ? `${from.slice(law.length)} … ${to.slice(law.length)}`
    : `${from} … ${to}`;
}
