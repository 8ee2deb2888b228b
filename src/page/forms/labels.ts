/** What a field is called: the words of its path, and which of several alike it is. */
import { generalPath } from '../../scenario/name-maps.js';
import type { Path } from '../../scenario/path.js';
import { cleanText, shorten } from '../../tell/clean-text.js';
import { whichOf, wordsOf } from '../../tell/input-name.js';
import * as english from '../../tell/english.js';
import type { FormField, FormGroup, FormPart } from '../../scenario/input-forms.js';

const NAME_LENGTH = 40;

/** What a field is called within its part. */
export function labelOf(
  { at, path, of }: Pick<FormField, 'at' | 'path' | 'of'>,
  part: Pick<FormPart, 'at'>,
): string {
  // What an alternative changes is called what it is called in the house.
  const label = wordsOf(of ?? at) ?? cleanText(path);
  const which = whichOf(of ?? at, of === undefined ? part.at.length : 0);
  return which === '' ? label : english.forms.whichOf(label, which);
}

type Part = Pick<FormPart, 'at'>;

/** What can be added there, in words; null where the page does not offer it. */
export function titleOfAddition({ at }: { readonly at: Path }, part: Part): string | null {
  const { addable, whichOf: join } = english.forms;
  const general = generalPath(at);
  if (!Object.hasOwn(addable, general)) return null;
  const which = whichOf(at, part.at.length);
  return which === '' ? addable[general]! : join(addable[general]!, which);
}

/** What was added so, in words. */
export function titleOfEntry(at: Path, part: Part): string | null {
  const own = titleOfAddition({ at }, part);
  if (own !== null) return own;
  const title = titleOfAddition({ at: at.slice(0, -1) }, part);
  const last = at.at(-1);
  return title === null
    ? null
    : `${title} ${typeof last === 'number' ? String(last + 1) : shorten(cleanText(String(last)), NAME_LENGTH)}`;
}

/** The word of a choice. */
export const choiceWord = ({
  word,
  name,
}: {
  readonly word: string;
  readonly name?: string;
}): string =>
  name === undefined
    ? Object.hasOwn(english.forms.choices, word)
      ? english.forms.choices[word]!
      : word
    : shorten(cleanText(name), NAME_LENGTH);

/** A part's name, shortened; a machine without one goes by its number. */
export const partName = ({ name, at }: Pick<FormPart, 'name' | 'at'>): string => {
  const number = typeof at.at(-1) === 'number' ? String(Number(at.at(-1)) + 1) : null;
  const clean = shorten(cleanText(name), NAME_LENGTH);
  return number === null
    ? clean
    : clean === ''
      ? english.forms.unnamed(number)
      : `${number}. ${clean}`;
};

/** A place of the scenario as people know it: "Menu: Flat white", "Supply: Harbour Tableware". */
export function placeName(at: Path, groups: readonly FormGroup[]): string {
  for (const { id, parts } of groups)
    for (const part of parts)
      if (part.at.length > 0 && part.at.every((key, i) => key === at[i]))
        return english.forms.whichOf(english.forms.groups[id], partName(part));
  const group = groups.find(({ id }) => id === at[0]);
  const label = wordsOf(at) ?? cleanText(at.join('.'));
  return group === undefined ? label : english.forms.whichOf(english.forms.groups[group.id], label);
}
