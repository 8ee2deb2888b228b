/**
 * The café against a general-purpose simulation library (simjs, from npm) that knows nothing of it: a
 * house of 60 cups, guests who leave unserved when none is clean, rounds every 5 minutes, one machine of 25.
 */
import { mean, sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { IN_USE } from '../../src/cafe/places.js';
import { CUP_CYCLE, simjsCups } from '../oracles/simjs-cups.js';
import { idealised, instantMachine, modelOf, steady } from './scenario-of.js';

function ours(days: number): { lost: number; mostInHand: number }[] {
  const model = modelOf(
    idealised({
      ...steady(CUP_CYCLE.guestsAMinute, CUP_CYCLE.minutes),
      guests: {
        partySize: 1,
        staysIn: '100 %',
        drinksEach: 1,
        secondDrink: 0,
        dwell: { exponential: `${CUP_CYCLE.dwell} min` },
      },
      menu: { coffee: { share: 1, setting: ['cup'], fallBacks: ['takeaway'], making: '0 s' } },
      ware: { cup: { price: '1 EUR', family: 'china', perRack: CUP_CYCLE.rack, drying: '0 s' } },
      clearing: {
        every: `${CUP_CYCLE.every} min`,
        clearers: 'unlimited',
        tripPieces: 'unlimited',
        trip: '0 s',
      },
      washing: {
        machines: [{ ...instantMachine, cycle: `${CUP_CYCLE.cycle} min` }],
        hands: 'unlimited',
        partLoadWait: '0 s',
      },
    }),
  );
  const [floor, demand, day] = [
    new Floor(model, 'library'),
    new Demand(model, 'library'),
    new Day(),
  ];
  return Array.from({ length: days }, (_, number) => {
    let mostInHand = 0;
    demand.draw(number, day);
    floor.run(day, number, [CUP_CYCLE.cups], {
      before: (_next, { ledger }) => {
        mostInHand = Math.max(mostInHand, ledger.counts[IN_USE]!);
      },
    });
    return { lost: floor.counter.shortDrinks, mostInHand };
  });
}

describe('the cup cycle', () => {
  const RUNS = 1500;
  const theirs = simjsCups();
  const their = Array.from({ length: RUNS }, (_, seed) => theirs(seed + 1));
  const our = ours(RUNS);

  it.each(['lost', 'mostInHand'] as const)(
    '%s: means within four standard errors of each other',
    (what) => {
      const [a, b] = [our.map((run) => run[what]), their.map((run) => run[what])];
      const error = Math.sqrt((sampleVariance(a) + sampleVariance(b)) / RUNS);
      expect(error).toBeGreaterThan(0);
      expect(
        Math.abs(mean(a) - mean(b)),
        `${mean(a)} against ${mean(b)} ± ${error}`,
      ).toBeLessThanOrEqual(4 * error);
    },
  );
});
