/**
 * What an answer says, as data. A question tells its answer once, as blocks; writers turn them into text for a
 * terminal (`write-text.ts`) or HTML for the letter and for print (`write-html.ts`), so no two of them can disagree.
 */
import type { Chart } from './charts/chart-table.js';
import type { ReportChart } from './html-picture.js';

/** Where a block or a column is shown; everywhere if it does not say. */
export type Only = 'text' | 'html';

export interface Column {
  readonly title: string;
  /** Figures stand to the right and never wrap; words may. */
  readonly as: 'words' | 'figures';
  /** Left out first where a terminal is too narrow for all columns. */
  readonly spare?: boolean;
  readonly only?: Only;
}

export interface TableBlock {
  readonly kind: 'table';
  readonly caption: string;
  readonly columns: readonly Column[];
  /** Cells in the order of `columns`; the first cell is the head of its row. */
  readonly rows: readonly (readonly string[])[];
  readonly totals?: readonly string[];
  readonly only?: Only;
}

export type Block =
  | {
      readonly kind: 'heading';
      readonly text: string;
      /** 1: the question; 2: a part of its answer. */
      readonly level: 1 | 2;
      readonly only?: Only;
    }
  | {
      readonly kind: 'paragraphs';
      readonly texts: readonly string[];
      /** `lead` is the answer itself, `alarm` stands out, `small` steps back. */
      readonly tone?: 'lead' | 'alarm' | 'small';
      readonly only?: Only;
    }
  | {
      readonly kind: 'list';
      readonly title?: string;
      readonly items: readonly string[];
      readonly only?: Only;
    }
  | TableBlock
  | {
      /** Charts to draw or drawings made already; a terminal shows none. */
      readonly kind: 'picture';
      readonly pictures: readonly (Chart | ReportChart)[];
      /** Small drawings stand side by side. */
      readonly together?: boolean;
      readonly only?: Only;
    }
  | {
      /** Details: folded in the letter; in a terminal only with `--all`. */
      readonly kind: 'fold';
      readonly title: string;
      readonly blocks: readonly Block[];
      readonly only?: Only;
    };

export const heading = (text: string, level: 1 | 2 = 1): Block => ({
  kind: 'heading',
  text,
  level,
});

export const paragraphs = (texts: readonly string[], tone?: 'lead' | 'alarm' | 'small'): Block => ({
  kind: 'paragraphs',
  texts,
  ...(tone === undefined ? {} : { tone }),
});

export const list = (items: readonly string[], title?: string): Block => ({
  kind: 'list',
  items,
  ...(title === undefined ? {} : { title }),
});

export const table = (parts: Omit<TableBlock, 'kind'>): Block => ({ kind: 'table', ...parts });

export const fold = (title: string, blocks: readonly Block[]): Block => ({
  kind: 'fold',
  title,
  blocks,
});

/** Nothing to show: no text, no items, no rows, no pictures. */
export function isEmpty(block: Block): boolean {
  switch (block.kind) {
    case 'heading':
      return block.text === '';
    case 'paragraphs':
      return block.texts.every((text) => text === '');
    case 'list':
      return block.items.length === 0;
    case 'table':
      return block.rows.length === 0;
    case 'picture':
      return block.pictures.length === 0;
    case 'fold':
      return block.blocks.every(isEmpty);
  }
}

/** The blocks that one kind of writer shows, in order; a table without the columns meant for the other. */
export const shownIn = (where: Only, blocks: readonly Block[]): Block[] =>
  blocks
    .filter((block) => (block.only === undefined || block.only === where) && !isEmpty(block))
    .map((block) => (block.kind === 'table' ? columnsFor(where, block) : block));

function columnsFor(where: Only, block: TableBlock): TableBlock {
  const kept = block.columns.flatMap(({ only }, at) =>
    only === undefined || only === where ? [at] : [],
  );
  return kept.length === block.columns.length ? block : withColumns(block, kept);
}

/** The table with only the columns of these numbers. */
export function withColumns(block: TableBlock, kept: readonly number[]): TableBlock {
  const pick = (cells: readonly string[]): string[] => kept.map((at) => cells[at] ?? '');
  return {
    ...block,
    columns: kept.map((at) => block.columns[at]!),
    rows: block.rows.map(pick),
    ...(block.totals === undefined ? {} : { totals: pick(block.totals) }),
  };
}
