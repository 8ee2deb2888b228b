/**
 * Listed days: a JSON file of given guests (recorded days, or days for comparison without noise).
 *
 * Times are in minutes from opening, plain numbers. Such a file may be long, so it is read by the
 * JSON parser and its places are only looked up when something is wrong with it.
 */
import * as z from 'zod';
import type { ListedDay } from '../cafe/listed-day.js';
import { group, list } from '../quantities/group.js';
import { didYouMean } from '../quantities/nearest.js';
import { count, plainNumber } from '../quantities/numbers.js';
import { largestScenarioBytes, parseYaml } from './parse-yaml.js';
import { inOrder, problem, problemAt, type Flaw, type Position, type Problem } from './problems.js';
import { valueAt } from './tree.js';
import { flawsOf } from './zod-flaws.js';

/** Problems reported at most; a systematic mistake in a long file would otherwise bury its own message. */
const mostProblems = 50;

/** No rush lasts longer than 60 days. */
const MOST_MINUTES = 60 * 24 * 60;
const minutes = (noun: string) =>
  plainNumber(noun).refine((value) => value <= MOST_MINUTES, {
    error: 'is longer than 60 days; write minutes, such as 12.5',
  });

const drinkId = z.string({
  error: 'is not the id of a drink; write one of the menu, such as "flat-white"',
});
const drink = group(
  { drink: drinkId, makeMinutes: minutes('minutes of making') },
  'write { "drink": "flat-white", "makeMinutes": 0.7 }',
);
const shareOfDwell = plainNumber('a share of the dwell').refine((share) => share <= 1, {
  error: 'is more than the whole dwell; write a number from 0 to 1',
});
const second = group(
  { drink: drinkId, makeMinutes: minutes('minutes of making'), shareOfDwell },
  'write { "drink": "flat-white", "makeMinutes": 0.7, "shareOfDwell": 0.5 }',
);

const party = group(
  {
    minute: minutes('minutes after opening'),
    size: count('guests', 1, 99),
    staysIn: z.boolean({ error: 'is neither true nor false; write true or false' }),
    dwellMinutes: minutes('minutes of dwell').default(0),
    drinks: list(drink, 'write a list of { "drink": ..., "makeMinutes": ... }'),
    seconds: list(
      second,
      'write a list of { "drink": ..., "makeMinutes": ..., "shareOfDwell": ... }',
    ).default([]),
  },
  'write { "minute": 12.5, "size": 2, "staysIn": true, "dwellMinutes": 38, "drinks": [...], "seconds": [] }',
);

const day = group(
  { parties: list(party, 'write a list of parties') },
  'write { "parties": [...] }',
);
/** A file of listed days. */
export const listedDaysSchema = group(
  { days: list(day, 'write a list of days').min(1, { error: 'is empty; give at least one day' }) },
  'write { "days": [{ "parties": [...] }] }',
);

export type ListedDaysResult =
  | { readonly ok: true; readonly days: readonly ListedDay[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Drinks that are not on the menu, found whatever else is wrong with the file. */
function unknownDrinks(tree: unknown, menu: readonly string[]): Flaw[] {
  const known = new Set(menu);
  const listAt = (owner: unknown, key: string): readonly unknown[] => {
    const found = valueAt(owner, [key]);
    return Array.isArray(found) ? found : [];
  };
  return listAt(tree, 'days').flatMap((day, d) =>
    listAt(day, 'parties').flatMap((party, p) =>
      ['drinks', 'seconds'].flatMap((round) =>
        listAt(party, round).flatMap((ordered, i): Flaw[] => {
          const id = valueAt(ordered, ['drink']);
          return typeof id !== 'string' || known.has(id)
            ? []
            : [
                problemAt(
                  ['days', d, 'parties', p, round, i, 'drink'],
                  id,
                  'is not on the menu',
                  didYouMean(id, menu),
                ),
              ];
        }),
      ),
    ),
  );
}

/** Reads listed days for a menu (ids of its drinks): the text of a JSON file, or its UTF-8 bytes. */
export function readListedDays(
  text: string | Uint8Array,
  fileName: string,
  menu: readonly string[],
): ListedDaysResult {
  const start: Position = { line: 1, column: 1 };
  const refuse = (
    flaws: readonly Flaw[],
    positionOf: (flaw: Flaw) => Position,
  ): ListedDaysResult => ({
    ok: false,
    problems: inOrder(
      flaws.slice(0, mostProblems).map((flaw) => problem(flaw, fileName, positionOf(flaw))),
    ),
  });

  let tree: unknown;
  try {
    tree = JSON.parse(
      typeof text === 'string' ? text : new TextDecoder('utf-8', { fatal: true }).decode(text),
    );
  } catch {
    return refuse(
      [
        problemAt(
          [],
          undefined,
          'cannot be read as JSON',
          'write { "days": [{ "parties": [...] }] } in UTF-8',
        ),
      ],
      () => start,
    );
  }
  const parsed = listedDaysSchema.safeParse(tree);
  const flaws = [
    ...(parsed.success ? [] : flawsOf(parsed.error.issues, listedDaysSchema, tree)),
    ...unknownDrinks(tree, menu),
  ];
  if (parsed.success && flaws.length === 0) return { ok: true, days: parsed.data.days };
  const places = text.length <= largestScenarioBytes ? parseYaml(text) : null;
  return refuse(flaws, (flaw) => places?.parsed?.positionOf(flaw.path, flaw.onKey) ?? start);
}
