/**
 * The café against a general-purpose simulation library (simjs, from npm) that knows nothing of it: a
 * house of 60 cups, guests who leave unserved when none is clean, rounds every 5 minutes, one machine of 25.
 */
import { createRequire } from 'node:module';
import { mean, sampleVariance } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { IN_USE } from '../../src/cafe/places.js';
import { idealised, instantMachine, modelOf, steady } from './scenario-of.js';

interface Entity {
  setTimer(time: number): { done(call: () => void): void };
}
interface Library {
  Sim: new () => { addEntity(kind: new () => Entity): Entity; simulate(until: number): void };
  Entity: new (...args: unknown[]) => Entity;
  Random: new (seed: number) => { exponential(rate: number): number };
}

const [CUPS, EVERY, CYCLE, RACK, MINUTES] = [60, 5, 3, 25, 240];

/** The library wants a browser's window; it leaves what it exports there. */
function library(): Library {
  const holder = globalThis as unknown as { window?: unknown };
  holder.window ??= {};
  createRequire(import.meta.url)('simjs');
  return (holder.window as { Sim: Library }).Sim;
}

function theirs({ Sim, Entity, Random }: Library, seed: number): { lost: number; mostInHand: number } {
  const random = new Random(seed);
  let [clean, dirty, waiting, washing, inHand, lost, mostInHand] = [CUPS, 0, 0, 0, 0, 0, 0];
  class House extends Entity {
    start(): void {
      this.guest();
      this.round();
    }
    guest(): void {
      this.setTimer(random.exponential(2)).done(() => {
        if (clean > 0) {
          clean -= 1;
          inHand += 1;
          mostInHand = Math.max(mostInHand, inHand);
          this.setTimer(random.exponential(1 / 20)).done(() => {
            inHand -= 1;
            dirty += 1;
          });
        } else lost += 1;
        this.guest();
      });
    }
    round(): void {
      this.setTimer(EVERY).done(() => {
        waiting += dirty;
        dirty = 0;
        this.wash();
        this.round();
      });
    }
    wash(): void {
      if (washing > 0 || waiting === 0) return;
      washing = Math.min(RACK, waiting);
      waiting -= washing;
      this.setTimer(CYCLE).done(() => {
        clean += washing;
        washing = 0;
        this.wash();
      });
    }
  }
  const sim = new Sim();
  sim.addEntity(House as unknown as new () => Entity);
  sim.simulate(MINUTES);
  return { lost, mostInHand };
}

function ours(days: number): { lost: number; mostInHand: number }[] {
  const model = modelOf(
    idealised({
      ...steady(2, MINUTES),
      guests: { partySize: 1, staysIn: '100 %', drinksEach: 1, secondDrink: 0, dwell: { exponential: '20 min' } },
      menu: { coffee: { share: 1, setting: ['cup'], fallBacks: ['takeaway'], making: '0 s' } },
      ware: { cup: { price: '1 EUR', family: 'china', perRack: RACK, drying: '0 s' } },
      clearing: { every: `${EVERY} min`, clearers: 'unlimited', tripPieces: 'unlimited', trip: '0 s' },
      washing: { machines: [{ ...instantMachine, cycle: `${CYCLE} min` }], hands: 'unlimited', partLoadWait: '0 s' },
    }),
  );
  const [floor, demand, day] = [new Floor(model, 'library'), new Demand(model, 'library'), new Day()];
  return Array.from({ length: days }, (_, number) => {
    let mostInHand = 0;
    demand.draw(number, day);
    floor.run(day, number, [CUPS], {
      before: (_next, { ledger }) => {
        mostInHand = Math.max(mostInHand, ledger.counts[IN_USE]!);
      },
    });
    return { lost: floor.counter.shortDrinks, mostInHand };
  });
}

describe('the cup cycle', () => {
  const RUNS = 1500;
  const known = library();
  const their = Array.from({ length: RUNS }, (_, seed) => theirs(known, seed + 1));
  const our = ours(RUNS);

  it.each(['lost', 'mostInHand'] as const)('%s: means within four standard errors of each other', (what) => {
    const [a, b] = [our.map((run) => run[what]), their.map((run) => run[what])];
    const error = Math.sqrt((sampleVariance(a) + sampleVariance(b)) / RUNS);
    expect(error).toBeGreaterThan(0);
    expect(Math.abs(mean(a) - mean(b)), `${mean(a)} against ${mean(b)} ± ${error}`).toBeLessThanOrEqual(4 * error);
  });
});
