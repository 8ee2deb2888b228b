/** Blocks as text for a terminal: no line wider than it, pictures left out, details on request. */
import { shownIn, type Block } from './block.js';
import { cleanText } from './clean-text.js';
import { fitTable } from './fit-table.js';
import { wrapText } from './format.js';

/** Columns where nothing says how wide the terminal is. */
export const PLAIN_WIDTH = 100;

export interface TextOptions {
  /** Columns of the terminal. */
  readonly width?: number;
  /** Show folded details too. */
  readonly all?: boolean;
}

/** The blocks as text that ends in a line break; '' for none. */
export function writeText(blocks: readonly Block[], options: TextOptions = {}): string {
  const width = Math.max(20, options.width ?? PLAIN_WIDTH);
  const all = options.all ?? false;
  const parts = shownIn('text', blocks).map((block) => linesOf(block, width, all));
  const hidden = all ? [] : foldsOf(blocks);
  if (hidden.length > 0) parts.push(wrapText(`With --all: ${hidden.join('; ')}.`, width));
  const text = parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')
    .replaceAll('\u00A0', ' ');
  return text === '' ? '' : `${text}\n`;
}

/** Inside a fold a table need not say again what the fold is called. */
const untitled = (blocks: readonly Block[], title: string): Block[] =>
  blocks.map((block) =>
    block.kind === 'table' && block.caption === title ? { ...block, caption: '' } : block,
  );

const foldsOf = (blocks: readonly Block[]): string[] =>
  shownIn('text', blocks).flatMap((block) =>
    block.kind === 'fold' && shownIn('text', block.blocks).some(({ kind }) => kind !== 'picture')
      ? [cleanText(block.title)]
      : [],
  );

function linesOf(block: Block, width: number, all: boolean): string[] {
  switch (block.kind) {
    case 'heading':
      return wrapText(cleanText(block.text), width);
    case 'paragraphs':
      return block.texts
        .filter((text) => text !== '')
        .flatMap((text) => wrapText(cleanText(text), width));
    case 'list':
      return [
        ...(block.title === undefined ? [] : wrapText(cleanText(block.title), width)),
        ...block.items.flatMap((item) => wrapText(`- ${cleanText(item)}`, width, '  ')),
      ];
    case 'table':
      return [
        ...(block.caption === '' ? [] : wrapText(cleanText(block.caption), width)),
        ...fitTable(block, width),
      ];
    case 'picture':
      return [];
    case 'fold': {
      const inside = all
        ? writeText(untitled(block.blocks, block.title), { width, all }).trimEnd()
        : '';
      return inside === '' ? [] : [cleanText(block.title), '', ...inside.split('\n')];
    }
  }
}
