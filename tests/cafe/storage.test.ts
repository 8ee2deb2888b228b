import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Floor } from '../../src/cafe/floor.js';
import { fillDay, type ListedDay } from '../../src/cafe/listed-day.js';
import type { CafeModel, StorageModel } from '../../src/cafe/model.js';
import { smallRush } from '../oracles/generators.js';
import { idealised, instantMachine, modelOf } from '../published/scenario-of.js';

const MINUTE = 60_000;

function told(model: CafeModel, listed: ListedDay, stock: readonly number[] | null): unknown {
  const floor = new Floor(model, 'storage');
  const day = new Day();
  fillDay(listed, model.menu, day);
  floor.run(day, 0, stock);
  const { ledger, counter, seats } = floor;
  return {
    peaks: model.ware.map((_, ware) => ledger.peak(ware)),
    short: [...counter.short],
    first: counter.firstShort,
    unserved: counter.unserved,
    left: seats.partiesLeft,
    ms: model.ware.map((_, ware) =>
      [1, 2, 3, 4, 5, 6, 7].map((place) => ledger.pieceMs(ware, place)),
    ),
  };
}

const twoPlaces = (model: CafeModel, rules: Partial<StorageModel>): CafeModel => ({
  ...model,
  storage: {
    onTop: model.ware.map(() => 3),
    trigger: model.ware.map(() => 2),
    trip: { law: 'constant', ms: 0 },
    tripPieces: null,
    fetchers: null,
    ...rules,
  },
});

describe('the shelf as two places', () => {
  it('changes nothing where the top has room for all', () => {
    fc.assert(
      fc.property(smallRush({ lowWater: false }), ({ model, day, stock }) => {
        const roomy = twoPlaces(model, {
          onTop: model.ware.map(() => 1_000_000_000),
          trigger: model.ware.map(() => 0),
        });
        expect(told(roomy, day, stock)).toEqual(told(model, day, stock));
        expect(told({ ...model, storage: null }, day, stock)).toEqual(told(model, day, stock));
      }),
      { seed: 20, numRuns: 300 },
    );
  });

  it('makes no drink short that one place would serve, if fetching takes no time', () => {
    fc.assert(
      fc.property(smallRush({ lowWater: false }), ({ model, day }) => {
        // Room and trigger for what any setting takes, so that the top is never too small for a drink.
        const quick = twoPlaces(model, {});
        expect(told(quick, day, null)).toMatchObject({ unserved: 0, first: -1 });
      }),
      { seed: 20, numRuns: 300 },
    );
  });

  it('a drink that finds the top empty waits for the fetch and is not short; worked by hand', () => {
    const model = modelOf(
      idealised({
        hours: { for: '60 min' },
        arrivals: { steps: [{ for: '60 min', parties: '0 / min' }], dayFactor: 0 },
      }),
    );
    const guest = (minute: number) => ({
      minute,
      size: 1,
      staysIn: true,
      dwellMinutes: 30,
      drinks: [{ drink: 'coffee', makeMinutes: 0 }],
      seconds: [],
    });
    const rules = {
      onTop: [1],
      trigger: [0],
      trip: { law: 'constant', ms: 3 * MINUTE },
      tripPieces: 1,
      fetchers: 1,
    } as const;
    const run = (stock: number[], minutes: number[]) => {
      const floor = new Floor({ ...model, storage: rules }, 'storage');
      const day = new Day();
      fillDay({ parties: minutes.map(guest) }, model.menu, day);
      floor.run(day, 0, stock);
      return {
        trips: floor.storage!.trips,
        waits: floor.storage!.waits,
        up: floor.storage!.broughtUp[0],
        short: floor.counter.short[0],
        waited: floor.counter.waitedMs / MINUTE,
      };
    };
    // 0: the only cup on top is taken, a trip sets out (0-3) and brings the second. 1: waits until 3. With two cups no more is in reserve.
    expect(run([2], [0, 1])).toEqual({ trips: 1, waits: 1, up: 1, short: 0, waited: 2 });
    // A third cup: the take at 3 sends for it (3-6), in time for the drink of 7.
    expect(run([3], [0, 1, 7])).toEqual({ trips: 2, waits: 1, up: 2, short: 0, waited: 2 });
    // Nothing left anywhere at 4: short, not waiting; served when the first cup comes back at 30.
    expect(run([2], [0, 1, 4])).toEqual({ trips: 1, waits: 1, up: 1, short: 1, waited: 2 + 26 });
  });

  it('a trip finds the top filled by clean pieces and brings none; worked by hand', () => {
    const model = modelOf(
      idealised({
        hours: { for: '60 min' },
        arrivals: { steps: [{ for: '60 min', parties: '0 / min' }], dayFactor: 0 },
        washing: {
          machines: { unlimited: instantMachine },
          hands: 'unlimited',
          partLoadWait: '0 s',
        },
      }),
    );
    const storage = {
      onTop: [2],
      trigger: [1],
      trip: { law: 'constant', ms: 5 * MINUTE },
      tripPieces: null,
      fetchers: 1,
    } as const;
    const upAfter = (dwellMinutes: number): number => {
      const floor = new Floor({ ...model, storage }, 'storage');
      const drinks = [{ drink: 'coffee', makeMinutes: 0 }];
      const guest = { minute: 0, size: 1, staysIn: true, dwellMinutes, drinks, seconds: [] };
      const day = new Day();
      fillDay({ parties: [guest] }, model.menu, day);
      floor.run(day, 0, [9]);
      return floor.storage!.broughtUp[0]!;
    };
    // One of the two on top is taken at 0, so somebody is away from 0 to 5; a cup that is back at 4 leaves no room, one that is back at 6 does.
    expect([4, 6].map(upAfter)).toEqual([0, 1]);
  });

  it('the maker who fetches makes no drink meanwhile', () => {
    const model = modelOf(
      idealised({
        hours: { for: '60 min' },
        arrivals: { steps: [{ for: '60 min', parties: '0 / min' }], dayFactor: 0 },
        counter: { makers: 1, making: '0 s' },
      }),
    );
    const guest = (minute: number) => ({
      minute,
      size: 1,
      staysIn: true,
      dwellMinutes: 30,
      drinks: [{ drink: 'coffee', makeMinutes: 0 }],
      seconds: [],
    });
    const floor = new Floor(
      {
        ...model,
        storage: {
          onTop: [2],
          trigger: [1],
          trip: { law: 'constant', ms: 5 * MINUTE },
          tripPieces: 1,
          fetchers: 'makers',
        },
      },
      'storage',
    );
    const day = new Day();
    fillDay({ parties: [guest(0), guest(1)] }, model.menu, day);
    floor.run(day, 0, [4]);
    // Served at 0, the maker then fetches until 5; the guest of 1 is served then.
    expect(floor.counter.waitedMs).toBe(4 * MINUTE);
    expect(floor.storage!.waits).toBe(0);
  });

  it('a drink takes from the top what it stands in and nothing else', () => {
    const glass = { price: '1 EUR', family: 'glass', perRack: 1, drying: '0 s' };
    const cup = { ...glass, family: 'china' };
    const model = modelOf(
      idealised({
        hours: { for: '60 min' },
        arrivals: { steps: [{ for: '60 min', parties: '0 / min' }], dayFactor: 0 },
        ware: { cup, glass },
        menu: {
          coffee: { share: 0.5, setting: ['cup'], making: '0 s' },
          juice: { share: 0.5, setting: ['glass'], making: '0 s' },
        },
      }),
    );
    const rules = { onTop: [2, 2], trigger: [1, 1], fetchers: 1, tripPieces: 1 };
    for (const [at, drink] of ['coffee', 'juice'].entries()) {
      const floor = new Floor(twoPlaces(model, rules), 'storage');
      const day = new Day();
      const drinks = [{ drink, makeMinutes: 0 }];
      const guest = { minute: 0, size: 1, staysIn: true, dwellMinutes: 30, drinks, seconds: [] };
      fillDay({ parties: [guest] }, model.menu, day);
      floor.run(day, 0, [9, 9]);
      expect([...floor.storage!.broughtUp]).toEqual([0, 0].with(at, 1));
    }
  });
});
