/** The stock that allows for inputs that are not known exactly, as blocks: a sentence, a row beside the plain stock, the method. */
import { heading, paragraphs, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { digitsOf, formatsFor } from '../../tell/format.js';
import { answerWords } from '../../tell/words/answer.js';
import type { Answer, InputsAnswer, Share } from './answer.js';
import { stockText } from './lead.js';

const say = {
  head: 'If the inputs are not quite right',
  enough: (level: string): string =>
    `With every input anywhere in its range, this stock lasts on ${level} of days: enough as it is.`,
  more: (plain: string, stock: string, cost: string, held: string): string =>
    `With every input anywhere in its range, this stock lasts on ${plain} of days only. To allow for that, have ${stock}: ${cost} more, and it lasts on ${held}.`,
  caption: 'The stock as it is, and the one that allows for the inputs',
  stock: 'Stock',
  pieces: 'Pieces',
  cost: 'To buy',
  lasts: 'Lasts on',
  interval: '95 % interval',
  plain: 'As it is',
  allowing: 'Allowing for the inputs',
  method: (inputs: string, draws: string, days: string, level: string): string =>
    `${inputs} inputs were drawn together, each evenly below and above its value within its range (without one: that of its default, or a fifth off), ${draws} times with ${days} days each. The stock lasts on ${level} of all these days, so the share counts both luck and what is not known; both stocks were tested on as many draws and days again. Measuring the inputs makes it smaller: cuptide measure says which.`,
};

export function inputsBlocks(
  { inputs, draws, daysEach, plain, stock, spend, held }: InputsAnswer,
  answer: Pick<Answer, 'stock' | 'spend' | 'level'>,
  context: ReportContext,
): Block[] {
  const formats = formatsFor(context);
  const pieces = (of: readonly { readonly pieces: number }[]): number =>
    of.reduce((sum, one) => sum + one.pieces, 0);
  const row = (name: string, count: number, cost: number, share: Share): string[] => [
    name,
    formats.count(count),
    formats.money(cost),
    formats.percent(share.level),
    answerWords.to(formats.percent(share.low), formats.percent(share.high)),
  ];
  const dearer = spend > answer.spend;
  return [
    heading(say.head, 2),
    paragraphs([
      dearer
        ? say.more(
            formats.percent(plain.level),
            stockText(
              answer.stock
                .map((line, at) => ({ ...line, pieces: stock[at]!.pieces }))
                .filter(({ pieces: count }) => count > 0),
              formats,
            ),
            formats.money(spend - answer.spend),
            formats.percent(held.level),
          )
        : say.enough(formats.percent(plain.level)),
    ]),
    table({
      caption: say.caption,
      columns: [
        { title: say.stock, as: 'words' },
        { title: say.pieces, as: 'figures' },
        { title: say.cost, as: 'figures' },
        { title: say.lasts, as: 'figures' },
        { title: say.interval, as: 'figures', spare: true },
      ],
      rows: [
        row(say.plain, pieces(answer.stock), answer.spend, plain),
        row(say.allowing, pieces(stock), spend, held),
      ],
    }),
    paragraphs(
      [
        say.method(
          formats.count(inputs),
          formats.count(draws),
          formats.count(daysEach),
          formats.percent(answer.level, digitsOf(answer.level)),
        ),
      ],
      'small',
    ),
  ];
}
