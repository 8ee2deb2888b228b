/** Text for people on stdout: names from files and the command line never move the cursor or colour the screen. */
import { harmless, shorten } from '../tell/clean-text.js';
import { folded, widthOf } from './terminal.js';

/** Every line without control characters. */
export const harmlessLines = (text: string): string =>
  text
    .split(/\r?\n/)
    .map((line) => harmless(line))
    .join('\n');

export const print = (text: string): void => void process.stdout.write(harmlessLines(text));

/** Sentences, each on lines no wider than the terminal. */
export const say = (text: string): void =>
  void process.stdout.write(`${folded(harmlessLines(text), widthOf(), '  ')}\n`);

/** Longer words are nobody's to read: they are cut. */
const LONGEST_WORD = 300;

/** What went wrong, likewise, on stderr. */
export const complain = (text: string): void => {
  const readable = harmlessLines(text).replace(/\S{300,}/g, (word) => shorten(word, LONGEST_WORD));
  process.stderr.write(`${folded(readable, widthOf(process.stderr), '  ')}\n`);
};

/**
 * An answer as one line of JSON, or as text with the files that were written.
 * @param json null: people read it
 */
export function printAnswer(
  json: unknown,
  text: () => string,
  files: readonly { readonly path: string }[] = [],
): void {
  if (json !== null) process.stdout.write(`${JSON.stringify(json)}\n`);
  else
    print(
      `${text()}${files.length === 0 ? '' : `\nWritten:\n${files.map(({ path }) => `  ${path}\n`).join('')}`}`,
    );
}
