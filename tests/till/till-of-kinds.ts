/** Tills of a small house whose kinds of day are known: days at random levels, and weekends as the test will have them. */
import { standardGamma } from '../../src/engine/durations.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { weekdayOf } from '../../src/till/clock.js';
import type { TillMap } from '../../src/till/compile-map.js';
import type { Tally, TillDay } from '../../src/till/tally.js';
import { simulatedTill, smallBase, smallMap } from '../questions/backtest/simulated-till.js';
import { poisson } from './sales.js';

/** Another of these on weekends. */
export interface Weekends {
  /** Parties a day, as a multiple. */
  readonly times?: number;
  /** The day's slots in reverse order. */
  readonly late?: boolean;
  /** Share of the second drink, where it is 30 % on other days. */
  readonly tea?: number;
}

const SLOTS = [2, 4, 6, 6, 4, 8];
const CV = 0.15;
const TEA = 0.3;
/** A Monday. */
const FIRST_DAY = 20_003;

export const weekendMap: TillMap = {
  ...smallMap,
  groups: [
    { drinks: ['coffee'], items: ['coffee'] },
    { drinks: ['tea'], items: ['tea'] },
  ],
  kinds: [{ id: 'weekend', weekdays: [5, 6], between: [], dates: [] }],
};

const base = JSON.parse(smallBase) as { menu: { coffee: object }; costs?: object };
export const baseOfKinds = JSON.stringify({
  ...base,
  menu: { ...base.menu, tea: base.menu.coffee },
  costs: { ...base.costs, daysAYear: 300 },
});

/** @param weeks whole ones, from a Monday */
export function tillOfKinds(seed: string, weeks: number, weekends: Weekends): Tally {
  const stream = new Stream(streamKey(seed, 'till of kinds'));
  const shape = 1 / CV ** 2;
  const days = new Map<number, TillDay>();
  for (let day = FIRST_DAY; day < FIRST_DAY + 7 * weeks; day += 1) {
    const { times = 1, late = false, tea = TEA } = weekdayOf(day) > 4 ? weekends : {};
    const level = (times * standardGamma(shape, stream)) / shape;
    const means = late ? SLOTS.toReversed() : SLOTS;
    const parties = means.map((mean) => poisson(stream, mean * level));
    const all = parties.reduce((sum, one) => sum + one, 0);
    const teas = Array.from({ length: all }, () => stream.uniform()).filter((luck) => luck < tea);
    days.set(day, {
      day,
      tickets: parties,
      parties,
      drinks: parties,
      byGroup: [all - teas.length, teas.length],
      sizes: [],
    });
  }
  return { ...simulatedTill(seed, 2, 1), days };
}
