/** What a house owns already: it costs nothing, and no answer has less of it. */
import { machineClass, machineClassIds } from '../catalogue/catalogue.js';
import { group, named } from '../quantities/group.js';
import { didYouMean } from '../quantities/nearest.js';
import { count } from '../quantities/numbers.js';
import { problemAt, type Flaw } from './problems.js';
import { isGroup, valueAt } from './tree.js';

export const haveSchema = group(
  {
    ware: named(count('pieces'), 'write pieces by ware, such as { medium-cup: 30 }').optional(),
    machines: named(
      count('machines'),
      'write machines by class, such as { undercounter: 1 }',
    ).optional(),
    racks: named(count('racks'), 'write racks by kind, such as { open: 4 }').optional(),
  },
  'write { ware: { medium-cup: 30 }, machines: { undercounter: 1 }, racks: { open: 4 } }',
);

interface Having {
  readonly ware: Readonly<Record<string, unknown>>;
  readonly have?: { readonly ware?: Readonly<Record<string, number>> | undefined } | undefined;
}

/** Pieces owned, in the order of the ware. */
export const ownedPieces = ({ ware, have }: Having): number[] =>
  Object.keys(ware).map((id) => have?.ware?.[id] ?? 0);

/** Names under `have` that are none. */
export function checkHave(tree: unknown): Flaw[] {
  const ids = (path: readonly string[]): string[] => {
    const found = valueAt(tree, [...path]);
    return isGroup(found) ? Object.keys(found) : [];
  };
  const ware = ids(['ware']);
  const unknown = (
    part: string,
    known: (id: string) => boolean,
    what: string,
    all: readonly string[],
  ): Flaw[] =>
    ids(['have', part])
      .filter((id) => !known(id))
      .map((id) => ({
        ...problemAt(['have', part, id], id, what, didYouMean(id, all)),
        onKey: true,
      }));
  return [
    ...unknown('ware', (id) => ware.includes(id), 'is not in ware', ware),
    ...unknown(
      'machines',
      (id) => machineClass(id) !== null,
      'is not a class of dishwasher',
      machineClassIds(),
    ),
  ];
}
