/**
 * Groups that no café fills so far. Looked at before anything else, as the work of filling and checking a file grows
 * with the square of their number: 3,000 items of ware took half a minute.
 */
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import { isGroup, valueAt } from './tree.js';

const MOST = 300;

const groups: readonly (readonly [Path, string])[] = [
  [['ware'], 'items of ware'],
  [['menu'], 'drinks'],
  [['washing', 'machines'], 'dishwashers'],
  [['alternatives'], 'alternatives'],
  [['calendar', 'kinds'], 'kinds of day'],
  [['supply', 'suppliers'], 'suppliers'],
];

/** What a file has too many of to be read. */
export const tooMany = (tree: unknown): Flaw[] =>
  groups.flatMap(([path, what]) => {
    const group = valueAt(tree, path);
    const number = isGroup(group) || Array.isArray(group) ? Object.keys(group).length : 0;
    return number <= MOST
      ? []
      : [
          problemAt(
            path,
            undefined,
            `has ${number.toLocaleString('en')} ${what}, more than the ${MOST} that can be read`,
            'leave out those that the rush does not need',
          ),
        ];
  });
