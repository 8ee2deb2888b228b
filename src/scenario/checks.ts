/**
 * What a schema of single fields cannot see: names that point nowhere, shares that do not add up,
 * times that do not fit. Works on the filled tree, so that it finds what it can beside other mistakes.
 */
import { machineClass, machineClassIds, wareClass, wareClassIds } from '../catalogue/catalogue.js';
import { parseCurrency } from '../quantities/money.js';
import { parsePrice } from '../quantities/price.js';
import { didYouMean } from '../quantities/nearest.js';
import { length } from '../quantities/units.js';
import { checkCalendar } from './calendar.js';
import { checkHave } from './have.js';
import { checkHabits } from './check-habits.js';
import { checkRacks } from './check-racks.js';
import { checkMenuShares, checkPartySizes } from './check-shares.js';
import { checkHours, checkTimes } from './check-times.js';
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import { eachValue } from './schema-walk.js';
import { scenarioSchema } from './scenario.js';
import { groupAt, isGroup, valueAt } from './tree.js';

function checkSetting(setting: unknown, path: Path, ware: readonly string[]): Flaw[] {
  if (!Array.isArray(setting)) return [];
  return setting.flatMap((piece: unknown, i): Flaw[] => {
    if (typeof piece !== 'string' || ware.includes(piece)) return [];
    if (piece === 'takeaway')
      return [
        problemAt(
          [...path, i],
          piece,
          'is listed among pieces of ware',
          'write takeaway alone, without brackets',
        ),
      ];
    return [problemAt([...path, i], piece, 'is not in ware', didYouMean(piece, ware))];
  });
}

function checkMenu(tree: unknown): Flaw[] {
  const menu = valueAt(tree, ['menu']);
  if (!isGroup(menu)) return [];
  const drinks = Object.entries(menu);
  if (drinks.length === 0)
    return [
      problemAt(
        ['menu'],
        undefined,
        'is empty',
        'add at least one drink, such as flat-white: { share: 100 %, setting: [cup] }',
      ),
    ];
  const ware = Object.keys(groupAt(tree, 'ware'));
  const dangling = drinks.flatMap(([id, drink]) => {
    if (!isGroup(drink)) return [];
    const fallBacks = Array.isArray(drink['fallBacks']) ? drink['fallBacks'] : [];
    return [
      ...checkSetting(drink['setting'], ['menu', id, 'setting'], ware),
      ...fallBacks.flatMap((setting: unknown, i) =>
        checkSetting(setting, ['menu', id, 'fallBacks', i], ware),
      ),
    ];
  });
  return [
    ...dangling,
    ...checkMenuShares(drinks.map(([, drink]) => (isGroup(drink) ? drink['share'] : undefined))),
  ];
}

function checkWare(tree: unknown): Flaw[] {
  const ware = valueAt(tree, ['ware']);
  if (!isGroup(ware)) return [];
  if (Object.keys(ware).length === 0)
    return [
      problemAt(
        ['ware'],
        undefined,
        'is empty',
        'add at least one ware, such as cup: { like: medium-cup }',
      ),
    ];
  return Object.entries(ware).flatMap(([id, one]): Flaw[] => {
    if (id === 'takeaway' || id === 'unlimited')
      return [
        {
          ...problemAt(
            ['ware', id],
            undefined,
            'is a reserved word and cannot be the name of a ware',
            'choose another name',
          ),
          onKey: true,
        },
      ];
    const like = isGroup(one) ? one['like'] : undefined;
    if (typeof like === 'string' && wareClass(like) === null)
      return [
        problemAt(
          ['ware', id, 'like'],
          like,
          'is not a class of ware',
          didYouMean(like, wareClassIds()),
        ),
      ];
    return isGroup(one) ? checkShape(['ware', id], one) : [];
  });
}

/** Measures of one piece that cannot both be true. */
function checkShape(path: Path, ware: Record<string, unknown>): Flaw[] {
  const mm = (field: string): number | null => length.safeParse(ware[field]).data ?? null;
  const [rim, foot, well] = [mm('rim'), mm('foot'), mm('well')];
  const { shape } = ware;
  if (rim === null) return [];
  const stands = shape === undefined || shape === 'cup' || shape === 'glass';
  return [
    ...(stands && foot !== null && foot > rim
      ? [
          problemAt(
            [...path, 'foot'],
            ware['foot'],
            `is wider than the rim (${Number(rim.toFixed(1))} mm)`,
            'check whether foot and rim were swapped',
          ),
        ]
      : []),
    ...(shape === 'saucer' && well !== null && well >= rim
      ? [
          problemAt(
            [...path, 'well'],
            ware['well'],
            `is as wide as the saucer or wider (${Number(rim.toFixed(1))} mm)`,
            'measure the well, the hollow that the foot of the cup stands in',
          ),
        ]
      : []),
  ];
}

/** Ware that takes the place of another for guests who ask for an easy handle: the rush takes it from the shelf. */
function checkInstead(tree: unknown): Flaw[] {
  const ware = Object.keys(groupAt(tree, 'ware'));
  return Object.entries(groupAt(tree, 'suit', 'guests', 'instead')).flatMap(
    ([from, to]): Flaw[] => {
      const path: Path = ['suit', 'guests', 'instead', from];
      return [
        ...(ware.includes(from)
          ? []
          : [
              {
                ...problemAt(path, undefined, 'is not in ware', didYouMean(from, ware)),
                onKey: true,
              },
            ]),
        ...(typeof to !== 'string' || ware.includes(to)
          ? []
          : [problemAt(path, to, 'is not in ware', didYouMean(to, ware))]),
      ];
    },
  );
}

function checkMachines(tree: unknown): Flaw[] {
  const path: Path = ['washing', 'machines'];
  const machines = valueAt(tree, path);
  const listed: readonly unknown[] = Array.isArray(machines) ? machines : [];
  const remedy =
    'add one, such as { class: undercounter }, or write { unlimited: { class: undercounter } }';
  const none =
    Array.isArray(machines) && listed.every((one) => isGroup(one) && one['count'] === 0)
      ? [problemAt(path, undefined, 'leaves no dishwasher', remedy)]
      : [];
  const each: readonly (readonly [Path, unknown])[] = Array.isArray(machines)
    ? listed.map((one, i) => [[...path, i], one] as const)
    : [[[...path, 'unlimited'], valueAt(tree, [...path, 'unlimited'])]];
  const classes = each.flatMap(([at, one]): Flaw[] => {
    const cls = isGroup(one) ? one['class'] : undefined;
    return typeof cls === 'string' && machineClass(cls) === null
      ? [
          problemAt(
            [...at, 'class'],
            cls,
            'is not a class of dishwasher',
            didYouMean(cls, machineClassIds()),
          ),
        ]
      : [];
  });
  const noClearers =
    valueAt(tree, ['washing', 'hands']) === 'clearers' && valueAt(tree, ['clearing']) === 'atOnce'
      ? [
          problemAt(
            ['washing', 'hands'],
            'clearers',
            'cannot be: tables are cleared at once here, so there are no clearers',
            'write a number of people, or have clearers make rounds',
          ),
        ]
      : [];
  return [...none, ...classes, ...noClearers];
}

/** An amount must be in the scenario's own currency; nothing is said of what is no amount. */
export function otherCurrency(path: Path, value: unknown, tree: unknown): Flaw[] {
  const own = valueAt(tree, ['currency']);
  const parsed = parsePrice(value);
  if (
    typeof own !== 'string' ||
    !parseCurrency(own).ok ||
    !parsed.ok ||
    !('currency' in parsed.value) ||
    parsed.value.currency === own
  )
    return [];
  return [
    problemAt(
      path,
      value,
      `is in ${parsed.value.currency}, but the scenario is in ${own}`,
      `convert it to ${own}`,
    ),
  ];
}

function checkMoney(tree: unknown): Flaw[] {
  const flaws: Flaw[] = [];
  eachValue(scenarioSchema, tree, (path, value, { kind }) => {
    if (kind === 'money' || kind === 'amount') flaws.push(...otherCurrency(path, value, tree));
  });
  return flaws;
}

/** Everything that only shows when fields are seen together. */
export function crossChecks(tree: unknown): Flaw[] {
  const partySize = valueAt(tree, ['guests', 'partySize']);
  return [
    ...checkHours(tree),
    ...checkTimes(tree),
    ...(isGroup(partySize) ? checkPartySizes(partySize) : []),
    ...checkMenu(tree),
    ...checkWare(tree),
    ...checkRacks(tree),
    ...checkInstead(tree),
    ...checkMachines(tree),
    ...checkHabits(tree),
    ...checkMoney(tree),
    ...checkCalendar(tree),
    ...checkHave(tree),
  ];
}
