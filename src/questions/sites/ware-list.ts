/**
 * One ware list for all sites: which kinds are used where, and the fewest kinds with which every drink of every site
 * still has a whole setting, its own or one of its fall-backs.
 */
import type { NamedWare } from './site-answer.js';
import type { SizedSite } from './chain.js';

export interface WareList {
  readonly kinds: readonly {
    readonly ware: string;
    readonly sites: number;
    readonly pieces: number;
  }[];
  /** Null: more kinds than can be searched through. */
  readonly fewest: {
    readonly ware: readonly string[];
    /** Kinds that could go. */
    readonly without: readonly string[];
    /** Drinks that then take a fall-back, each once. */
    readonly changed: readonly string[];
  } | null;
}

/** Sets of kinds are numbers of so many bits, and all may be looked at. */
const MOST_KINDS = 20;

export function wareListOf(sites: readonly SizedSite[], ware: readonly NamedWare[]): WareList {
  const kinds = ware
    .map(({ id }) => {
      const used = sites.filter(({ row }) => (row.pieces[id] ?? 0) > 0);
      return {
        ware: id,
        sites: used.length,
        pieces: used.reduce((sum, { row }) => sum + row.pieces[id]!, 0),
      };
    })
    .filter(({ pieces }) => pieces > 0);
  const ids = kinds.map((kind) => kind.ware);
  return { kinds, fewest: ids.length > MOST_KINDS ? null : fewestOf(sites, ids) };
}

/** A drink as its settings: each the set of kinds that it takes, the one wanted first. */
interface Drink {
  readonly name: string;
  readonly settings: readonly number[];
}

function fewestOf(sites: readonly SizedSite[], ids: readonly string[]): WareList['fewest'] {
  const drinks = drinksOf(sites, ids);
  const fits = (set: number, kinds: number): boolean => (set & ~kinds) === 0;
  const pieces = ids.map((id) => sites.reduce((sum, { row }) => sum + (row.pieces[id] ?? 0), 0));
  const of = (kinds: number): number[] =>
    ids.flatMap((_, bit) => ((kinds >> bit) & 1 ? [bit] : []));
  const kept = (kinds: number): number => of(kinds).reduce((sum, bit) => sum + pieces[bit]!, 0);
  const all = (1 << ids.length) - 1;
  let best = all;
  for (let kinds = 0; kinds < all; kinds += 1) {
    const fewer = countOf(kinds) - countOf(best);
    if (fewer > 0 || !drinks.every(({ settings }) => settings.some((set) => fits(set, kinds))))
      continue;
    // Of as few kinds, those that are most used already: then the least changes.
    if (fewer < 0 || kept(kinds) > kept(best)) best = kinds;
  }
  return {
    ware: of(best).map((bit) => ids[bit]!),
    without: ids.filter((_, bit) => ((best >> bit) & 1) === 0),
    changed: [
      ...new Set(
        drinks.filter(({ settings }) => !fits(settings[0]!, best)).map(({ name }) => name),
      ),
    ],
  };
}

function countOf(set: number): number {
  let count = 0;
  for (let left = set; left !== 0; left &= left - 1) count += 1;
  return count;
}

/** Every different drink of the sites that is served in ware. */
function drinksOf(sites: readonly SizedSite[], ids: readonly string[]): Drink[] {
  const setOf = (setting: readonly string[]): number =>
    setting.reduce((set, id) => (ids.includes(id) ? set | (1 << ids.indexOf(id)) : set), 0);
  const found = new Map<string, Drink>();
  for (const { site } of sites)
    for (const [id, drink] of Object.entries(site.opened.scenario.menu)) {
      const own = setOf(drink.setting);
      if (own === 0) continue;
      const settings = [
        own,
        // A paper cup is no ware.
        ...(drink.fallBacks ?? []).filter((one) => one.length > 0).map(setOf),
      ];
      found.set(`${id} ${settings.join()}`, { name: id, settings });
    }
  return [...found.values()];
}
