/** The terminal, if there is one: how wide it is, and text laid out for it. */
import { PLAIN_WIDTH } from '../tell/write-text.js';
import { columnsOf } from '../tell/clean-text.js';
import { wrapText } from '../tell/format.js';

/** Columns of a stream's terminal; 100 where it is none. */
export const widthOf = (stream: { readonly columns?: number } = process.stdout): number =>
  Math.max(20, stream.columns ?? PLAIN_WIDTH);

/**
 * Lines broken between words so that none is wider than the terminal. Nothing is cut: names of files stay
 * whole, so that they can be copied, and other words that are too long go on in the next line.
 */
export const folded = (text: string, width: number, indent = ''): string =>
  text
    .split('\n')
    .map((line) => line.replace(/\S+/g, (word) => inPieces(word, width - indent.length)))
    .flatMap((line) => wrapText(line, width, indent, (word) => word))
    .join('\n');

function inPieces(word: string, most: number): string {
  if (/[/\\]/.test(word) || columnsOf(word) <= most) return word;
  const pieces = [''];
  for (const sign of word) {
    if (columnsOf(pieces.at(-1)! + sign) > most) pieces.push('');
    pieces[pieces.length - 1] += sign;
  }
  return pieces.join(' ');
}

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
