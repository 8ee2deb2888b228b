/** Two answers beside each other, value by value, and two texts word by word. */

/** A number, or a word, that is not the one that was found when it was worked out again. */
export interface Difference {
  /** Where it stands: `stock[0].pieces`, `letter, part "order"`. */
  readonly place: string;
  /** As the file has it, and as it was found; "nothing" where there is none. */
  readonly printed: string;
  readonly found: string;
}

const NOTHING = 'nothing';
const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const shown = (value: unknown): string =>
  value === undefined ? NOTHING : (JSON.stringify(value) ?? NOTHING);

/** Plain data; a key without a value is no key. */
export function valueDifferences(printed: unknown, found: unknown, place = ''): Difference[] {
  if (Array.isArray(printed) && Array.isArray(found))
    return Array.from({ length: Math.max(printed.length, found.length) }, (_, at) =>
      valueDifferences(printed[at], found[at], `${place}[${at}]`),
    ).flat();
  if (isGroup(printed) && isGroup(found))
    return [...new Set([...Object.keys(found), ...Object.keys(printed)])].flatMap((key) =>
      valueDifferences(printed[key], found[key], place === '' ? key : `${place}.${key}`),
    );
  return printed === found ? [] : [{ place, printed: shown(printed), found: shown(found) }];
}

/** Values at the ends of the tree. */
export const countValues = (value: unknown): number =>
  typeof value === 'object' && value !== null
    ? Object.values(value).reduce<number>((sum, one) => sum + countValues(one), 0)
    : 1;

const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  shy: '\u00AD',
};

/** The words of a piece of HTML, as somebody reads them. */
export const wordsOf = (html: string): string[] =>
  html
    .replace(/<(style|script)\b[\s\S]*?<\/\1>/gi, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(#x?)?(\w+);/g, (whole, number: string | undefined, name: string) =>
      number === undefined
        ? (NAMED[name] ?? whole)
        : String.fromCodePoint(parseInt(name, number === '#' ? 10 : 16)),
    )
    .split(/\s+/)
    .filter((word) => word !== '');

/** Words shown around the first that differs where words were added or taken away. */
const AROUND = 6;

export function wordDifferences(printed: string, found: string, place: string): Difference[] {
  const [was, is] = [wordsOf(printed), wordsOf(found)];
  if (was.length === is.length)
    return was.flatMap((word, at) =>
      word === is[at]
        ? []
        : [
            {
              place: `${place}, after "${was.slice(Math.max(0, at - AROUND), at).join(' ')}"`,
              printed: word,
              found: is[at]!,
            },
          ],
    );
  const at = was.findIndex((word, index) => word !== is[index]);
  const from = at < 0 ? was.length : at;
  const some = (words: readonly string[]): string =>
    words.slice(from, from + AROUND).join(' ') || NOTHING;
  return [{ place, printed: some(was), found: some(is) }];
}
