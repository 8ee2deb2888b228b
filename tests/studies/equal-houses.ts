/**
 * Houses that are equal in law but not in their draws: cups of several prices and sizes, each for one of as many
 * drinks that guests want equally often. Whichever drink has which cup, the house costs the same on average and
 * something else under any given days.
 */
import { candidatesOf, type Candidate } from '../../src/questions/compare/alternatives.js';
import { readScenario } from '../../src/scenario/read-scenario.js';

interface Shape {
  readonly guestsAnHour: number;
  readonly minutes: number;
  readonly seats: number;
  readonly machines: number;
  readonly makers: number;
}

export const shapes = {
  small: { guestsAnHour: 40, minutes: 60, seats: 40, machines: 1, makers: 2 },
  large: { guestsAnHour: 300, minutes: 180, seats: 250, machines: 3, makers: 8 },
} as const satisfies Record<string, Shape>;

const CUPS = [
  { price: '4.10 EUR', perRack: 25 },
  { price: '5.30 EUR', perRack: 20 },
  { price: '6.70 EUR', perRack: 16 },
  { price: '7.90 EUR', perRack: 12 },
];
const ORDERS = [
  [1, 0, 3, 2],
  [2, 3, 0, 1],
  [3, 2, 1, 0],
  [1, 2, 3, 0],
  [3, 0, 1, 2],
  [2, 0, 3, 1],
];

/** @param aYear money a year that each alternative costs more than its law, exactly known; as many as there are alternatives */
export function equalHouses(shape: Shape, aYear: readonly number[]): readonly Candidate[] {
  const settings = (order: readonly number[]): [string, string[]][] =>
    order.map((cup, drink) => [`menu.drink-${drink}.setting`, [`cup-${cup}`]]);
  const tree = {
    name: 'Equal houses',
    currency: 'EUR',
    staffHour: '20 EUR',
    level: '95 %',
    hours: { for: `${shape.minutes} min` },
    arrivals: {
      steps: [{ for: `${shape.minutes} min`, parties: `${shape.guestsAnHour} / h` }],
      dayFactor: 0.15,
    },
    guests: {
      partySize: 1,
      staysIn: '100 %',
      drinksEach: 1,
      secondDrink: 0,
      dwell: { lognormal: { mean: '20 min', sd: '10 min' } },
    },
    menu: Object.fromEntries(
      CUPS.map((_, at) => [`drink-${at}`, { share: 0.25, setting: [`cup-${at}`], making: '50 s' }]),
    ),
    ware: Object.fromEntries(
      CUPS.map((cup, at) => [`cup-${at}`, { ...cup, family: 'cups', drying: '5 min' }]),
    ),
    seats: { count: shape.seats, whenFull: 'leave' },
    counter: { makers: shape.makers, making: '50 s' },
    clearing: {
      every: '8 min',
      clearers: 2,
      tripPieces: 14,
      trip: '50 s',
    },
    washing: {
      machines: [{ class: 'undercounter', count: shape.machines }],
      hands: 2,
      partLoadWait: '6 min',
    },
    // Time counts in part, so that running costs move the total as ware does.
    costs: { daysAYear: 250, horizonYears: 8, discount: '5 %', staffCounted: '25 %' },
    alternatives: Object.fromEntries(
      aYear.map((more, at) => [
        `exchanged-${at}`,
        {
          change: Object.fromEntries(settings(ORDERS[at]!)),
          ...(more === 0 ? {} : { aYear: `${more} EUR` }),
        },
      ]),
    ),
  };
  const read = readScenario(JSON.stringify(tree), 'equal.json');
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  const candidates = candidatesOf(read, 'equal.json');
  if (!candidates.ok) throw new Error(candidates.problems.map(({ message }) => message).join('\n'));
  return candidates.all;
}
