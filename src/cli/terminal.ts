/** The terminal, if there is one: how wide it is, and text laid out for it. */
import { PLAIN_WIDTH } from '../tell/write-text.js';
import { columnsOf } from '../tell/clean-text.js';
import { wrapText } from '../tell/format.js';

/** Columns of a stream's terminal; 100 where it is none. */
export const widthOf = (stream: { readonly columns?: number } = process.stdout): number =>
  Math.max(20, stream.columns ?? PLAIN_WIDTH);

/** Lines broken between words so that none is wider than the terminal. */
export const folded = (text: string, width: number, indent = ''): string =>
  text
    .split('\n')
    .flatMap((line) => wrapText(line, width, indent))
    .join('\n');

/** Words in as many columns as fit, reading downwards. */
export function inColumns(words: readonly string[], width: number): string {
  const wide = Math.max(...words.map(columnsOf)) + 3;
  const across = Math.max(1, Math.floor((width - 2) / wide));
  const down = Math.ceil(words.length / across);
  return Array.from({ length: down }, (_, row) =>
    Array.from({ length: across }, (_none, column) => words[column * down + row] ?? '')
      .map((word) => word + ' '.repeat(wide - columnsOf(word)))
      .join('')
      .trimEnd(),
  )
    .map((line) => `  ${line}`)
    .join('\n');
}
