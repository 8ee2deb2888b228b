/** What an input is, in words where there are any. */
import { cleanText, shorten } from './clean-text.js';
import type { Words } from './words.js';

export interface InputWords {
  /** What it is. */
  readonly label: string;
  /** What tells it from its like: names and positions; '' where it has none. */
  readonly which: string;
}

const NAME_LENGTH = 40;
/** A name on the way to the input, then whatever its words call a place in a list or a size. */
const POSITION = /\[(\d+)\]/g;

/**
 * @param path of the input in the scenario file, such as `washing.machines[0].cycle`
 * @returns null where the words know no such input
 */
export function inputWords(path: string, words: Words): InputWords | null {
  const positions = [...path.matchAll(POSITION)].map(([, index]) => Number(index) + 1);
  const parts = path
    .replaceAll(POSITION, '')
    .replace(/^washing\.machines\.unlimited(?=\.)/, 'washing.machines')
    .split('.');
  const found = patternOf(parts, words);
  if (found === null) return null;
  const names = parts
    .filter((_, i) => found[i] === '*')
    .map((name) => shorten(cleanText(name), NAME_LENGTH));
  const say = words.inputPlaces;
  const general = found.join('.');
  const place = (text: string): string => {
    const list = Object.keys(say).find((start) => general.startsWith(start));
    return list === undefined ? text : say[list]!(text);
  };
  const places = general.endsWith('bySize.*')
    ? names.map(place)
    : [...names, ...positions.map((position) => place(String(position)))];
  return { label: words.inputs[general]!, which: places.join(', ') };
}

/** The key of the words that the path goes by, in parts: where it has `*`, the path has a name. */
function patternOf(parts: readonly string[], words: Words): readonly string[] | null {
  const path = parts.join('.');
  if (Object.hasOwn(words.inputs, path)) return parts;
  const fits = (pattern: readonly string[]): boolean =>
    pattern.length === parts.length &&
    pattern.every((part, i) => part === '*' || part === parts[i]);
  return (
    Object.keys(words.inputs)
      .map((key) => key.split('.'))
      .find(fits) ?? null
  );
}

/** In one line: the words, else the path. */
export function inputName(path: string, words: Words): string {
  const found = inputWords(path, words);
  if (found === null) return cleanText(path);
  return found.which === '' ? found.label : `${found.label}: ${found.which}`;
}
