/**
 * Checks of times and rates against the opening hours.
 */
import { meanMs } from '../engine/durations.js';
import { durationLaw } from '../quantities/duration-law.js';
import { parseClock } from '../quantities/numbers.js';
import { durationUnits, parseWithUnit } from '../quantities/unit-tables.js';
import { parseRate } from '../quantities/units.js';
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import { isGroup, valueAt } from './tree.js';

/** Parties expected in a day beyond which a file is taken for a slip of units. */
const mostParties = 1_000_000;

const durationAt = (tree: unknown, path: Path): number | null => {
  const parsed = parseWithUnit(valueAt(tree, path), durationUnits);
  return parsed.ok ? Math.round(parsed.value) : null;
};

const clockAt = (tree: unknown, path: Path): number | null => {
  const parsed = parseClock(valueAt(tree, path));
  return parsed.ok ? parsed.value : null;
};

/** A length of time for people: "3 h", "2 h 30 min", "45 s". */
function inWords(ms: number): string {
  if (ms % 60_000 !== 0) return `${Number((ms / 1000).toPrecision(9))} s`;
  const minutes = ms / 60_000;
  const rest = minutes % 60;
  return [
    ...(minutes >= 60 ? [`${Math.floor(minutes / 60)} h`] : []),
    ...(rest > 0 || minutes < 60 ? [`${rest} min`] : []),
  ].join(' ');
}

const namesAt = (tree: unknown, path: Path): string[] => {
  const found = valueAt(tree, path);
  return isGroup(found) ? Object.keys(found) : [];
};

/** Length of the rush in ms; null while the hours cannot be read. */
function hoursMs(tree: unknown): number | null {
  const given = durationAt(tree, ['hours', 'for']);
  if (given !== null) return given > 0 ? given : null;
  const from = clockAt(tree, ['hours', 'from']);
  const to = clockAt(tree, ['hours', 'to']);
  return from !== null && to !== null && to > from ? to - from : null;
}

/** Closing must come after opening. */
export function checkHours(tree: unknown): Flaw[] {
  if (durationAt(tree, ['hours', 'for']) === 0)
    return [
      problemAt(
        ['hours', 'for'],
        valueAt(tree, ['hours', 'for']),
        'leaves no opening time',
        'write how long the rush lasts, such as "180 min"',
      ),
    ];
  const from = clockAt(tree, ['hours', 'from']);
  const to = clockAt(tree, ['hours', 'to']);
  if (from === null || to === null || to > from) return [];
  const rule =
    to === from
      ? 'is a closing time equal to the opening time'
      : 'is a closing time before the opening time';
  return [
    problemAt(
      ['hours', 'to'],
      valueAt(tree, ['hours', 'to']),
      rule,
      `write a time after ${String(valueAt(tree, ['hours', 'from']))}; a rush lies within one day: for one past midnight, write all times some hours earlier`,
    ),
  ];
}

/** A list of steps with `for` must cover the hours exactly. */
function checkSteps(tree: unknown, path: Path, open: number | null): Flaw[] {
  const steps = valueAt(tree, path);
  if (!Array.isArray(steps) || open === null) return [];
  if (steps.length === 0) return [problemAt(path, undefined, 'is empty', 'give at least one step')];
  const lengths = steps.map((_, i) => durationAt(tree, [...path, i, 'for']));
  if (lengths.includes(null)) return [];
  const sum = lengths.reduce<number>((total, ms) => total + (ms ?? 0), 0);
  return sum === open
    ? []
    : [
        problemAt(
          path,
          undefined,
          `covers ${inWords(sum)}, but the hours are ${inWords(open)}`,
          'make the steps cover the hours exactly',
        ),
      ];
}

function checkSlots(tree: unknown, open: number | null): Flaw[] {
  const path: Path = ['arrivals', 'slots'];
  const every = durationAt(tree, [...path, 'every']);
  const parties = valueAt(tree, [...path, 'parties']);
  if (every === 0)
    return [
      problemAt(
        [...path, 'every'],
        valueAt(tree, [...path, 'every']),
        'is a slot with no length',
        'write the length of a slot, such as "15 min"',
      ),
    ];
  if (every === null || !Array.isArray(parties) || open === null) return [];
  if (every * parties.length === open) return [];
  const needed = open / every;
  const remedy = Number.isInteger(needed)
    ? `give ${needed} slots of ${inWords(every)}`
    : `choose a slot that divides ${inWords(open)}`;
  return [
    problemAt(
      [...path, 'parties'],
      undefined,
      `has ${parties.length} slots, which cover ${inWords(every * parties.length)}, but the hours are ${inWords(open)}`,
      remedy,
    ),
  ];
}

function checkPeak(tree: unknown): Flaw[] {
  const path: Path = ['arrivals', 'peak', 'shape'];
  const shape = valueAt(tree, path);
  if (!Array.isArray(shape)) return [];
  if (shape.length === 0)
    return [
      problemAt(
        path,
        undefined,
        'is empty',
        'write how busy each equal part of the rush is, as relative numbers, such as [3, 5, 9, 7]',
      ),
    ];
  return shape.every((weight) => weight === 0)
    ? [
        problemAt(
          path,
          undefined,
          'has no number above zero',
          'write how busy each equal part of the rush is, as relative numbers, such as [3, 5, 9, 7]',
        ),
      ]
    : [];
}

/** A rough count of what is expected in all, to catch a slip of units before it fills the memory. */
function checkVolume(tree: unknown, open: number | null): Flaw[] {
  const arrivals = valueAt(tree, ['arrivals']);
  if (!isGroup(arrivals) || open === null) return [];
  const flaw = (path: Path, parties: number): Flaw[] =>
    parties > mostParties
      ? [
          problemAt(
            path,
            undefined,
            `brings more than ${mostParties.toLocaleString('en')} parties a day`,
            'check the unit and the number',
          ),
        ]
      : [];
  const rateMs = (rate: unknown): number => {
    const parsed = parseRate(rate);
    return parsed.ok ? parsed.value : 0;
  };
  const total = (list: unknown): number =>
    Array.isArray(list)
      ? list.reduce<number>((sum, one) => sum + (typeof one === 'number' ? one : 0), 0)
      : 0;
  const steps = Array.isArray(arrivals['steps']) ? arrivals['steps'] : [];
  return [
    ...flaw(['arrivals', 'slots', 'parties'], total(valueAt(arrivals, ['slots', 'parties']))),
    ...flaw(
      ['arrivals', 'steps'],
      steps.reduce<number>(
        (sum, step, i) =>
          sum + rateMs(valueAt(step, ['parties'])) * (durationAt(steps, [i, 'for']) ?? 0),
        0,
      ),
    ),
    ...flaw(['arrivals', 'peak', 'guests'], rateMs(valueAt(arrivals, ['peak', 'guests'])) * open),
  ];
}

/** Spells out of order must begin within the hours. */
function checkSpells(tree: unknown): Flaw[] {
  const machines = valueAt(tree, ['washing', 'machines']);
  const from = clockAt(tree, ['hours', 'from']) ?? 0;
  const places: Path[] = Array.isArray(machines)
    ? machines.map((_, i) => ['washing', 'machines', i])
    : [['washing', 'machines', 'unlimited']];
  return places.flatMap((place) => {
    const spells = valueAt(tree, [...place, 'down']);
    if (!Array.isArray(spells)) return [];
    return spells.flatMap((_, i): Flaw[] => {
      const path = [...place, 'down', i, 'from'];
      const at = clockAt(tree, path);
      return at === null || at >= from
        ? []
        : [
            problemAt(
              path,
              valueAt(tree, path),
              'is before opening',
              'write a time after opening, or use warmUp',
            ),
          ];
    });
  });
}

/** Intervals at which something is done again and again cannot be zero. */
function checkIntervals(tree: unknown): Flaw[] {
  const zero = (path: Path, remedy: string): Flaw[] => {
    const law = durationLaw.safeParse(valueAt(tree, path));
    return law.success && meanMs(law.data) === 0
      ? [problemAt(path, valueAt(tree, path), 'is not an interval', remedy)]
      : [];
  };
  return [
    ...zero(['clearing', 'every'], 'write atOnce for clearing without rounds'),
    ...zero(['washing', 'partLoadsEvery'], 'write a duration above zero, or leave it out'),
  ];
}

/** All checks of times but the hours themselves. */
export function checkTimes(tree: unknown): Flaw[] {
  const open = hoursMs(tree);
  const arrivals = valueAt(tree, ['arrivals']);
  const forms = isGroup(arrivals)
    ? ['slots', 'steps', 'peak'].filter((form) => arrivals[form] !== undefined)
    : [];
  const remedy = 'give exactly one of slots, steps and peak';
  const wrongForms =
    isGroup(arrivals) && forms.length !== 1
      ? [
          problemAt(
            ['arrivals'],
            undefined,
            forms.length === 0
              ? 'does not say when guests come'
              : `gives both ${forms.join(' and ')}`,
            remedy,
          ),
        ]
      : [];
  return [
    ...wrongForms,
    ...checkSlots(tree, open),
    ...checkSteps(tree, ['arrivals', 'steps'], open),
    ...checkPeak(tree),
    ...checkVolume(tree, open),
    ...checkSteps(tree, ['washing', 'otherLoads', 'racks'], open),
    ...checkSteps(tree, ['guests', 'staysIn'], open),
    ...namesAt(tree, ['menu']).flatMap((id) => checkSteps(tree, ['menu', id, 'share'], open)),
    ...checkSpells(tree),
    ...checkIntervals(tree),
  ];
}
