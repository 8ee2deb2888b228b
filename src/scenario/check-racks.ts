/**
 * Racks by name. A kind of rack that is not listed may have any name: its shape is then not known, so every
 * ware washed in it says itself how many fill it.
 */
import { cafeFields } from '../cafe/schema.js';
import { rackKind, rackKindIds } from '../catalogue/catalogue.js';
import { didYouMean, nearest } from '../quantities/nearest.js';
import { rackProblems } from '../racking/measures.js';
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import { rackOf } from './rack-geometry.js';
import { groupAt, isGroup, valueAt } from './tree.js';

const onKey = (path: Path, rule: string, remedy: string): Flaw => ({
  ...problemAt(path, undefined, rule, remedy),
  onKey: true,
});

/** Kinds with a known shape, and those that a family is washed in. */
function kindsOf(tree: unknown): string[] {
  const named = Object.values(groupAt(tree, 'racks', 'families'));
  return [
    ...new Set([
      ...rackKindIds(),
      ...named.filter((one): one is string => typeof one === 'string'),
    ]),
  ];
}

/** Kinds that no family is washed in and that are not listed either, under `path`. */
function checkKinds(tree: unknown, path: readonly [string, string]): Flaw[] {
  const kinds = kindsOf(tree);
  return Object.keys(groupAt(tree, ...path))
    .filter((kind) => !kinds.includes(kind))
    .map((kind) =>
      onKey(
        [...path, kind],
        'is neither a listed kind of rack nor one that a family is washed in',
        didYouMean(kind, kinds),
      ),
    );
}

function checkFamilies(tree: unknown): Flaw[] {
  const ware = Object.entries(groupAt(tree, 'ware')).filter(
    (one): one is [string, Record<string, unknown>] => isGroup(one[1]),
  );
  const familyOf = ([id, { family }]: (typeof ware)[number]): string =>
    typeof family === 'string' ? family : id;
  const families = new Set(ware.map(familyOf));
  return Object.entries(groupAt(tree, 'racks', 'families')).flatMap(([family, kind]): Flaw[] => {
    const path: Path = ['racks', 'families', family];
    if (!families.has(family))
      return [onKey(path, 'is not the family of any ware', didYouMean(family, [...families]))];
    if (typeof kind !== 'string' || rackKind(kind)) return [];
    const uncounted = ware
      .filter((one) => familyOf(one) === family && one[1]['perRack'] === undefined)
      .map(([id]) => id);
    if (uncounted.length === 0) return [];
    const near = nearest(kind, rackKindIds());
    return [
      problemAt(
        path,
        kind,
        `is not a listed kind of rack, so its ware must say how many fill one, and ${uncounted.join(', ')} ${uncounted.length === 1 ? 'does' : 'do'} not`,
        `${near === null ? '' : `did you mean "${near}"? If not, `}count the pieces in a full rack and write perRack: 16 under ware.${uncounted[0]}${near === null ? `, or choose one of ${rackKindIds().join(', ')}` : ''}`,
      ),
    ];
  });
}

/** Fields of a rack's measures, by what geometry calls them. */
const rackFields: Readonly<Record<string, string>> = { extenderMm: 'extenderHeight' };

/** Measures of racks that no rack can have, and of racks whose shape is not known. */
function checkMeasures(tree: unknown): Flaw[] {
  const racks = cafeFields.racks.safeParse(valueAt(tree, ['racks'])).data;
  const shapeless = Object.keys(groupAt(tree, 'racks', 'measures'))
    .filter((kind) => !rackKind(kind))
    .map((kind) =>
      onKey(
        ['racks', 'measures', kind],
        'is not a listed kind of rack, so measures do not tell what it holds',
        `${didYouMean(kind, rackKindIds())}${nearest(kind, rackKindIds()) === null ? ', or' : ' If not,'} give perRack for its ware in place of measures`,
      ),
    );
  const wrong = Object.keys(racks?.measures ?? {}).flatMap((kind) => {
    const rack = rackOf(kind, racks);
    return (rack === null ? [] : rackProblems(rack)).map(({ path, rule, remedy }): Flaw => {
      const field = String(path[0]);
      const at: Path = [
        'racks',
        'measures',
        kind,
        rackFields[field] ?? field.replace(/(Mm|G)$/, ''),
      ];
      return problemAt(
        at,
        valueAt(tree, at),
        `is not right: ${rule}`,
        `${remedy.charAt(0).toLowerCase()}${remedy.slice(1).replace(/\.$/, '')}`,
      );
    });
  });
  return [...shapeless, ...wrong];
}

export const checkRacks = (tree: unknown): Flaw[] => [
  ...checkFamilies(tree),
  ...checkKinds(tree, ['racks', 'owned']),
  ...checkKinds(tree, ['have', 'racks']),
  ...checkMeasures(tree),
];
