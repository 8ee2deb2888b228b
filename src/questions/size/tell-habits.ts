/** How far the answer moves when a habit is a fifth off, as blocks. */
import { heading, list, paragraphs, table, type Block } from '../../tell/block.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { inputName } from '../../tell/input-name.js';
import { answerWords } from '../../tell/words/answer.js';
import type { Answer, HabitsAnswer, Moved } from './answer.js';

const NAME_LENGTH = 40;
const LONGEST_VALUE = 24;

const say = {
  head: 'If habits are a fifth off',
  caption: (days: string): string =>
    `What to buy would cost more or less, and take more or fewer pieces (${days} days, the same for all)`,
  habit: 'Habit',
  now: 'As it is',
  less: (off: string): string => `${off} less`,
  more: (off: string): string => `${off} more`,
  same: 'no change',
  pieces: (count: string, one: boolean): string => `${count} ${one ? 'piece' : 'pieces'}`,
  asTheyVary: 'Pieces needed if one habit is a fifth off',
  range: (name: string, pieces: string, low: string, high: string): string =>
    `${name}: ${pieces} as planned, ${low} to ${high} if a habit is off`,
  still: (name: string, pieces: string): string => `${name}: ${pieces} either way`,
  none: 'This house has no habit to vary: tables are cleared at once, and guests do not stay.',
  note: 'Small differences are chance: each figure is based on fewer days than the answer.',
};

export function habitsBlocks(
  found: HabitsAnswer,
  answer: Pick<Answer, 'stock'>,
  context: ReportContext,
): Block[] {
  const formats = formatsFor(context);
  if (found.habits.length === 0) return [heading(say.head, 2), paragraphs([say.none])];
  const off = formats.percent(found.off, 0);
  // A law in full is longer than a cell; the list of inputs has it.
  const valueOf = (path: string): string => {
    const value = context.inputs.find((one) => one.path === path)?.value ?? '';
    return value.length > LONGEST_VALUE ? '' : cleanText(value);
  };
  return [
    heading(say.head, 2),
    table({
      caption: say.caption(formats.count(found.days)),
      columns: [
        { title: say.habit, as: 'words' },
        { title: say.now, as: 'words', spare: true },
        { title: say.less(off), as: 'figures' },
        { title: say.more(off), as: 'figures' },
      ],
      rows: found.habits.map(({ path, less, more }) => [
        inputName(path),
        valueOf(path),
        movedText(less, formats),
        movedText(more, formats),
      ]),
    }),
    list(rangeTexts(found, answer, formats), say.asTheyVary),
    paragraphs([say.note], 'small'),
  ];
}

/** The ranges alone, for the letter. */
export const habitsFinding = (
  found: HabitsAnswer,
  answer: Pick<Answer, 'stock'>,
  context: ReportContext,
): { readonly title: string; readonly items: readonly string[] } => ({
  title: say.asTheyVary,
  items: rangeTexts(found, answer, formatsFor(context)),
});

/** "Medium cup: 33 as planned, 32 to 35 if a habit is off" */
const rangeTexts = (
  { stock }: HabitsAnswer,
  answer: Pick<Answer, 'stock'>,
  formats: Formats,
): string[] =>
  stock.map(({ ware, pieces, low, high }, at) => {
    const name = shorten(cleanText(answer.stock[at]!.name || ware), NAME_LENGTH);
    const [own, from, to] = [pieces, low, high].map(formats.count) as [string, string, string];
    return low === high ? say.still(name, own) : say.range(name, own, from, to);
  });

/** "+€12.40, +3 pieces" */
function movedText(moved: Moved | null, formats: Formats): string {
  if (moved === null) return answerWords.none;
  const pieces = moved.pieces.reduce((sum, one) => sum + one, 0);
  if (moved.cost === 0 && pieces === 0) return say.same;
  return `${signed(moved.cost, formats.money)}, ${say.pieces(signed(pieces, formats.count), Math.abs(pieces) === 1)}`;
}

const signed = (value: number, written: (value: number) => string): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : ''}${written(Math.abs(value))}`;
