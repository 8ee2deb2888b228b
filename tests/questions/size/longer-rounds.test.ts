/**
 * Where seats do not bind and clearers do nothing else, rounds farther apart leave more ware on the tables: the need
 * never falls. Held on houses drawn with a fixed seed, on days that all readings of a house have in common.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pairedDifference } from '../../../src/statistics/paired-difference.js';
import { sizedHouse } from './houses.js';

const ROUNDS = [4, 8, 16];
const DAYS = 200;

const houses = fc.sample(
  fc.record({
    guests: fc.integer({ min: 30, max: 90 }),
    staysIn: fc.integer({ min: 40, max: 90 }),
    machines: fc.integer({ min: 1, max: 2 }),
    hands: fc.integer({ min: 1, max: 2 }),
    clearers: fc.integer({ min: 1, max: 3 }),
    tripPieces: fc.integer({ min: 8, max: 20 }),
    trip: fc.integer({ min: 20, max: 60 }),
    wait: fc.integer({ min: 4, max: 15 }),
    varying: fc.boolean(),
  }),
  { seed: 13, numRuns: 6 },
);

describe('longer mean rounds', () => {
  it.each(houses.map((house) => [JSON.stringify(house), house] as const))(
    'never lower the need: %s',
    async (_name, house) => {
      const daily: number[][] = [];
      const costs: number[] = [];
      for (const round of ROUNDS) {
        const answer = await sizedHouse(
          '1-commuter-bar',
          {
            'arrivals.peak.guests': `${house.guests} / h`,
            'guests.staysIn': `${house.staysIn} %`,
            seats: { count: 'unlimited' },
            'counter.makers': 4,
            clearing: {
              every: `about ${round} min`,
              clearers: house.clearers,
              tripPieces: house.tripPieces,
              trip: house.varying ? `about ${house.trip} s` : `${house.trip} s`,
            },
            'washing.machines': Array.from({ length: house.machines }, () => ({
              class: 'undercounter',
            })),
            'washing.hands': house.hands,
            'washing.partLoadWait': `about ${house.wait} min`,
          },
          { days: DAYS, peaks: true, seed: 'rounds' },
        );
        daily.push(
          answer.peaks!.map((peaks) =>
            peaks.reduce((sum, pieces, ware) => sum + pieces * answer.stock[ware]!.unitCost, 0),
          ),
        );
        costs.push(answer.cost);
      }
      for (const at of [1, 2]) {
        // What each day needs, in money: the interval must leave room for "no less".
        const { high } = pairedDifference(daily[at - 1]!, daily[at]!, 0.999);
        expect(high).toBeGreaterThanOrEqual(0);
      }
      // From one end to the other the need rises for certain, on the mean day and in the stock to buy.
      expect(pairedDifference(daily[0]!, daily[2]!, 0.999).low).toBeGreaterThan(0);
      expect(costs[2]).toBeGreaterThan(costs[0]!);
    },
  );
});
