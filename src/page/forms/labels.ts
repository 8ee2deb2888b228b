/** What a field is called: the words of its path, and which of several alike it is. */
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { Words } from '../../tell/words.js';
import type { FormField, FormGroup, FormPart } from '../../scenario/input-forms.js';

type Path = readonly (string | number)[];

/** Places whose next step is a name that somebody gave. */
const maps = new Set([
  'menu',
  'ware',
  'racks.owned',
  'racks.families',
  'racks.measures',
  'supply.onHand',
  'supply.losses',
  'supply.suppliers',
  'supply.suppliers.*.quotes',
  'supply.saucers.fits',
  'supply.takeaway.cups',
  'supply.takeaway.lids',
  'storage.onTop',
  'storage.trigger',
  'suit.papers',
  'suit.ware',
  'suit.drinks',
  'suit.guests.instead',
  'alternatives',
  'alternatives.*.scale',
  'guests.dwell.bySize',
]);

const NAME_LENGTH = 40;

/** A path as words are kept by: * for a name, places in lists left out. */
export function generalPath(at: Path): string {
  let general = '';
  for (const key of at) {
    if (typeof key === 'number' || (general === 'washing.machines' && key === 'unlimited'))
      continue;
    general = maps.has(general) ? `${general}.*` : general === '' ? key : `${general}.${key}`;
  }
  return general;
}

/** The words of a path; null where there are none. */
export function wordsOf(at: Path, words: Words): string | null {
  const general = generalPath(at);
  if (Object.hasOwn(words.inputs, general)) return words.inputs[general]!;
  const { labels, making, toTakeAway } = words.forms;
  if (Object.hasOwn(labels, general)) return labels[general]!;
  const last = String(at.at(-1));
  if (at[0] !== 'suit' || !Object.hasOwn(making, last)) return null;
  return at.includes('takeaway') ? toTakeAway(making[last]!) : making[last]!;
}

/** The names and places in a path that tell the field from its like within its part. */
function whichOf(at: Path, owner: Path, words: Words): string {
  let general = '';
  const found: string[] = [];
  for (const [depth, key] of at.entries()) {
    const isName = maps.has(general);
    if (depth >= owner.length && (isName || typeof key === 'number')) {
      const place = words.inputPlaces[general];
      const text = shorten(cleanText(typeof key === 'number' ? String(key + 1) : key), NAME_LENGTH);
      found.push(place === undefined ? text : place(text));
    }
    if (typeof key !== 'number')
      general = isName ? `${general}.*` : general === '' ? key : `${general}.${key}`;
  }
  return found.join(', ');
}

/** What a field is called within its part. */
export function labelOf(
  { at, path, of }: Pick<FormField, 'at' | 'path' | 'of'>,
  part: Pick<FormPart, 'at'>,
  words: Words,
): string {
  // What an alternative changes is called what it is called in the house.
  const label = wordsOf(of ?? at, words) ?? cleanText(path);
  const which = whichOf(of ?? at, of === undefined ? part.at : [], words);
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
  const which = whichOf(at, part.at, words);
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
