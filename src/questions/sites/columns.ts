/**
 * The columns of a table of sites. A short name stands for what tables usually hold; any other column is the path of a
 * value of the scenario. A new short name is an entry of `SHORT`.
 */
import { machineClass, machineClassIds } from '../../catalogue/catalogue.js';
import { nearest } from '../../quantities/nearest.js';
import { splitNumber } from '../../quantities/unit-sizes.js';
import { readFlow } from '../../scenario/flow-text.js';
import type { Path } from '../../scenario/path.js';
import { rawValueAt, scaled, tidy, withRawValue } from '../../scenario/raw-paths.js';
import { isGroup, valueAt } from '../../scenario/tree.js';
import { parseSetting, SettingError } from '../settings.js';
import { misfit, type Misfit } from './cell.js';

/** Columns that say which site it is, when and where it gets its ware, and the export of its till with what its columns mean; they are no values of the scenario. */
export const ABOUT = ['id', 'name', 'drop', 'opening', 'till', 'map'] as const;
export type About = (typeof ABOUT)[number];

/** What cells are read against: the base as it is. */
export interface BaseFigures {
  readonly raw: unknown;
  /** The same with what the file leaves to defaults. */
  readonly filled: unknown;
  /** Guests in the busiest hour, and how long one stays on average, minutes. */
  readonly guestsAnHour: number;
  readonly stayMinutes: number;
}

export type Edited = { readonly tree: unknown } | Misfit;

interface ShortColumn {
  readonly name: string;
  readonly describe: string;
  /** Where its value stands in the scenario: problems there belong to this column. */
  readonly path: Path;
  readonly edit: (tree: unknown, cell: string, base: BaseFigures) => Edited;
}

export const SHORT: readonly ShortColumn[] = [
  plain('seats', 'seats, such as 40', ['seats', 'count']),
  {
    name: 'guests',
    describe: 'guests in the busiest hour, those who take away included',
    path: ['arrivals'],
    edit(tree, cell, { guestsAnHour }) {
      const split = splitNumber(cell);
      if (split === null || !/^(\/ ?h)?$/.test(split.rest) || !(split.number > 0))
        return misfit('is not a number of guests an hour', 'write one such as 64');
      const peak = rawValueAt(tree, ['arrivals', 'peak']);
      return {
        tree: isGroup(peak)
          ? withRawValue(tree, ['arrivals', 'peak', 'guests'], `${split.number} / h`)
          : withRawValue(
              tree,
              ['arrivals'],
              scaled(rawValueAt(tree, ['arrivals']), split.number / guestsAnHour),
            ),
      };
    },
  },
  {
    name: 'stay',
    describe: 'share of guests who stay in, such as 45 %',
    path: ['guests', 'staysIn'],
    edit: (tree, cell) =>
      withShare(cell, (percent) => withRawValue(tree, ['guests', 'staysIn'], `${percent} %`)),
  },
  {
    name: 'takeaway',
    describe: 'share of guests who take away, in place of stay',
    path: ['guests', 'staysIn'],
    edit: (tree, cell) =>
      withShare(cell, (percent) =>
        withRawValue(tree, ['guests', 'staysIn'], `${tidy(100 - percent)} %`),
      ),
  },
  {
    name: 'dwell',
    describe: 'how long guests stay on average, such as 35 min',
    path: ['guests', 'dwell'],
    edit(tree, cell, { stayMinutes, filled }) {
      const split = splitNumber(cell);
      if (split === null || !(split.number > 0) || !/^min(utes?)?$/.test(split.rest))
        return misfit('is not a stay in minutes', 'write one such as 35 min');
      if (!(stayMinutes > 0))
        return misfit('cannot be used, as nobody stays in the base', 'use the path guests.dwell');
      const at = ['guests', 'dwell'];
      return {
        tree: withRawValue(
          tree,
          at,
          scaled(rawValueAt(tree, at) ?? valueAt(filled, at), split.number / stayMinutes),
        ),
      };
    },
  },
  {
    name: 'hours',
    describe: 'opening and closing, such as 07:00-11:00',
    path: ['hours'],
    edit(tree, cell) {
      const found = /^(\d{1,2}:\d{2})\s*(?:-|–|to)\s*(\d{1,2}:\d{2})$/.exec(cell);
      return found === null
        ? misfit('is not a pair of times', 'write opening and closing, such as 07:00-11:00')
        : { tree: withRawValue(tree, ['hours'], { from: found[1], to: found[2] }) };
    },
  },
  {
    name: 'machines',
    describe: 'dishwashers: how many of the first of the base, or classes, such as 2 hood',
    path: ['washing', 'machines'],
    edit: (tree, cell, { filled }) => machines(tree, cell, filled),
  },
  plain('makers', 'people who make drinks', ['counter', 'makers']),
  plain('clearers', 'people who clear', ['clearing', 'clearers']),
  {
    name: 'have',
    describe: 'pieces that are there already, such as medium-cup=30; saucer=40',
    path: ['have', 'ware'],
    edit(tree, cell) {
      try {
        const pieces = parseSetting(
          { as: 'pieces', describe: '' },
          cell.replaceAll(/\s*;\s*/g, ','),
        );
        return { tree: withRawValue(tree, ['have', 'ware'], pieces) };
      } catch (error) {
        if (!(error instanceof SettingError)) throw error;
        return misfit(
          'is not a list of pieces there are',
          'write ids and pieces, such as medium-cup=30; saucer=40',
        );
      }
    },
  },
];

/** A column whose cell is the value itself. */
function plain(name: string, describe: string, path: Path): ShortColumn {
  return { name, describe, path, edit: (tree, cell) => pathEdit(tree, cell, path) };
}

/** The tree with the value that the cell holds, as a scenario file would have it. */
export function pathEdit(tree: unknown, cell: string, path: Path): Edited {
  const read = readFlow(cell, path);
  return read.ok
    ? { tree: withRawValue(tree, path, read.value) }
    : misfit(read.flaw.rule, read.flaw.remedy);
}

function withShare(cell: string, tree: (percent: number) => unknown): Edited {
  const split = splitNumber(cell);
  if (split === null || split.rest !== '%' || !(split.number >= 0 && split.number <= 100))
    return misfit('is not a share of guests', 'write one such as 45 %');
  return { tree: tree(split.number) };
}

/** `2`, `hood`, `2 hood + undercounter`. */
function machines(tree: unknown, cell: string, filled: unknown): Edited {
  const at: Path = ['washing', 'machines'];
  const own = rawValueAt(tree, at) ?? valueAt(filled, at);
  const first = Array.isArray(own) ? (own as unknown[])[0] : undefined;
  if (/^\d+$/.test(cell)) {
    if (Number(cell) === 0)
      return misfit('leaves nothing to wash with', 'write 1 or more, or leave the cell empty');
    return isGroup(first)
      ? { tree: withRawValue(tree, at, [{ ...first, count: Number(cell) }]) }
      : misfit('cannot be counted, as the base has no list of machines', 'write a class');
  }
  const list: unknown[] = [];
  for (const part of cell.split('+').map((one) => one.trim())) {
    const [, count, name = ''] = /^(?:(\d{1,3})\s+)?(\S.*)$/.exec(part) ?? [];
    if (name === '' || count === '0' || machineClass(name) === null) {
      const near = nearest(name, machineClassIds());
      return misfit(
        'is not a list of dishwashers',
        near === null
          ? `write a number, or classes such as 2 hood + undercounter (${machineClassIds().join(', ')})`
          : `did you mean "${near}"?`,
      );
    }
    list.push(count === undefined ? { class: name } : { class: name, count: Number(count) });
  }
  return { tree: withRawValue(tree, at, list) };
}
