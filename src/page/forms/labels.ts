/** What a field is called: the words of its path, and which of several alike it is. */
import { generalPath } from '../../scenario/name-maps.js';
import type { Path } from '../../scenario/path.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { whichOf, wordsOf } from '../../tell/input-name.js';
import type { Words } from '../../tell/words.js';
import type { FormField, FormGroup, FormPart } from '../../scenario/input-forms.js';

const NAME_LENGTH = 40;

/** What a field is called within its part. */
export function labelOf(
  { at, path, of }: Pick<FormField, 'at' | 'path' | 'of'>,
  part: Pick<FormPart, 'at'>,
  words: Words,
): string {
  // What an alternative changes is called what it is called in the house.
  const label = wordsOf(of ?? at, words) ?? cleanText(path);
  const which = whichOf(of ?? at, words, of === undefined ? part.at.length : 0);
  return which === '' ? label : words.forms.whichOf(label, which);
}

type Part = Pick<FormPart, 'at'>;

/** What can be added there, in words; null where the page does not offer it. */
export function titleOfAddition(
  { at }: { readonly at: Path },
  part: Part,
  words: Words,
): string | null {
  const { addable, whichOf: join } = words.forms;
  const general = generalPath(at);
  if (!Object.hasOwn(addable, general)) return null;
  const which = whichOf(at, words, part.at.length);
  return which === '' ? addable[general]! : join(addable[general]!, which);
}

/** What was added so, in words. */
export function titleOfEntry(at: Path, part: Part, words: Words): string | null {
  const own = titleOfAddition({ at }, part, words);
  if (own !== null) return own;
  const title = titleOfAddition({ at: at.slice(0, -1) }, part, words);
  const last = at.at(-1);
  return title === null
    ? null
    : `${title} ${typeof last === 'number' ? String(last + 1) : shorten(cleanText(String(last)), NAME_LENGTH)}`;
}

/** The word of a choice. */
export const choiceWord = (
  { word, name }: { readonly word: string; readonly name?: string },
  words: Words,
): string =>
  name === undefined
    ? Object.hasOwn(words.forms.choices, word)
      ? words.forms.choices[word]!
      : word
    : shorten(cleanText(name), NAME_LENGTH);

/** A part's name, shortened; a machine without one goes by its number. */
export const partName = ({ name, at }: Pick<FormPart, 'name' | 'at'>, words: Words): string => {
  const number = typeof at.at(-1) === 'number' ? String(Number(at.at(-1)) + 1) : null;
  const clean = shorten(cleanText(name), NAME_LENGTH);
  return number === null
    ? clean
    : clean === ''
      ? words.forms.unnamed(number)
      : `${number}. ${clean}`;
};

/** A place of the scenario as people know it: "Menu: Flat white", "Supply: Harbour Tableware". */
export function placeName(at: Path, groups: readonly FormGroup[], words: Words): string {
  for (const { id, parts } of groups)
    for (const part of parts)
      if (part.at.length > 0 && part.at.every((key, i) => key === at[i]))
        return words.forms.whichOf(words.forms.groups[id], partName(part, words));
  const group = groups.find(({ id }) => id === at[0]);
  const label = wordsOf(at, words) ?? cleanText(at.join('.'));
  return group === undefined ? label : words.forms.whichOf(words.forms.groups[group.id], label);
}
