/**
 * Drinks a starter knows, and what any other drink may be served in. Times and weights are common practice, no source.
 */
import { nearest } from '../quantities/nearest.js';
import { plain, refused, type Read } from './starter-answers.js';

interface Vessel {
  readonly name: string;
  /** The pieces that a drink in it takes from the shelf. */
  readonly setting: readonly string[];
  /** Other words for it. */
  readonly also: readonly string[];
}

const underCup = ['saucer', 'teaspoon'];
const underLarge = ['large-saucer', 'teaspoon'];

/** What a drink is served in. The pieces are ids of ware in the scenario. */
export const vessels = {
  'espresso-cup': {
    name: 'espresso cup',
    setting: ['espresso-cup', 'small-saucer', 'teaspoon'],
    also: ['demitasse', 'tiny cup'],
  },
  'small-cup': { name: 'small cup', setting: ['small-cup', ...underCup], also: ['tulip cup'] },
  'medium-cup': {
    name: 'medium cup',
    setting: ['medium-cup', ...underCup],
    also: ['cup', 'teacup'],
  },
  'large-cup': {
    name: 'large cup',
    setting: ['large-cup', ...underLarge],
    also: ['bowl', 'big cup'],
  },
  mug: { name: 'mug', setting: ['mug', 'teaspoon'], also: [] },
  'small-glass': {
    name: 'small glass',
    setting: ['small-glass', ...underCup],
    also: ['shot glass', 'rocks glass'],
  },
  'latte-glass': {
    name: 'latte glass',
    setting: ['latte-glass', ...underLarge],
    also: ['tall glass', 'hot glass'],
  },
  tumbler: { name: 'tumbler', setting: ['tumbler'], also: ['glass', 'cold glass', 'water glass'] },
} as const satisfies Readonly<Record<string, Vessel>>;

export type VesselId = keyof typeof vessels;

/** A class of ware, what of it is set otherwise, and a word on it. */
type Piece = readonly [like: string, more: string, note: string];

/**
 * What the pieces above are like; in the order of a file. The wells are assumed, no source: 2.5 to 7 mm wider than the feet
 * of the typical cups that go on them, as no one saucer takes a small cup and a large one.
 */
export const starterWare: Readonly<Record<string, Piece>> = {
  'espresso-cup': ['espresso-cup', '', ''],
  'small-cup': ['small-cup', '', ''],
  'medium-cup': ['medium-cup', '', ''],
  'large-cup': ['large-cup', '', ''],
  mug: ['mug', '', 'needs no saucer'],
  'small-glass': ['small-glass', '', ''],
  'latte-glass': ['latte-glass', '', ''],
  tumbler: ['tumbler', '', ''],
  'small-saucer': saucer(41, 'for espresso cups'),
  saucer: saucer(53, 'for small and medium cups'),
  'large-saucer': saucer(64, 'for large cups and tall glasses'),
  teaspoon: ['teaspoon', '', ''],
};

/** @param wellMm of the hollow that takes the foot */
function saucer(wellMm: number, note: string): Piece {
  return ['saucer', `, well: { value: ${wellMm} mm, basis: assumed }`, note];
}

export interface StarterDrink {
  readonly id: string;
  readonly name: string;
  readonly vessel: VesselId;
  readonly makingS: number;
  /** How much of it is ordered beside the others, before the owner corrects it. */
  readonly weight: number;
}

type Row = readonly [
  name: string,
  vessel: VesselId,
  makingS: number,
  weight: number,
  ...also: string[],
];

const rows: readonly Row[] = [
  [
    'Espresso',
    'espresso-cup',
    30,
    10,
    'expresso',
    'double espresso',
    'doppio',
    'ristretto',
    'short black',
  ],
  ['Macchiato', 'espresso-cup', 40, 4, 'espresso macchiato', 'short macchiato'],
  ['Piccolo', 'small-glass', 45, 6, 'piccolo latte'],
  ['Cortado', 'small-glass', 45, 6, 'gibraltar'],
  ['Flat white', 'medium-cup', 55, 28],
  ['Cappuccino', 'medium-cup', 55, 22, 'capp', 'cappucino', 'capuccino'],
  ['Latte', 'large-cup', 60, 18, 'caffe latte', 'cafe latte', 'cafe au lait', 'milk coffee'],
  ['Mocha', 'large-cup', 70, 8, 'moca', 'caffe mocha', 'mochaccino'],
  ['Long black', 'medium-cup', 40, 12, 'americano', 'cafe americano', 'lungo'],
  [
    'Black coffee',
    'medium-cup',
    40,
    14,
    'filter',
    'filter coffee',
    'drip coffee',
    'batch brew',
    'coffee',
  ],
  ['Matcha latte', 'medium-cup', 60, 6, 'matcha'],
  ['Chai latte', 'mug', 50, 6, 'chai'],
  ['Tea', 'mug', 25, 12, 'black tea', 'green tea', 'herbal tea', 'pot of tea'],
  ['Hot chocolate', 'mug', 50, 8, 'cocoa', 'hot choc'],
  ['Iced coffee', 'tumbler', 50, 8, 'iced latte', 'cold brew', 'iced americano'],
  ['Iced tea', 'tumbler', 25, 6],
  ['Juice', 'tumbler', 20, 8, 'orange juice', 'fresh juice'],
  ['Soft drink', 'tumbler', 15, 6, 'lemonade', 'soda', 'cola'],
];

const slug = (text: string): string =>
  plain(text)
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);

/** Drinks a starter knows, in the order they are offered. */
export const starterDrinks: readonly StarterDrink[] = rows.map(
  ([name, vessel, makingS, weight]) => ({ id: slug(name), name, vessel, makingS, weight }),
);

const byName = new Map<string, StarterDrink>(
  rows.flatMap(([name, , , , ...also], i) =>
    [name, ...also].map((one) => [plain(one), starterDrinks[i]!] as const),
  ),
);
const byVesselName = new Map<string, VesselId>(
  (Object.keys(vessels) as VesselId[]).flatMap((id) =>
    [vessels[id].name, ...vessels[id].also].map((one) => [one, id] as const),
  ),
);

/** Names of what a drink may be served in, as people are shown them. */
export const vesselNames: readonly string[] = Object.values(vessels).map(({ name }) => name);

/** The vessel that a text means ("a big cup", "3" of the list); null if none. */
export function vesselOf(text: string): VesselId | null {
  const said = plain(text).replace(/^(an?|the|in)\s+/g, '');
  const number = /^\d$/.test(said) ? vesselNames[Number(said) - 1] : undefined;
  const name = number ?? nearest(said, byVesselName.keys());
  return name === null ? null : byVesselName.get(name)!;
}

/** In shorter names a letter or two make another drink: mocha and matcha. */
const LONG_ENOUGH_FOR_SLIPS = 8;

/** The known drink a name means, spelling slips forgiven; null if none. */
function drinkOf(name: string): StarterDrink | null {
  const said = plain(name);
  const exact = byName.get(said);
  if (exact !== undefined) return exact;
  const near = said.length < LONG_ENOUGH_FOR_SLIPS ? null : nearest(said, byName.keys());
  return near !== null && near[0] === said[0] && Math.abs(near.length - said.length) <= 2
    ? byName.get(near)!
    : null;
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

export type ReadMenu =
  | Read<readonly StarterDrink[]>
  /** Drinks that are not known, and of which nobody has said what they are served in. */
  | { readonly ok: false; readonly why: string; readonly unserved: readonly string[] };

/**
 * A menu as typed: names with commas between. A drink that is not known is one all the same once it is said what it is
 * served in, in the text ("chai in a mug") or beside it.
 * @param served by name, what drinks of the text are served in
 */
export function readMenu(text: string, served: Readonly<Record<string, VesselId>> = {}): ReadMenu {
  const parts = text
    .split(/[,;\n]+|\s+and\s+|\s*&\s*/)
    .map((part) => part.replace(/^[\s*•-]+/, '').trim())
    .filter((part) => part !== '');
  if (parts.length === 0) return refused('names no drink');
  const menu = new Map<string, StarterDrink>();
  const unserved: string[] = [];
  for (const part of parts) {
    const [, name = part, where] = /^(.+?)(?:\s+(?:served )?in\s+|\s*:\s*)(.+)$/.exec(part) ?? [];
    const said = Object.hasOwn(served, name) ? served[name]! : null;
    const vessel = where === undefined ? said : vesselOf(where);
    const known = drinkOf(name);
    if (where !== undefined && vessel === null)
      return refused(`says "${where}", which is none of ${vesselNames.join(', ')}`);
    if (known === null && vessel === null) unserved.push(name);
    else {
      const drink = made(known, part, name, vessel, plain(where ?? ''));
      if (drink.id === '') return refused(`names "${part}", which has no letter`);
      menu.set(drink.id, drink);
    }
  }
  return unserved.length > 0
    ? {
        ...refused(
          `names ${unserved.map((name) => `"${name}"`).join(', ')}; say what it is served in, such as "${unserved[0]} in a mug"`,
        ),
        unserved,
      }
    : { ok: true, value: [...menu.values()] };
}

/** A hot drink in "a glass" comes in one made for heat. */
function made(
  known: StarterDrink | null,
  typed: string,
  name: string,
  vessel: VesselId | null,
  where: string,
): StarterDrink {
  if (known === null)
    return { id: slug(name), name: capital(name), vessel: vessel!, makingS: 50, weight: 8 };
  const hotInGlass =
    vessel === 'tumbler' && /^(an? )?glass$/.test(where) && known.vessel !== 'tumbler';
  const taken = vessel === null ? known.vessel : hotInGlass ? 'latte-glass' : vessel;
  return taken === known.vessel
    ? known
    : { ...known, id: slug(typed), name: capital(typed), vessel: taken };
}
