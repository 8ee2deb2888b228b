/** What a field of a scenario is called: in words where there are any, and which of several alike it is. */
import { generalPath, holdsNames } from '../scenario/name-maps.js';
import type { Path } from '../scenario/path.js';
import { cleanText, shorten } from './clean-text.js';
import * as english from './english.js';

export interface InputWords {
  /** What it is. */
  readonly label: string;
  /** What tells it from its like: names and positions; '' where it has none. */
  readonly which: string;
}

const NAME_LENGTH = 40;

/** The words of a field; null where there are none. */
export function wordsOf(at: Path): string | null {
  const general = generalPath(at);
  if (Object.hasOwn(english.fields, general)) return english.fields[general]!;
  // Whoever sells a set of vessels is asked the same as any supplier.
  if (at[0] === 'collections' && at.length > 2)
    return wordsOf(['supply', 'suppliers', ...at.slice(1)]);
  const { making, toTakeAway } = english.forms;
  const last = String(at.at(-1));
  if (at[0] !== 'suit' || !Object.hasOwn(making, last)) return null;
  return at.includes('takeaway') ? toTakeAway(making[last]!) : making[last]!;
}

/** The names and places in a path, from its step number `from` on, in words. */
export function whichOf(at: Path, from = 0): string {
  return at
    .flatMap((key, depth) => {
      const owner = at.slice(0, depth);
      if (depth < from || !(typeof key === 'number' || holdsNames(owner))) return [];
      const general = generalPath(owner);
      const known = Object.keys(english.places).find((start) => general.startsWith(start));
      const text = shorten(cleanText(typeof key === 'number' ? String(key + 1) : key), NAME_LENGTH);
      return [known === undefined ? text : english.places[known]!(text)];
    })
    .join(', ');
}

/**
 * @param path of the input in the scenario file, such as `washing.machines[0].cycle`
 * @returns null where the words know no such input
 */
export function inputWords(path: string): InputWords | null {
  const at = stepsOf(path);
  const label = wordsOf(at);
  return label === null ? null : { label, which: whichOf(at) };
}

/** The steps of a dotted path. */
const stepsOf = (path: string): Path =>
  path
    .split('.')
    .flatMap((part) => [
      part.replace(/(?:\[\d+\])+$/, ''),
      ...[...part.matchAll(/\[(\d+)\](?=(?:\[\d+\])*$)/g)].map(([, index]) => Number(index)),
    ]);

/** In one line: the words, else the path. */
export function inputName(path: string): string {
  const found = inputWords(path);
  if (found === null) return cleanText(path);
  return found.which === '' ? found.label : `${found.label}: ${found.which}`;
}
