/** Places of a scenario whose next step is a name that somebody gave, and paths with these names left out. */
import type { Path } from './path.js';

/** Held against the schema by a test; `*` stands for a name further up. */
export const NAME_MAPS: readonly string[] = [
  'alternatives',
  'alternatives.*.change',
  'alternatives.*.scale',
  'collections',
  'collections.*.standsFor',
  'calendar.kinds',
  'calendar.kinds.*.change',
  'calendar.kinds.*.scale',
  'guests.dwell.bySize',
  'have.machines',
  'have.racks',
  'have.ware',
  'menu',
  'racks.families',
  'racks.measures',
  'racks.owned',
  'storage.onTop',
  'storage.trigger',
  'suit.drinks',
  'suit.guests.instead',
  'suit.papers',
  'suit.ware',
  'supply.losses',
  'supply.onHand',
  'supply.saucers.fits',
  'supply.suppliers',
  'supply.suppliers.*.quotes',
  'supply.takeaway.cups',
  'supply.takeaway.lids',
  'ware',
];
const known = new Set(NAME_MAPS);

/** A path as fields are known by: `*` for a name, places in lists left out, unlimited machines as those of a list. */
export function generalPath(at: Path): string {
  let general = '';
  for (const key of at) {
    if (typeof key === 'number' || (general === 'washing.machines' && key === 'unlimited'))
      continue;
    general = known.has(general) ? `${general}.*` : general === '' ? key : `${general}.${key}`;
  }
  return general;
}

/** Whether the next step of a path is a name. */
export const holdsNames = (at: Path): boolean => known.has(generalPath(at));

/** The keys of a marked value. */
export const MARK_KEYS: readonly string[] = ['value', 'basis', 'range', 'source'];

/**
 * Whether a group at `at` is a value with its basis. Among names `value` may be one of them: there it is a mark
 * only if a basis stands beside it, and nothing else.
 */
export function isMark(group: Readonly<Record<string, unknown>>, at: Path): boolean {
  if (!Object.hasOwn(group, 'value')) return false;
  return (
    !holdsNames(at) ||
    (Object.hasOwn(group, 'basis') && Object.keys(group).every((key) => MARK_KEYS.includes(key)))
  );
}
