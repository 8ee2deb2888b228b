/**
 * A new scenario from a base scenario and a fit: the demand is replaced, all else and its comments stay.
 */
import { Pair, Scalar, isAlias, isMap, isNode, isSeq, parseDocument } from 'yaml';
import type { Document, Node, YAMLMap } from 'yaml';
import { didYouMean } from '../quantities/nearest.js';
import { parseClock, parseShare } from '../quantities/numbers.js';
import { clock } from './clock.js';
import type { TillFit } from './fit-till.js';
import type { DrinkGroup } from './items.js';
import type { DrinkShare } from './menu-shares.js';
import { menuShares, percents } from './menu-shares.js';
import type { Outcome, TillFlaw } from './flaw.js';
import { fail, succeed } from './flaw.js';

export interface AppliedTill {
  /** The new scenario: YAML, or JSON where the base is JSON. */
  readonly text: string;
  /** What changed beyond the fit itself and should be looked at. */
  readonly notes: readonly string[];
}

/** Where the figures of a fit come from, as written beside each of them in the scenario. */
export function sourceOf(fit: TillFit): string {
  return `till export ${fit.file}, ${fit.from}–${fit.to}, ${fit.days} days (${fit.kind})`;
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

function field(value: unknown, key: string): unknown {
  return value !== null && typeof value === 'object' && Object.hasOwn(value, key)
    ? (value as Record<string, unknown>)[key]
    : undefined;
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

/** Puts a node in a map, keeping the comments that stood at the one it replaces. */
function put(map: YAMLMap, key: string, node: Node): void {
  const old: unknown = map.get(key, true);
  if (isNode(old)) {
    if (old.comment) node.comment = old.comment;
    if (old.commentBefore) node.commentBefore = old.commentBefore;
  }
  map.set(key, node);
}

/** The map under a key, made if it is not there or holds no fields of its own. */
function mapUnder(document: Document, parent: YAMLMap, key: string): YAMLMap {
  let node: unknown = parent.get(key, true);
  if (isAlias(node)) {
    // An alias is the same thing in two places; only this one is to change.
    const copy = node.resolve(document)?.clone();
    if (isMap(copy)) {
      delete copy.anchor;
      parent.set(key, copy);
      node = copy;
    }
  }
  if (isMap(node) && !node.has('value')) return node;
  const fresh = document.createNode({}) as YAMLMap;
  parent.set(key, fresh);
  return fresh;
}

interface Marked {
  readonly value: unknown;
  readonly basis: 'measured' | 'assumed';
  readonly range?: readonly [number, number];
  readonly source: string;
}

function marked(document: Document, mark: Marked): YAMLMap {
  return document.createNode(mark, { flow: true }) as YAMLMap;
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

const three = (value: number): number => Number(value.toFixed(3));

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
  const written = percents(shares.map((drink) => drink.share));
  shares.forEach(({ drink, divided, onTill }, at) => {
    const text = onTill ? source : `not on the map of the ${source}`;
    const mark: Marked =
      divided === null
        ? { value: written[at], basis: 'measured', source: text }
        : { value: written[at], basis: 'assumed', source: `${text}; ${divided}` };
    put(mapUnder(document, menu, drink), 'share', marked(document, mark));
  });
}

/**
 * The base scenario with the demand of a fit: arrivals by slot, day factor, party sizes, one drink each
 * and menu shares, each marked as measured with its source. Second drinks, dwell and the share staying
 * in stay as they are in the base; a drink that no item stands for keeps its place with a share of 0.
 *
 * @param baseText YAML or JSON of a scenario.
 * Refused: no menu, or a drink of the map that is not on it.
 */
export function applyTill(baseText: string, fit: TillFit): Outcome<AppliedTill> {
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
  const { cv, low, high } = fit.dayFactor;
  put(
    arrivals,
    'dayFactor',
    marked(document, {
      value: three(cv),
      basis: 'measured',
      range: [three(low), three(high)],
      source,
    }),
  );

  const guests = mapUnder(document, root, 'guests');
  const sizes = percents(fit.partySize).flatMap((percent, at) =>
    percent === '0 %' ? [] : [[at + 1, percent] as const],
  );
  const how = fit.sizesBy === 'sums' ? `; sizes worked out from drinks and tickets a slot` : '';
  put(
    guests,
    'partySize',
    marked(document, { value: new Map(sizes), basis: 'measured', source: `${source}${how}` }),
  );
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
