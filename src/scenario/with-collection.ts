/** A scenario in which the vessels of a collection stand in for cups and glasses of the menu: a changed copy of the file's tree. */
import type { CollectionsSlice } from '../ordering/collections-schema.js';
import type { Vessel } from '../ordering/vessels-file.js';
import { didYouMean } from '../quantities/nearest.js';
import { amountText } from '../quantities/money.js';
import { nameOf } from '../quantities/name.js';
import { parsePrice, priceMinor } from '../quantities/price.js';
import { problemAt, type Flaw } from './problems.js';
import { rawValueAt, withoutRaw, withRawValue } from './raw-paths.js';
import type { Scenario } from './scenario.js';
import { isGroup } from './tree.js';

type Collection = CollectionsSlice[string];

/** Measures that belong to the piece itself, so that none of the old one may stay. */
const OWN = [
  'name',
  'price',
  'brim',
  'rim',
  'rimAcross',
  'foot',
  'well',
  'height',
  'handle',
  'handleWidth',
  'mass',
  'colour',
  'perRack',
  'profile',
];

/** Names of a collection that are not cups or glasses of the menu, or not in its table. */
export function collectionFlaws(
  { ware }: Pick<Scenario, 'ware'>,
  id: string,
  { standsFor }: Collection,
  vessels: readonly Vessel[] | null,
): Flaw[] {
  const cups = Object.keys(ware).filter((one) => ['cup', 'glass'].includes(ware[one]!.shape ?? ''));
  return Object.entries(standsFor).flatMap(([cup, vessel]): Flaw[] => {
    const path = ['collections', id, 'standsFor', cup];
    if (!cups.includes(cup))
      return [
        {
          ...problemAt(path, cup, 'is not a cup or glass of this scenario', didYouMean(cup, cups)),
          onKey: true,
        },
      ];
    const known = vessels?.map((one) => one.id);
    return known === undefined || known.includes(vessel)
      ? []
      : [
          problemAt(
            path,
            vessel,
            'is not in the table of the collection',
            didYouMean(vessel, known),
          ),
        ];
  });
}

/** The tree of the file with the collection in it; names have been checked. */
export function withCollection(
  raw: unknown,
  scenario: Scenario,
  id: string,
  collection: Collection,
  vessels: readonly Vessel[],
): unknown {
  const of = (vessel: string): Vessel => vessels.find((one) => one.id === vessel)!;
  const standsFor = new Map(
    Object.entries(collection.standsFor).map(([cup, vessel]) => [cup, of(vessel)]),
  );
  const isSaucer = (ware: string): boolean => scenario.ware[ware]?.shape === 'saucer';
  const served = (setting: readonly string[]): string[] => {
    const vessel = setting.flatMap((one) => standsFor.get(one) ?? [])[0];
    return setting.flatMap((one) => {
      const other = standsFor.get(one);
      if (other !== undefined) return [other.id];
      return vessel !== undefined && isSaucer(one) ? (vessel.saucer ?? []) : [one];
    });
  };
  const menu = Object.entries(scenario.menu).map(([drink, { setting, fallBacks = [] }]) => {
    const [first, ...others] = distinct([setting, ...fallBacks].map(served));
    return { drink, setting: first!, fallBacks: others };
  });
  const used = new Set(menu.flatMap((one) => [one.setting, ...one.fallBacks]).flat());
  const gone = Object.keys(scenario.ware).filter(
    (one) => standsFor.has(one) || (isSaucer(one) && !used.has(one)),
  );

  let tree = ['alternatives', 'collections'].reduce((one, key) => withoutRaw(one, [key]), raw);
  const bases = new Map<string, string>();
  for (const [cup, vessel] of standsFor) {
    if (!bases.has(vessel.id)) bases.set(vessel.id, cup);
    const saucer = gone.find(isSaucer) ?? Object.keys(scenario.ware).find(isSaucer);
    if (vessel.saucer !== null && !bases.has(vessel.saucer)) bases.set(vessel.saucer, saucer ?? '');
  }
  const pieces = Object.fromEntries(
    [...bases].map(([vessel, base]) => [
      vessel,
      pieceOf(rawValueAt(raw, ['ware', base]), of(vessel), scenario),
    ]),
  );
  const kept = rawValueAt(raw, ['ware']) as Readonly<Record<string, unknown>>;
  tree = withRawValue(tree, ['ware'], {
    ...pieces,
    ...Object.fromEntries(Object.entries(kept).filter(([one]) => !gone.includes(one))),
  });
  for (const { drink, setting, fallBacks } of menu) {
    tree = withRawValue(tree, ['menu', drink, 'setting'], setting);
    tree = withRawValue(
      tree,
      ['menu', drink, 'fallBacks'],
      fallBacks.map((one) => (one.length === 0 ? 'takeaway' : one)),
    );
  }
  const renamed = new Map([...standsFor].map(([cup, vessel]) => [cup, vessel.id]));
  return withSupply(withNames(tree, scenario, gone, renamed), scenario, gone, {
    id,
    collection,
    sold: [...bases.keys()].map(of),
    lossesOf: bases,
  });
}

function pieceOf(
  base: unknown,
  { measures, carton }: Vessel,
  { currency, staffHour }: Scenario,
): unknown {
  const kept = isGroup(base) ? base : { like: 'saucer' };
  const price = parsePrice(measures['price'], 'carton');
  return {
    ...Object.fromEntries(Object.entries(kept).filter(([field]) => !OWN.includes(field))),
    ...measures,
    // A ware has no carton: its piece at a part of the carton's price, to the cent.
    ...(price.ok && price.value.per === 'carton'
      ? {
          price: amountText(
            Math.round(priceMinor(price.value, 1, carton, staffHour.minor)),
            currency,
          ),
        }
      : {}),
  };
}

/** What else of the file names ware: the gone is left out, or named anew. */
function withNames(
  raw: unknown,
  { suit, storage, have, supply }: Scenario,
  gone: readonly string[],
  renamed: ReadonlyMap<string, string>,
): unknown {
  let tree = raw;
  const leaveOut = (
    path: readonly string[],
    map: Readonly<Record<string, unknown>> | undefined,
  ) => {
    for (const id of Object.keys(map ?? {}))
      if (gone.includes(id)) tree = withoutRaw(tree, [...path, id]);
  };
  leaveOut(['suit', 'ware'], suit?.ware);
  leaveOut(['storage', 'onTop'], storage?.onTop);
  leaveOut(['storage', 'trigger'], storage?.trigger);
  leaveOut(['have', 'ware'], have?.ware);
  leaveOut(['supply', 'onHand'], supply?.onHand);
  if (supply?.saucers?.fits !== undefined) tree = withoutRaw(tree, ['supply', 'saucers', 'fits']);
  for (const [drink, { vessel }] of Object.entries(suit?.drinks ?? {}))
    if (vessel !== undefined && renamed.has(vessel))
      tree = withRawValue(tree, ['suit', 'drinks', drink, 'vessel'], renamed.get(vessel));
  const instead = Object.entries(suit?.guests?.instead ?? {});
  if (instead.some((pair) => pair.some((one) => gone.includes(one))))
    tree = withoutRaw(tree, ['suit', 'guests']);
  return tree;
}

interface Sold {
  readonly id: string;
  readonly collection: Collection;
  readonly sold: readonly Vessel[];
  /** By vessel, the ware whose losses it takes over. */
  readonly lossesOf: ReadonlyMap<string, string>;
}

/** The collection's supplier sells what is new; the others sell what stays. */
function withSupply(
  raw: unknown,
  { supply }: Scenario,
  gone: readonly string[],
  { id, collection, sold, lossesOf }: Sold,
): unknown {
  let tree = raw;
  for (const [supplier, { quotes }] of Object.entries(supply?.suppliers ?? {})) {
    const path = ['supply', 'suppliers', supplier];
    if (Object.keys(quotes).every((ware) => gone.includes(ware))) tree = withoutRaw(tree, path);
    else
      for (const ware of Object.keys(quotes))
        if (gone.includes(ware)) tree = withoutRaw(tree, [...path, 'quotes', ware]);
  }
  for (const [vessel, base] of lossesOf) {
    const losses = rawValueAt(raw, ['supply', 'losses', base]);
    if (losses !== undefined) tree = withRawValue(tree, ['supply', 'losses', vessel], losses);
  }
  for (const ware of gone)
    if (supply?.losses?.[ware] !== undefined) tree = withoutRaw(tree, ['supply', 'losses', ware]);
  const given = ['freight', 'tax', 'minimumOrder'].flatMap((field) => {
    const value = rawValueAt(raw, ['collections', id, field]);
    return value === undefined ? [] : [[field, value] as const];
  });
  return withRawValue(tree, ['supply'], {
    ...(rawValueAt(tree, ['supply']) as object | undefined),
    suppliers: {
      ...(rawValueAt(tree, ['supply', 'suppliers']) as object | undefined),
      [`collection-${id}`]: {
        name: collection.supplier ?? nameOf(id, collection),
        leadTime: `${Math.max(...sold.map(({ leadDays }) => leadDays))} days`,
        ...Object.fromEntries(given),
        quotes: Object.fromEntries(
          sold.map(({ id: ware, measures, carton, until }) => [
            ware,
            {
              price: measures['price'],
              carton,
              ...(until === 'assured' ? {} : { repeat: until === 'none' ? 'none' : { until } }),
            },
          ]),
        ),
      },
    },
  });
}

/** Settings, each once, in their order. */
function distinct(settings: readonly (readonly string[])[]): string[][] {
  const seen = new Set<string>();
  return settings
    .filter((one) => !seen.has(JSON.stringify(one)) && seen.add(JSON.stringify(one)))
    .map((one) => [...one]);
}
