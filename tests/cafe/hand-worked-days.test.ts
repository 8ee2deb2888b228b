/** The habits of people, one day worked by hand for each: what is said beside it can be followed with a pencil. */
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { fillDay, type ListedDay } from '../../src/cafe/listed-day.js';
import { BENCH, CARRIED, IN_USE, RACKED, WASHING } from '../../src/cafe/places.js';
import { Recurrence } from '../../src/cafe/recurrence.js';
import { idealised, instantMachine, modelOf } from '../published/scenario-of.js';
import { watchMoves } from './watch-moves.js';

const MINUTE = 60_000;
const open = {
  hours: { for: '60 min' },
  arrivals: { steps: [{ for: '60 min', parties: '0 / min' }], dayFactor: 0 },
};
const cups = (perRack: number) => ({
  cup: { price: '1 EUR', family: 'china', perRack, drying: '0 s' },
});
const party = (minute: number, dwellMinutes: number, size = 1) => ({
  minute,
  size,
  staysIn: true,
  dwellMinutes,
  drinks: Array.from({ length: size }, () => ({ drink: 'coffee', makeMinutes: 0 })),
  seconds: [],
});

/** Minutes at which pieces reach a place, one entry a move. */
function minutesTo(place: number, changes: Record<string, unknown>, day: ListedDay): number[] {
  const model = modelOf(idealised({ ...open, ...changes }));
  const floor = new Floor(model, 'by hand');
  const seen: number[] = [];
  watchMoves(floor, (_ware, to, pieces) => {
    if (to === place) for (let n = 0; n < pieces; n += 1) seen.push(floor.now / MINUTE);
  });
  const filled = new Day();
  fillDay(day, model.menu, filled);
  floor.run(filled, 0, null);
  return seen;
}

describe('extra rounds', () => {
  const clearing = { every: '30 min', clearers: 1, trip: '2 min', tripPieces: 2 };

  it('whenDirty: the third dirty piece calls a clearer, who walks until no table is dirty', () => {
    // Parties leave at 3, 5 and 6 min; at 6 there are three pieces, so two go at once and the third on the next trip.
    // The piece left at 20 waits for the timed round at 30.
    const day = { parties: [party(0, 3), party(0, 5), party(0, 6), party(0, 20)] };
    expect(minutesTo(CARRIED, { clearing: { ...clearing, whenDirty: 3 } }, day)).toEqual([
      6, 6, 8, 30,
    ]);
    expect(minutesTo(CARRIED, { clearing }, day)).toEqual([30, 30, 32, 32]);
  });

  it('whenDirty: pieces that are carried do not count, and one extra round goes on at a time', () => {
    // At 4 the first two call the first clearer; the pieces left at 5 and 5.5 are two again, but somebody is on an
    // extra round, who takes them at 6. The second clearer stays until the timed round.
    const day = { parties: [party(0, 3), party(0, 4), party(0, 5), party(0, 5.5)] };
    expect(
      minutesTo(CARRIED, { clearing: { ...clearing, clearers: 2, whenDirty: 2 } }, day),
    ).toEqual([4, 4, 6, 6]);
  });

  it('forSeats: a party that leaves a dirty table while another waits calls a clearer', () => {
    // One seat. The guest leaves at 10; the next has waited since 8 and sits when the trip is over, at 12.
    const seats = { count: 1, whenFull: 'wait', waitLimit: '15 min', heldUntilCleared: true };
    const day = { parties: [party(0, 10), party(8, 5)] };
    const sat = (forSeats: boolean) =>
      minutesTo(IN_USE, { seats, clearing: { ...clearing, forSeats } }, day);
    expect(sat(true)).toEqual([0, 12]);
    // Without it the guest gives up at 23, before the round at 30.
    expect(sat(false)).toEqual([0]);
  });

  it('a hand that clears and washes: once it has unloaded it is free for an extra round', () => {
    // The cup of 1 min is carried from 2 to 4 (whenDirty 1), loaded 4 to 5 and washed until 8; the cup left at 4.5 finds
    // the clearer loading, who is free at 5 and takes it then.
    const day = { parties: [party(0, 2), party(0, 4.5)] };
    const washing = {
      machines: [{ ...instantMachine, loading: '1 min', cycle: '3 min' }],
      hands: 'clearers',
      partLoadWait: '0 s',
    };
    expect(minutesTo(CARRIED, { washing, clearing: { ...clearing, whenDirty: 1 } }, day)).toEqual([
      2, 5,
    ]);
  });
});

describe('rounds after closing', () => {
  it('go on for a guest who is still there, however often a machine has broken down', () => {
    // The second machine breaks down at 6, 14, 22 … min for 2 min each. The guest leaves at 75: the round at 50 has nothing to do, the one at 100 has.
    const machines = [
      instantMachine,
      { ...instantMachine, breakdown: { until: '6 min', repair: '2 min' } },
    ];
    const washing = { machines, hands: 'unlimited', partLoadWait: '0 s' };
    const clearing = { every: '50 min', clearers: 1, trip: '1 min' };
    const day = { parties: [party(0, 75)] };
    expect(minutesTo(CARRIED, { clearing, washing }, day)).toEqual([100]);
  });
});

describe('part loads from a least filled share', () => {
  const washing = (more: Record<string, unknown>) => ({
    machines: [{ ...instantMachine, cycle: '1 min' }],
    hands: 'unlimited',
    ...more,
  });

  it('goes by waiting only when filled enough, and then the moment it gets there', () => {
    // Five to a rack. Cups at 1, 2 and 9 min; the wait of 4 min is over at 5 with two of five in it; at 9 it is three.
    const day = { parties: [party(0, 1), party(0, 2), party(0, 9)] };
    const at = (partLoadFrom?: string) =>
      minutesTo(
        WASHING,
        {
          ware: cups(5),
          washing: washing({
            partLoadWait: '4 min',
            ...(partLoadFrom === undefined ? {} : { partLoadFrom }),
          }),
        },
        day,
      );
    expect(at('60 %')).toEqual([9, 9, 9]);
    expect(at('40 %')).toEqual([5, 5, 60]);
    expect(at()).toEqual([5, 5, 13]);
  });

  it('counts a mixed rack by the room each piece takes', () => {
    // A cup takes 1/4 and a spoon 1/12: cup and spoon fill a third of the rack, exactly.
    const menu = { coffee: { share: 1, setting: ['cup', 'spoon'], making: '0 s' } };
    const ware = {
      cup: { price: '1 EUR', family: 'mixed', perRack: 4, drying: '0 s' },
      spoon: { price: '1 EUR', family: 'mixed', perRack: 12, drying: '0 s' },
    };
    const at = (partLoadFrom: string | number) =>
      minutesTo(
        WASHING,
        { menu, ware, washing: washing({ partLoadWait: '0 s', partLoadFrom }) },
        { parties: [party(0, 1), party(0, 7)] },
      );
    expect(at(1 / 3)).toEqual([1, 1, 7, 7]);
    expect(at('33.33333333333333 %')).toEqual([1, 1, 7, 7]);
    expect(at('34 %')).toEqual([7, 7, 7, 7]);
  });

  it('never: part racks wait for the closing sweep, once nothing is in use, dirty or carried', () => {
    // Rounds at 50 and 100 min. The last guest leaves at 70, after closing at 60; the cup reaches the bench at 101.
    const day = { parties: [party(0, 3), party(55, 15)] };
    const clearing = { every: '50 min', clearers: 1, trip: '1 min' };
    const at = (more: Record<string, unknown>) =>
      minutesTo(
        WASHING,
        { ware: cups(5), clearing, washing: washing({ partLoadWait: 'never', ...more }) },
        day,
      );
    expect(at({ partLoadFrom: '50 %' })).toEqual([101, 101]);
    expect(at({})).toEqual([]);
  });

  it('by time: a rack released too empty goes once it is filled enough', () => {
    const day = { parties: [party(0, 3), party(0, 12)] };
    expect(
      minutesTo(
        WASHING,
        {
          ware: cups(4),
          washing: washing({
            partLoadWait: 'never',
            partLoadsEvery: '10 min',
            partLoadFrom: '50 %',
          }),
        },
        day,
      ),
    ).toEqual([12, 12]);
  });

  it('does not bind racks wanted for loose pieces', () => {
    // One rack of two families: the spoon's rack is wanted by the cup, and goes though it is nearly empty.
    const menu = { coffee: { share: 1, setting: ['spoon', 'cup'], making: '0 s' } };
    const ware = {
      cup: { price: '1 EUR', family: 'china', perRack: 4, drying: '0 s' },
      spoon: { price: '1 EUR', family: 'spoons', perRack: 12, drying: '0 s' },
    };
    expect(
      minutesTo(
        WASHING,
        {
          menu,
          ware,
          racks: { families: { china: 'open', spoons: 'open' }, owned: { open: 1 } },
          washing: washing({ partLoadWait: 'never', partLoadFrom: '90 %' }),
        },
        { parties: [party(0, 2)] },
      ),
    ).toEqual([2, 60]);
  });
});

describe('of equally full part racks', () => {
  it('goes the one whose first piece reached the bench first', () => {
    // Both racks of the kind are open, half full each: glasses since 1 min, cups since 2. At 3 a saucer finds none free.
    const menu = {
      water: { share: 0.4, setting: ['glass'], making: '0 s' },
      coffee: { share: 0.3, setting: ['cup'], making: '0 s' },
      cake: { share: 0.3, setting: ['saucer'], making: '0 s' },
    };
    const one = (family: string) => ({ price: '1 EUR', family, perRack: 2, drying: '0 s' });
    const ware = { cup: one('cups'), glass: one('glasses'), saucer: one('saucers') };
    const model = modelOf(
      idealised({
        ...open,
        menu,
        ware,
        racks: {
          families: { cups: 'open', glasses: 'open', saucers: 'open' },
          owned: { open: 2 },
        },
        washing: {
          machines: [{ ...instantMachine, cycle: '30 min' }],
          hands: 'unlimited',
          partLoadWait: 'never',
        },
      }),
    );
    const first = (order: readonly [string, string]): number => {
      const floor = new Floor(model, 'ties');
      const washed: number[] = [];
      watchMoves(floor, (ware, to) => {
        if (to === WASHING) washed.push(ware);
      });
      const day = new Day();
      const of = (drink: string, dwell: number) => ({
        ...party(0, dwell),
        drinks: [{ drink, makeMinutes: 0 }],
      });
      fillDay({ parties: [of(order[0], 1), of(order[1], 2), of('cake', 3)] }, model.menu, day);
      floor.run(day, 0, null);
      return washed[0]!;
    };
    expect(model.ware.map(({ id }) => id)).toEqual(['cup', 'glass', 'saucer']);
    expect(first(['water', 'coffee'])).toBe(1);
    expect(first(['coffee', 'water'])).toBe(0);
  });
});

describe('habits that vary', () => {
  it('fall first a uniform share of an interval after opening, then interval by interval, each at least a second', () => {
    const about = new Recurrence({ law: 'gamma', meanMs: 600_000, sdMs: 180_000 }, 'a', 'rounds');
    const firsts = Array.from({ length: 4000 }, (_, day) => about.first(day));
    // Mean of interval × share: half of ten minutes; four standard errors either way.
    const mean = firsts.reduce((sum, ms) => sum + ms, 0) / firsts.length;
    expect(Math.abs(mean - 300_000)).toBeLessThan(4 * (300_000 / Math.sqrt(4000)));
    expect(firsts.every((ms) => ms >= 0 && Number.isInteger(ms))).toBe(true);
    expect(about.first(7)).toBe(firsts[7]);
    const brief = new Recurrence({ law: 'exponential', meanMs: 10 }, 'a', 'rounds');
    expect(brief.next(5000)).toBe(6000);
    const constant = new Recurrence({ law: 'constant', ms: 600_000 }, 'a', 'rounds');
    expect([constant.first(3), constant.next(600_000)]).toEqual([600_000, 1_200_000]);
  });

  it('a wait counts from the moment the first piece reached the bench, also where it lay loose before', () => {
    // One rack of one piece in a cycle of 10 min; the second cup lies loose from 2 and is racked at 11.
    const ware = {
      cup: { price: '1 EUR', family: 'china', perRack: 1, drying: '0 s' },
      spoon: { price: '1 EUR', family: 'spoons', perRack: 9, drying: '0 s' },
    };
    const menu = {
      coffee: { share: 0.5, setting: ['cup'], making: '0 s' },
      stir: { share: 0.5, setting: ['spoon'], making: '0 s' },
    };
    const day = {
      parties: [party(0, 1), { ...party(0, 2), drinks: [{ drink: 'stir', makeMinutes: 0 }] }],
    };
    const at = (partLoadWait: unknown) =>
      minutesTo(
        WASHING,
        {
          menu,
          ware,
          racks: { families: { china: 'open', spoons: 'open' }, owned: { open: 1 } },
          washing: {
            machines: [{ ...instantMachine, cycle: '10 min' }],
            hands: 'unlimited',
            partLoadWait,
          },
        },
        day,
      );
    expect(at('9 min')).toEqual([1, 11]);
    expect(at('12 min')).toEqual([1, 14]);
    expect(at({ measured: ['12 min', '12 min'] })).toEqual([1, 14]);
  });
});

describe('shares by time of day', () => {
  it('are those of the arrival: mornings take tea away, afternoons stay for coffee; a lull between two services', () => {
    const model = modelOf(
      idealised({
        hours: { for: '180 min' },
        arrivals: {
          steps: [
            { for: '60 min', parties: '2 / min' },
            { for: '60 min', parties: '0 / min' },
            { for: '60 min', parties: '1 / min' },
          ],
          dayFactor: 0,
        },
        guests: {
          partySize: 1,
          staysIn: [
            { for: '60 min', staysIn: '0 %' },
            { for: '120 min', staysIn: '100 %' },
          ],
          drinksEach: 1,
          secondDrink: 0,
          dwell: '0 s',
        },
        menu: {
          coffee: {
            share: [
              { for: '90 min', share: '0 %' },
              { for: '90 min', share: '100 %' },
            ],
            setting: ['cup'],
            making: '0 s',
          },
          tea: {
            share: [
              { for: '90 min', share: '100 %' },
              { for: '90 min', share: '0 %' },
            ],
            setting: ['cup'],
            making: '0 s',
          },
        },
      }),
    );
    // Two thirds of the guests come in the morning.
    expect(model.guests.staysIn).toBeCloseTo(1 / 3, 12);
    expect(model.menu.map(({ share }) => share)).toEqual([
      expect.closeTo(1 / 3, 12),
      expect.closeTo(2 / 3, 12),
    ]);
    const demand = new Demand(model, 'shares');
    const day = new Day();
    for (let number = 0; number < 20; number += 1) {
      demand.draw(number, day);
      expect(day.parties).toBeGreaterThan(100);
      for (let at = 0; at < day.parties; at += 1) {
        const morning = day.arrivalMs[at]! < 60 * MINUTE;
        expect(morning || day.arrivalMs[at]! >= 120 * MINUTE).toBe(true);
        expect(day.staysIn[at]).toBe(morning ? 0 : 1);
        expect(day.kind[day.firstDrink[at]!]).toBe(morning ? 1 : 0);
      }
    }
    expect(BENCH).not.toBe(RACKED);
  });
});
