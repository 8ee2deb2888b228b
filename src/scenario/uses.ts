/**
 * What names a ware or a drink, and how the scenario goes on without it: settings take another piece or do without,
 * quotes, counts and fall-backs of it go, and the shares of a menu add up again.
 */
import { wareClass } from '../catalogue/catalogue.js';
import { dotted, isWithin, type Path } from './path.js';
import { parsePath } from './raw-paths.js';
import { groupAt, isGroup, valueAt } from './tree.js';

export type Step =
  | { readonly kind: 'set'; readonly path: Path; readonly value: unknown }
  | { readonly kind: 'remove'; readonly path: Path };

const isWord = (value: unknown): value is string => typeof value === 'string';
const wordsIn = (value: unknown): string[] => (Array.isArray(value) ? value.filter(isWord) : []);
const remove = (path: Path): Step => ({ kind: 'remove', path });
const set = (path: Path, value: unknown): Step => ({ kind: 'set', path, value });

/** Maps by ware, and by drink. */
const MAPS = {
  ware: [
    'supply.onHand',
    'supply.losses',
    'storage.onTop',
    'storage.trigger',
    'suit.ware',
    'have.ware',
  ],
  menu: ['suit.drinks'],
} as const;

/** The pieces with another in place of one, or without it; each once. */
const swapped = (pieces: readonly string[], id: string, instead: string | null): string[] => [
  ...new Set(pieces.flatMap((one) => (one !== id ? [one] : instead === null ? [] : [instead]))),
];

function menuWithout(tree: unknown, id: string, instead: string | null): Step[] {
  return Object.entries(groupAt(tree, 'menu')).flatMap(([drink, own]): Step[] => {
    if (!isGroup(own)) return [];
    const setting = wordsIn(own['setting']);
    const backs = (Array.isArray(own['fallBacks']) ? own['fallBacks'] : []) as unknown[];
    const kept = backs.filter((one) => instead !== null || !wordsIn(one).includes(id));
    const path = ['menu', drink, 'fallBacks'];
    return [
      ...(setting.includes(id)
        ? [set(['menu', drink, 'setting'], swapped(setting, id, instead))]
        : []),
      ...(!backs.some((one) => wordsIn(one).includes(id))
        ? []
        : kept.length === 0
          ? [remove(path)]
          : [
              set(
                path,
                kept.map((one) => (isWord(one) ? one : swapped(wordsIn(one), id, instead))),
              ),
            ]),
    ];
  });
}

/** Lists by name in which the word stands; a list that would be empty goes as a whole. */
function listsWithout(tree: unknown, owner: Path, last: readonly string[], id: string): Step[] {
  return Object.keys(groupAt(tree, ...owner.map(String))).flatMap((key): Step[] => {
    const path = [...owner, key, ...last];
    const words = wordsIn(valueAt(tree, path));
    if (!words.includes(id)) return [];
    const rest = words.filter((one) => one !== id);
    return [rest.length === 0 ? remove([...owner, key]) : set(path, rest)];
  });
}

function supplyWithout(tree: unknown, id: string): Step[] {
  const quotes = Object.keys(groupAt(tree, 'supply', 'suppliers')).map((one) => [
    'supply',
    'suppliers',
    one,
    'quotes',
    id,
  ]);
  const own = ['supply', 'saucers', 'fits', id];
  return [
    ...[...quotes, own].filter((path) => valueAt(tree, path) !== undefined).map(remove),
    ...listsWithout(tree, ['supply', 'saucers', 'fits'], [], id).filter(
      ({ path }) => !isWithin(path, own),
    ),
  ];
}

function suitWithout(tree: unknown, id: string, instead: string | null): Step[] {
  const drinks = Object.entries(groupAt(tree, 'suit', 'drinks')).flatMap(([drink, own]): Step[] => {
    const path = ['suit', 'drinks', drink, 'vessel'];
    if (!isGroup(own) || own['vessel'] !== id) return [];
    return [instead === null ? remove(path) : set(path, instead)];
  });
  const pairs = Object.entries(groupAt(tree, 'suit', 'guests', 'instead'))
    .filter(([from, to]) => from === id || to === id)
    .map(([from]) => remove(['suit', 'guests', 'instead', from]));
  return [...drinks, ...pairs];
}

/** Changes of the alternatives and of the kinds of day; an alternative that was about it alone goes as a whole. */
const changesWithout = (tree: unknown, at: Path, instead: string | null): Step[] =>
  [['alternatives'], ['calendar', 'kinds']].flatMap((owner) =>
    Object.entries(groupAt(tree, ...owner)).flatMap(([name, own]) =>
      isGroup(own) ? changeWithout([...owner, name], own, at, instead) : [],
    ),
  );

function changeWithout(
  path: Path,
  own: Readonly<Record<string, unknown>>,
  at: Path,
  instead: string | null,
): Step[] {
  const id = String(at[1]);
  const changes = Object.entries(isGroup(own['change']) ? own['change'] : {});
  const scales = Object.keys(isGroup(own['scale']) ? own['scale'] : {});
  const isOf = (place: string): boolean => isWithin(parsePath(place) ?? [], at);
  const gone = changes.filter(([place]) => isOf(place));
  const unscaled = scales.filter(isOf);
  const lists =
    at[0] === 'ware'
      ? changes.filter(([place, value]) => !isOf(place) && wordsIn(value).includes(id))
      : [];
  const without = wordsIn(own['without']);
  const left = without.filter((place) => !isOf(place));
  const isEmpty =
    gone.length === changes.length && left.length === 0 && unscaled.length === scales.length;
  if (gone.length + lists.length + unscaled.length === 0 && left.length === without.length)
    return [];
  if (isEmpty && path[0] === 'alternatives' && own['once'] === undefined) return [remove(path)];
  const emptied = (key: string, all: number, off: readonly string[]): Step[] =>
    off.length > 0 && off.length === all
      ? [remove([...path, key])]
      : off.map((place) => remove([...path, key, place]));
  return [
    ...lists.map(([place, value]) =>
      set([...path, 'change', place], swapped(wordsIn(value), id, instead)),
    ),
    ...(left.length === without.length
      ? []
      : [left.length === 0 ? remove([...path, 'without']) : set([...path, 'without'], left)]),
    ...emptied(
      'change',
      changes.length,
      gone.map(([place]) => place),
    ),
    ...emptied('scale', scales.length, unscaled),
  ];
}

/** What of each collection stands for it; a collection that stood for nothing else goes. */
const collectionsWithout = (tree: unknown, id: string): Step[] =>
  Object.keys(groupAt(tree, 'collections')).flatMap((name): Step[] => {
    const path = ['collections', name, 'standsFor'];
    const stands = Object.keys(groupAt(tree, ...path));
    if (!stands.includes(id)) return [];
    return [remove(stands.length === 1 ? ['collections', name] : [...path, id])];
  });

/** The family's rack, where no other ware is of that family. */
function familyWithout(tree: unknown, id: string): Step[] {
  const familyOf = (one: string): unknown =>
    valueAt(tree, ['ware', one, 'family']) ??
    wareClass(String(valueAt(tree, ['ware', one, 'like'])))?.fields['family'] ??
    one;
  const family = familyOf(id);
  const path = ['racks', 'families', String(family)];
  const isShared = Object.keys(groupAt(tree, 'ware')).some(
    (one) => one !== id && familyOf(one) === family,
  );
  return isShared || valueAt(tree, path) === undefined ? [] : [remove(path)];
}

const shareOf = (value: unknown): number | null => {
  const found = /^\s*(\d+(?:\.\d+)?)\s*%\s*$/.exec(String(value));
  return found !== null ? Number(found[1]) : typeof value === 'number' ? value * 100 : null;
};

/** The other drinks take the share of one in proportion; none where shares change over the day. */
function sharesWithout(tree: unknown, id: string): Step[] {
  const shares = Object.entries(groupAt(tree, 'menu')).map(([drink, own]) => ({
    drink,
    share: isGroup(own) ? shareOf(own['share']) : null,
  }));
  const others = shares.filter(({ drink }) => drink !== id);
  const sum = others.reduce((all, { share }) => all + (share ?? 0), 0);
  if (sum === 0 || shares.some(({ share }) => share === null)) return [];
  // To a hundredth of a per cent; the first takes what rounding leaves.
  const rounded = others.map(({ share }) => Math.round((share! / sum) * 10_000));
  rounded[0]! += 10_000 - rounded.reduce((all, one) => all + one, 0);
  return others.flatMap(({ drink, share }, i) =>
    rounded[i] === share! * 100 ? [] : [set(['menu', drink, 'share'], `${rounded[i]! / 100} %`)],
  );
}

/**
 * The steps that take a ware or a drink out, the last of them itself.
 * @param tree without marks
 * @param at `ware.NAME` or `menu.NAME`; of any other place, it alone goes
 * @param instead the ware that takes its place in settings
 */
export function stepsWithout(tree: unknown, at: Path, instead: string | null = null): Step[] {
  const [top, name] = at;
  if (at.length !== 2 || (top !== 'ware' && top !== 'menu')) return [remove(at)];
  const id = String(name);
  const maps = MAPS[top]
    .map((owner) => [...owner.split('.'), id])
    .filter((path) => valueAt(tree, path) !== undefined)
    .map(remove);
  const rest =
    top === 'ware'
      ? [
          ...menuWithout(tree, id, instead),
          ...suitWithout(tree, id, instead),
          ...supplyWithout(tree, id),
          ...collectionsWithout(tree, id),
          ...familyWithout(tree, id),
        ]
      : [
          ...sharesWithout(tree, id),
          ...listsWithout(tree, ['supply', 'takeaway', 'cups'], ['drinks'], id),
        ];
  const all = [...rest, ...maps, ...changesWithout(tree, at, instead), remove(at)];
  // One that goes as a whole needs no step within it.
  const gone = all.filter(({ kind }) => kind === 'remove').map(({ path }) => path);
  return all.filter(
    ({ path }, i) =>
      !gone.some((one) => path.length > one.length && isWithin(path, one)) &&
      all.findIndex((other) => dotted(other.path) === dotted(path)) === i,
  );
}

/** The places that would change if it went. */
export const usesOf = (tree: unknown, at: Path): readonly Path[] =>
  stepsWithout(tree, at)
    .slice(0, -1)
    .map(({ path }) => path);
