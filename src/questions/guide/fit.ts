/**
 * How large the type may be for the guide to fill one page and no more. The page is set by plain rules (`page.ts`), so
 * its height can be added up: lines of each text by the widths of its signs, rows of each table by their fullest cell.
 */
import { shownIn, type Block, type TableBlock } from '../../tell/block.js';
import { breakLines, textWidth } from '../../tell/charts/text-width.js';

/** Sizes and spaces in ems of the type, as the page's style has them. */
export const SET = {
  line: 1.25,
  heading: 1.6,
  lead: 1.15,
  caption: 1.15,
  small: 0.88,
  /** After a paragraph, a list or a table. */
  after: 0.5,
  /** Above and below a row's text, and beside it. */
  rowPad: 0.12,
  cellPad: 0.35,
  /** Before the text of a list's item. */
  indent: 1,
  columnGap: 2,
} as const;

/** Room that is common to A4 and US Letter within margins of 10 mm, in points. */
const WIDTH = ((210 - 20) * 72) / 25.4;
const HEIGHT = ((279.4 - 20) * 72) / 25.4;
/** The sums take the wider of two typefaces, and the page's own is narrower: they left 8 to 12 % of a page free. */
const SPARE = 1.03;
const LARGEST = 10;
const SMALLEST = 4;
const STEP = 0.1;

/** Type size in points: the largest at which all blocks stand on one page, A4 or US Letter. */
export function typeSizeFor(blocks: readonly Block[]): number {
  const shown = shownIn('html', blocks);
  let size = LARGEST;
  while (size > SMALLEST && heightAt(shown, size) > HEIGHT * SPARE) size -= STEP;
  return Math.round(size / STEP) * STEP;
}

const heightAt = (blocks: readonly Block[], size: number): number =>
  blocks.reduce((sum, block) => sum + heightOf(block, size), 0);

function heightOf(block: Block, size: number): number {
  switch (block.kind) {
    case 'heading':
      return textHeight(block.text, size * SET.heading, WIDTH, true) + SET.after * size;
    case 'paragraphs': {
      const own =
        size * (block.tone === 'lead' ? SET.lead : block.tone === 'small' ? SET.small : 1);
      return block.texts.reduce(
        (sum, text) => sum + textHeight(text, own, WIDTH) + SET.after * own,
        0,
      );
    }
    case 'list':
      return listHeight(block.title ?? '', block.items, size);
    case 'table':
      return tableHeight(block, size);
    case 'picture':
    case 'fold':
      return 0;
  }
}

/** Lists stand in two columns, which the browser fills alike to within an item. */
function listHeight(title: string, items: readonly string[], size: number): number {
  const own = size * SET.small;
  const width = (WIDTH - SET.columnGap * size) / 2 - SET.indent * own;
  const heights = items.map((item) => textHeight(item, own, width));
  const all = heights.reduce((sum, one) => sum + one, 0);
  return (
    textHeight(title, size * SET.caption, WIDTH, true) +
    all / 2 +
    own * SET.line +
    SET.after * size * 1.5
  );
}

function tableHeight({ caption, columns, rows }: TableBlock, size: number): number {
  const shares = columnShares(columns);
  const high = (cells: readonly string[]): number =>
    Math.max(
      ...cells.map((text, at) =>
        textHeight(text, size, WIDTH * shares[at]! - 2 * SET.cellPad * size),
      ),
    ) +
    2 * SET.rowPad * size +
    1;
  return (
    textHeight(caption, size * SET.caption, WIDTH, true) +
    [columns.map(({ title }) => title), ...rows].reduce((sum, cells) => sum + high(cells), 0) +
    SET.after * size * 1.5
  );
}

/** Widths of a table's columns as shares of the page: the first names the rows, figures share the rest alike, words get more. */
export function columnShares(columns: TableBlock['columns']): number[] {
  const words = columns.filter(({ as }, at) => at > 0 && as === 'words').length;
  const figures = columns.length - 1 - words;
  const first = words > 0 ? 0.17 : figures > 6 ? 0.22 : 0.3;
  const figure = words > 0 ? 0.07 : (1 - first) / figures;
  const word = words === 0 ? 0 : (1 - first - figure * figures) / words;
  return columns.map(({ as }, at) => (at === 0 ? first : as === 'words' ? word : figure));
}

/** Height of a text in its lines; words too long for one are broken. '' takes none. */
function textHeight(text: string, size: number, width: number, bold = false): number {
  if (text === '') return 0;
  const lines = breakLines(text, width, size, bold).reduce(
    (sum, line) => sum + Math.max(1, Math.ceil(textWidth(line, size, bold) / width)),
    0,
  );
  return lines * size * SET.line;
}
