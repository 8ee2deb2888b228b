/**
 * Bounds of what a rush may be asked for, each with its reason: beyond them a number is a slip of a unit, or a day would
 * take longer than anybody waits.
 */
import type { DurationLaw } from '../engine/durations.js';
import { meanOfLaw, spanOf, stepsOf } from './steps.js';
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import type { Scenario } from './scenario.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** Long-run checks run for weeks; nothing runs longer. */
const LONGEST_RUSH = 60 * DAY;
/** Something done over and over more often than this is a slip of a unit. */
const SHORTEST_INTERVAL = 1000;
/** No step of a rush takes so long; a day with one would not end. */
const LONGEST_STEP = 7 * DAY;
const LEAST_BREAKDOWN = MINUTE;
const MOST_GUESTS_AN_HOUR = 100_000;
/** Nobody orders more at once; a slip of the point made days of half a million drinks. */
const MOST_DRINKS_A_GUEST = 20;
const MOST_RACKS_AN_HOUR = 10_000;
/** Above it most days have next to nobody, and a few the guests of all. */
const MOST_DAY_FACTOR = 2;
/** Moments of a day that happen by the clock: rounds, part loads, other loads. */
const MOST_BY_CLOCK = 1_000_000;

/** What lies outside; of a scenario whose fields are all sound by themselves. */
export function checkBounds(scenario: Scenario): Flaw[] {
  const { hours, arrivals, level, washing, clearing } = scenario;
  const open = 'for' in hours ? hours.for : hours.to - hours.from;
  const flaws: Flaw[] = [];
  const refuse = (path: Path, rule: string, remedy = 'check the number and its unit'): void =>
    void flaws.push(problemAt(path, undefined, rule, remedy));

  if (level >= 1 || level <= 0)
    refuse(
      ['level'],
      level >= 1
        ? 'asks that nothing ever runs out, which no stock can guarantee'
        : 'cannot be a level: it is zero or less',
      'write a share below 100 %, such as 95 %',
    );
  if (open > LONGEST_RUSH)
    refuse(['hours'], 'is longer than 60 days, the longest that can be simulated');
  if (arrivals.dayFactor > MOST_DAY_FACTOR)
    refuse(
      ['arrivals', 'dayFactor'],
      `is above ${MOST_DAY_FACTOR}: most days would be empty and a few days overfull`,
      'write how much one day differs from the next, such as 0.2',
    );
  if (scenario.guests.drinksEach > MOST_DRINKS_A_GUEST)
    refuse(
      ['guests', 'drinksEach'],
      `is more than ${MOST_DRINKS_A_GUEST} drinks a guest`,
      'write how many drinks a guest orders, such as 1.1',
    );
  const { peak } = arrivals;
  if (peak !== undefined && peak.guests * HOUR > MOST_GUESTS_AN_HOUR)
    refuse(
      ['arrivals', 'peak', 'guests'],
      `brings more than ${MOST_GUESTS_AN_HOUR.toLocaleString('en')} guests an hour`,
    );

  const every = (path: Path, ms: number | null | undefined): void => {
    if (ms === null || ms === undefined || ms === 0) return;
    if (ms < SHORTEST_INTERVAL)
      refuse(path, 'is shorter than a second', 'write how often it is done, such as 10 min');
    else if (open / ms > MOST_BY_CLOCK) refuse(path, 'happens more than a million times a day');
  };
  if (clearing !== 'atOnce') every(['clearing', 'every'], shortest(clearing.every));
  every(['washing', 'partLoadsEvery'], shortest(washing.partLoadsEvery));

  const machines = Array.isArray(washing.machines)
    ? washing.machines.map((machine, i) => [['washing', 'machines', i], machine] as const)
    : [[['washing', 'machines', 'unlimited'], washing.machines.unlimited] as const];
  for (const [path, { breakdown }] of machines)
    if (breakdown !== undefined && meanOfLaw(breakdown.until) < LEAST_BREAKDOWN)
      refuse(
        [...path, 'breakdown', 'until'],
        'is shorter than a minute: the machine would never run',
        'write the time between breakdowns, such as { exponential: 90 h }',
      );
  const others = washing.otherLoads?.racks;
  for (const [path, rate] of others === undefined
    ? []
    : typeof others === 'number'
      ? [[['washing', 'otherLoads', 'racks'], others] as const]
      : others.map(
          (step, i) => [['washing', 'otherLoads', 'racks', i, 'racks'], step.racks] as const,
        ))
    if (rate * HOUR > MOST_RACKS_AN_HOUR)
      refuse(path, `brings more than ${MOST_RACKS_AN_HOUR.toLocaleString('en')} racks an hour`);
  for (const [path, law] of stepsOf(scenario))
    if (spanOf(law) > LONGEST_STEP) refuse(path, 'takes longer than a week');
  return flaws;
}

/** An interval, or the mean of one that varies. */
const shortest = (interval: number | DurationLaw | null | undefined): number | null | undefined =>
  typeof interval === 'object' && interval !== null ? meanOfLaw(interval) : interval;
