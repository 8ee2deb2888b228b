/**
 * The floor against the plain model of tests/oracles, on small cafés and listed days full of ties.
 *
 * The plain model was written from the rules, without a look at the floor, and is far too slow to size
 * anything; where the two tell a day differently, one of them has misread a rule.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Floor } from '../../src/cafe/floor.js';
import type { ListedDay } from '../../src/cafe/listed-day.js';
import { fillDay } from '../../src/cafe/listed-day.js';
import type { CafeModel } from '../../src/cafe/model.js';
import {
  BENCH,
  CARRIED,
  DIRTY_TABLE,
  DRYING,
  IN_USE,
  PLACE_COUNT,
  RACKED,
  WASHING,
} from '../../src/cafe/places.js';
import { smallRush } from '../oracles/generators.js';
import type { PlainOutcome } from '../oracles/plain-floor.js';
import { plainFloor } from '../oracles/plain-floor.js';

/** More runs by hand: ORACLE_RUNS=20000 ORACLE_SEED=1 npx vitest run --config tests/vitest.config.ts tests/cafe/against-oracle */
const PARAMETERS = {
  seed: Number(process.env['ORACLE_SEED'] ?? 20),
  numRuns: Number(process.env['ORACLE_RUNS'] ?? 375),
};

/** The floor's places in the plain model's order, the shelf left out. */
const PLACES = [IN_USE, DIRTY_TABLE, CARRIED, BENCH, RACKED, WASHING, DRYING];

/** What the floor tells of a listed day, in the plain model's terms. */
function told(floor: Floor, day: Day, stock: number[] | null): PlainOutcome {
  floor.run(day, 0, stock);
  const { counter, ledger, seats, model } = floor;
  const countAt =
    (w: number) =>
    (place: number): number =>
      ledger.counts[w * PLACE_COUNT + place]!;
  return {
    peaks: model.ware.map((_, w) => ledger.peak(w)),
    short: [...counter.short],
    firstShortMs: counter.firstShort < 0 ? null : counter.firstShort,
    left: seats.partiesLeft,
    takeawayInstead: seats.partiesTakeawayInstead,
    unserved: counter.unserved,
    atEnd: model.ware.map((_, w) => PLACES.map(countAt(w))),
    stays: model.ware.map((_, w) =>
      PLACES.map((place) => ledger.pieceMs(w, place) - countAt(w)(place) * ledger.now),
    ),
  };
}

function bothAgree(
  model: CafeModel,
  listed: ListedDay,
  stocks: readonly (number[] | null)[],
): void {
  const floor = new Floor(model, 'any seed');
  const day = new Day();
  fillDay(listed, model.menu, day);
  // One floor runs all stocks, so that nothing of a run may linger.
  for (const stock of stocks) {
    expect(told(floor, day, stock)).toEqual(plainFloor(model, listed, stock));
  }
}

describe('the floor and the plain model tell the same day', () => {
  for (const washUp of [false, true]) {
    const where = washUp ? 'where washing is the narrow place' : 'in any small café';
    it(`${where}, no rule looking at the clean count`, () => {
      fc.assert(
        fc.property(smallRush({ lowWater: false, washUp }), ({ model, day, stock }) =>
          bothAgree(model, day, [null, stock, null]),
        ),
        PARAMETERS,
      );
    });

    it(`${where}, with low-water marks`, () => {
      fc.assert(
        fc.property(smallRush({ lowWater: true, washUp }), ({ model, day, stock }) =>
          bothAgree(model, day, [stock, null, stock]),
        ),
        PARAMETERS,
      );
    });
  }
});
