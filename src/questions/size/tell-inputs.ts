/** The stock that allows for inputs that are not known exactly, as blocks: a sentence, a row beside the plain stock, the method. */
import { heading, paragraphs, table, type Block } from '../../tell/block.js';
import type { ReportContext } from '../../tell/context.js';
import { digitsOf, formatsFor, type Formats } from '../../tell/format.js';
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
  item: 'Item',
  cost: 'To buy',
  lasts: 'Lasts on (95 % interval)',
  plain: 'As it is',
  allowing: 'Allowing for\nthe inputs',
  method: (inputs: string, draws: string, days: string, level: string): string =>
    `The ${inputs} uncertain inputs were drawn at random within their ranges (that of the default where the file gives none, or a fifth either way), ${draws} times, with ${days} days each. The larger stock is chosen to last on ${level} of all these days, so this share counts both chance and what is not known. Both stocks were tested on as many other draws and days. If you measure inputs, the stock gets smaller: cuptide measure says which to begin with.`,
};

/** How the stock that allows for inputs was found. */
export const inputsMethod = (
  { inputs, draws, daysEach }: Pick<InputsAnswer, 'inputs' | 'draws' | 'daysEach'>,
  level: number,
  { count, percent }: Pick<Formats, 'count' | 'percent'>,
): string =>
  say.method(count(inputs), count(draws), count(daysEach), percent(level, digitsOf(level)));

export interface InputsTexts {
  /** What to have, or that the stock is enough as it is. */
  readonly sentence: string;
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly method: string;
}

/** The plain stock and the one that allows for inputs beside it, ware by ware. */
export function inputsTexts(
  found: InputsAnswer,
  answer: Pick<Answer, 'stock' | 'spend' | 'level'>,
  context: ReportContext,
): InputsTexts {
  const { plain, stock, spend, held } = found;
  const formats = formatsFor(context);
  const { count, money, percent } = formats;
  const lines = answer.stock.map((line, at) => ({ ...line, allowing: stock[at]!.pieces }));
  const lasts = ({ level, low, high }: Share): string =>
    `${percent(level)} (${answerWords.to(percent(low), percent(high))})`;
  const more = lines.map((line) => ({ ...line, pieces: line.allowing }));
  return {
    sentence:
      spend > answer.spend
        ? say.more(
            percent(plain.level),
            stockText(
              more.filter(({ pieces }) => pieces > 0),
              formats,
            ),
            money(spend - answer.spend),
            percent(held.level),
          )
        : say.enough(percent(plain.level)),
    caption: say.caption,
    columns: [say.item, say.plain, say.allowing],
    rows: [
      ...lines.map(({ name, pieces, allowing }) => [name, count(pieces), count(allowing)]),
      [say.cost, money(answer.spend), money(spend)],
      [say.lasts, lasts(plain), lasts(held)],
    ],
    method: inputsMethod(found, answer.level, formats),
  };
}

export function inputsBlocks(
  found: InputsAnswer,
  answer: Pick<Answer, 'stock' | 'spend' | 'level'>,
  context: ReportContext,
): Block[] {
  const { sentence, caption, columns, rows, method } = inputsTexts(found, answer, context);
  return [
    heading(say.head, 2),
    paragraphs([sentence]),
    table({
      caption,
      columns: columns.map((title, at) => ({ title, as: at === 0 ? 'words' : 'figures' })),
      rows,
    }),
    paragraphs([method], 'small'),
  ];
}
