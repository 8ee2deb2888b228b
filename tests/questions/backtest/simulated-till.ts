/** A till of a small house whose truth is known: Poisson parties, days at random levels, and a drift if wanted. */
import { standardGamma } from '../../../src/engine/durations.js';
import { Stream, streamKey } from '../../../src/engine/streams.js';
import type { TillMap } from '../../../src/till/compile-map.js';
import type { Tally, TillDay } from '../../../src/till/tally.js';
import { idealised } from '../../published/scenario-of.js';

const SLOTS = [2, 4, 6, 6, 4, 3];
const CV = 0.2;
/** A Saturday; days are a week apart. */
const FIRST_DAY = 20_001;

export const smallBase = JSON.stringify(
  idealised({
    hours: { from: '08:00', to: '09:30' },
    arrivals: { slots: { every: '15 min', parties: SLOTS }, dayFactor: CV },
    guests: {
      partySize: 1,
      staysIn: '70 %',
      drinksEach: 1,
      secondDrink: 0,
      dwell: { exponential: '30 min' },
    },
  }),
);

export const smallMap: TillMap = {
  columns: {
    form: 'counts',
    date: 'date',
    slot: 'slot',
    everyMinutes: 15,
    parties: 'parties',
    tickets: null,
  },
  dates: 'iso',
  separator: 'comma',
  encoding: 'utf-8',
  groups: [{ drinks: ['coffee'], items: ['coffee'] }],
  ignored: [],
  days: { name: 'any day of the week', weekdays: [0, 1, 2, 3, 4, 5, 6], between: [], except: [] },
  kinds: [],
  keepPartialDays: true,
  fromMinute: 480,
  toMinute: 570,
  slotMinutes: 15,
  largestParty: 99,
};

/** Days of one kind, as the search for causes takes them. */
export const levelled = (days: readonly TillDay[]) =>
  days.map((day) => ({
    day,
    kind: '',
    level: day.parties.reduce((sum, one) => sum + one, 0),
  }));

/** @param drift parties of the last day over those of the first, growing evenly */
export function simulatedTill(seed: string, days: number, drift: number): Tally {
  const stream = new Stream(streamKey(seed, 'till'));
  const shape = 1 / CV ** 2;
  const all = new Map<number, TillDay>();
  for (let at = 0; at < days; at += 1) {
    const level = (standardGamma(shape, stream) / shape) * (1 + ((drift - 1) * at) / (days - 1));
    const parties = SLOTS.map((mean) => poisson(mean * level, stream));
    const day = FIRST_DAY + 7 * at;
    all.set(day, {
      day,
      tickets: parties,
      parties,
      drinks: parties,
      byGroup: [parties.reduce((sum, one) => sum + one, 0)],
      sizes: [],
    });
  }
  return {
    form: 'counts',
    rows: 0,
    skipped: [],
    ignoredRows: 0,
    otherItems: [],
    repeatedRows: 0,
    tickets: 0,
    parties: 0,
    drinks: 0,
    sizes: [],
    partiesOutsideHours: 0,
    tooLarge: 0,
    dayReturns: 0,
    minutesMerged: false,
    markedUtc: false,
    days: all,
  };
}

function poisson(mean: number, stream: Stream): number {
  let count = 0;
  for (let sum = stream.exponential(); sum < mean; sum += stream.exponential()) count += 1;
  return count;
}
