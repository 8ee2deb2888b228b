/** Days far beyond the room that is there to begin with: as many parties as a day brings, each like the first. */
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Floor } from '../../src/cafe/floor.js';
import { fillDay, type ListedParty } from '../../src/cafe/listed-day.js';
import { idealised, instantMachine, modelOf } from '../published/scenario-of.js';

const PARTIES = 701;
const house = (changes: Record<string, unknown>) =>
  modelOf(
    idealised({
      hours: { for: '800 min' },
      arrivals: { steps: [{ for: '800 min', parties: '0 / min' }], dayFactor: 0 },
      ...changes,
    }),
  );

/** Two coffees at once and one half-way through a stay of half a minute. */
const partyAt = (minute: number): ListedParty => ({
  minute,
  size: 2,
  staysIn: true,
  dwellMinutes: 0.5,
  drinks: [1, 2].map(() => ({ drink: 'coffee', makeMinutes: 0.1 })),
  seconds: [{ drink: 'coffee', makeMinutes: 0.1, shareOfDwell: 0.5 }],
});

function after(model: ReturnType<typeof house>, parties: readonly ListedParty[]): Floor {
  const floor = new Floor(model, 'large');
  const day = new Day();
  // A small day first, so that the large one has to make room in a house that has run.
  for (const some of [parties.slice(0, 3), parties]) {
    fillDay({ parties: some }, model.menu, day);
    floor.run(day, 0, null);
  }
  return floor;
}

describe('a day of 701 parties', () => {
  it('one after another: uses and seats are those of one party, so many times; peaks are those of one', () => {
    const washing = { machines: [instantMachine], hands: 1, partLoadWait: '0 s' };
    const parties = Array.from({ length: PARTIES }, (_, minute) => partyAt(minute));
    const { ledger, seats, counter, washing: washed } = after(house({ washing }), parties);
    expect([...ledger.uses]).toEqual([3 * PARTIES]);
    expect(ledger.peak(0)).toBe(3);
    expect(counter.started).toBe(3 * PARTIES);
    expect([seats.guestsSeated, seats.guestsInHouse]).toEqual([2 * PARTIES, 0]);
    // Each stays the six seconds of its first drinks and then thirty.
    expect(seats.seatMs()).toBe(2 * PARTIES * 36_000);
    expect(washed.racks).toBe(3 * PARTIES);
  });

  it('all at once before two seats: they sit down one after another, as they came', () => {
    const seats = { count: 2, whenFull: 'wait', waitLimit: '2000 min' };
    const parties = Array.from({ length: PARTIES }, () => partyAt(0));
    const floor = after(house({ seats }), parties);
    expect(floor.seats.guestsSeated).toBe(2 * PARTIES);
    expect(floor.seats.waiting).toBe(0);
    expect(floor.seats.seatMs()).toBe(2 * PARTIES * 36_000);
  });

  it('all at once before one maker: drinks are made one after another', () => {
    const counter = { makers: 1, making: '0 s' };
    const parties = Array.from({ length: PARTIES }, () => ({ ...partyAt(0), seconds: [] }));
    const { counter: made, ledger } = after(house({ counter }), parties);
    expect(ledger.peak(0)).toBeGreaterThan(2);
    // Drink n waits for the n − 1 before it, 6 s each.
    const drinks = 2 * PARTIES;
    expect(made.waitedMs).toBe((6000 * drinks * (drinks - 1)) / 2);
  });

  it('is kept in the order of arrival, whatever the order of the list', () => {
    const model = house({});
    const day = new Day();
    const minutes = Array.from({ length: PARTIES }, (_, n) => (n * 7) % PARTIES);
    fillDay(
      { parties: minutes.map((minute) => ({ ...partyAt(minute), size: 1 + (minute % 5) })) },
      model.menu,
      day,
    );
    for (let party = 0; party < PARTIES; party += 1) {
      expect(day.arrivalMs[party]).toBe(party * 60_000);
      expect(day.size[party]).toBe(1 + (party % 5));
      expect([day.firstDrink[party], day.firstSecond[party], day.firstDrink[party + 1]]).toEqual([
        3 * party,
        3 * party + 2,
        3 * party + 3,
      ]);
      expect(day.party[3 * party + 2]).toBe(party);
    }
  });
});

describe('the count of events', () => {
  it('is none where nobody comes, also where machines have no warm-up', () => {
    const washing = { machines: [instantMachine], hands: 1, partLoadWait: '0 s' };
    expect(after(house({ washing }), []).happened).toBe(0);
  });

  it('is what a watcher saw, wherever the day is paused', () => {
    const model = house({});
    const parties = Array.from({ length: 40 }, (_, minute) => partyAt(minute / 8));
    const day = new Day();
    fillDay({ parties }, model.menu, day);
    for (const most of [1, 7, 1000]) {
      const floor = new Floor(model, 'large');
      let seen = 0;
      const watcher = { before: (nextMs: number) => void (seen += nextMs < Infinity ? 1 : 0) };
      floor.open(day, 0, null);
      for (let turn = 1; !floor.advance(most, watcher); turn += 1) {
        expect(seen).toBe(turn * most);
        expect(floor.happened).toBe(seen);
      }
      expect(floor.happened).toBe(seen);
      expect(seen).toBeGreaterThan(300);
    }
  });
});
