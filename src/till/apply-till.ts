/**
 * A new scenario from a base scenario and a fit: the demand is replaced, all else and its comments stay.
 */
import { Pair, Scalar, isMap, isSeq, parseDocument } from 'yaml';
import type { Document, YAMLMap } from 'yaml';
import { didYouMean } from '../quantities/nearest.js';
import { parseClock, parseShare } from '../quantities/numbers.js';
import { setKinds } from './apply-kinds.js';
import { clock } from './clock.js';
import type { TillKinds } from './fit-kinds.js';
import type { TillFit } from './fit-till.js';
import type { DrinkGroup } from './items.js';
import type { DrinkShare } from './menu-shares.js';
import { menuShares } from './menu-shares.js';
import { shareMarks, sizesMark, spreadMark } from './marks.js';
import type { Outcome, TillFlaw } from './flaw.js';
import { fail, succeed } from './flaw.js';
import { field, mapUnder, marked, put, sourceOf, three } from './yaml-nodes.js';

export interface AppliedTill {
  /** The new scenario: YAML, or JSON where the base is JSON. */
  readonly text: string;
  /** What changed beyond the fit itself and should be looked at. */
  readonly notes: readonly string[];
}

function readBase(
  text: string,
): Outcome<{ document: Document; drinks: ReadonlyMap<string, number | null> }> {
  const document = parseDocument(text);
  const flaw = (path: TillFlaw['path'], rule: string, remedy: string): Outcome<never> =>
    fail({ about: 'base', path, value: undefined, rule, remedy });
  if (document.errors.length > 0 || !isMap(document.contents))
    return flaw([], 'is not a scenario', 'check it with cuptide check first');
  const menu: unknown = document.get('menu', true);
  if (!isMap(menu) || menu.items.length === 0)
    return flaw(
      ['menu'],
      'is missing',
      'give the base scenario a menu with the drinks that the map names',
    );
  const tree = menu.toJS(document) as Readonly<Record<string, unknown>>;
  const drinks = new Map(
    Object.entries(tree).map(([id, drink]) => {
      const share = field(drink, 'share');
      const parsed = parseShare(field(share, 'value') ?? share);
      return [id, parsed.ok ? parsed.value : null];
    }),
  );
  return succeed({ document, drinks });
}

/**
 * Drinks of the map that the base scenario's menu does not have; paths are those of the map. To be asked
 * before a long export is read.
 */
export function unknownDrinks(
  groups: readonly DrinkGroup[],
  baseText: string,
): readonly TillFlaw[] {
  const base = readBase(baseText);
  if (!base.ok) return base.flaws;
  const known = [...base.value.drinks.keys()];
  return groups.flatMap((group) =>
    group.drinks
      .filter((drink) => !base.value.drinks.has(drink))
      .map((drink) => ({
        about: 'map' as const,
        path: ['drinks', group.items[0]!],
        value: drink,
        rule: 'is not a drink of the base scenario',
        remedy: didYouMean(drink, known),
      })),
  );
}

function setHours(document: Document, root: YAMLMap, fit: TillFit, notes: string[]): void {
  const hours = field(document.toJS(), 'hours');
  const ends = [field(hours, 'from'), field(hours, 'to')].map((end) =>
    parseClock(field(end, 'value') ?? end),
  );
  const same = [fit.fromMinute, fit.toMinute].every(
    (minute, at) => ends[at]!.ok && ends[at]!.value === minute * 60_000,
  );
  if (same) return;
  const fresh = document.createNode(
    { from: clock(fit.fromMinute), to: clock(fit.toMinute) },
    { flow: true },
  ) as YAMLMap<unknown, Scalar>;
  for (const { value } of fresh.items) if (value) value.type = Scalar.QUOTE_DOUBLE;
  put(root, 'hours', fresh);
  notes.push(
    `Hours are now ${clock(fit.fromMinute)} to ${clock(fit.toMinute)}, as in the map; your base scenario has different ones. Check everything in it that goes by the clock (other loads, machine breakdowns).`,
  );
}

/** Arrivals by slot where the base had its own form of them, whose comments go with it. */
function setSlots(document: Document, arrivals: YAMLMap, fit: TillFit, source: string): void {
  const forms = ['slots', 'steps', 'peak'];
  const isForm = (pair: Pair): boolean => forms.includes(String(pair.key));
  const at = Math.max(0, arrivals.items.findIndex(isForm));
  if (at === 0) arrivals.commentBefore = null;
  const parties = marked(document, {
    value: fit.slots.map((slot) => three(slot.parties)),
    basis: 'measured',
    source,
  });
  parties.flow = false;
  const values: unknown = parties.get('value', true);
  if (isSeq(values)) values.flow = true;
  const slots = document.createNode({ every: `${fit.slotMinutes} min` }) as YAMLMap;
  slots.set('parties', parties);
  arrivals.items = arrivals.items.filter((pair) => !isForm(pair));
  arrivals.items.splice(at, 0, new Pair(document.createNode('slots'), slots));
}

function setMenu(
  document: Document,
  root: YAMLMap,
  shares: readonly DrinkShare[],
  source: string,
): void {
  const menu = mapUnder(document, root, 'menu');
  for (const [drink, mark] of shareMarks(shares, source))
    put(mapUnder(document, menu, drink), 'share', marked(document, mark));
}

/**
 * The base scenario with the demand of a fit: arrivals by slot, day factor, party sizes, one drink each
 * and menu shares, each marked as measured with its source. Second drinks, dwell and the share staying
 * in stay as they are in the base; a drink that no item stands for keeps its place with a share of 0.
 *
 * @param baseText YAML or JSON of a scenario.
 * @param kinds kinds of day that differ become those of the calendar; `fit` is then that of all others
 * Refused: no menu, or a drink of the map that is not on it.
 */
export function applyTill(
  baseText: string,
  fit: TillFit,
  kinds: TillKinds | null = null,
): Outcome<AppliedTill> {
  const flaws = unknownDrinks(fit.groups, baseText);
  const base = readBase(baseText);
  if (flaws.length > 0 || !base.ok) return fail(...flaws);
  const { document, drinks } = base.value;
  const root = document.contents as YAMLMap;
  const source = sourceOf(fit);
  const notes: string[] = [];

  setHours(document, root, fit, notes);
  const arrivals = mapUnder(document, root, 'arrivals');
  setSlots(document, arrivals, fit, source);
  put(arrivals, 'dayFactor', marked(document, spreadMark(fit, source)));

  const guests = mapUnder(document, root, 'guests');
  put(guests, 'partySize', marked(document, sizesMark(fit, source)));
  put(
    guests,
    'drinksEach',
    marked(document, {
      value: 1,
      basis: 'measured',
      source: `${source}; a party is counted by its drinks, one each`,
    }),
  );

  const shares = menuShares(fit.groups, drinks);
  setMenu(document, root, shares, source);
  const missing = shares.filter((drink) => !drink.onTill).map((drink) => drink.drink);
  if (missing.length > 0)
    notes.push(
      `The till has no item for ${missing.join(', ')}, so the share on the menu is 0 %. If you do sell it, add its item to the map.`,
    );
  if (kinds !== null && kinds.fitted.length > 0)
    notes.push(...setKinds(document, root, kinds, drinks));
  return succeed({ text: write(baseText, document), notes });
}

/** JSON stays JSON; YAML keeps its lines unfolded. */
function write(baseText: string, document: Document): string {
  return baseText.trimStart().startsWith('{') && isJson(baseText)
    ? `${JSON.stringify(document.toJS(), null, 2)}\n`
    : document.toString({ lineWidth: 0 });
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
