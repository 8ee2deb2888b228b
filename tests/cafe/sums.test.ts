/** What is gathered of a day is what somebody who looks on adds up from moment to moment. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor, type Watcher } from '../../src/cafe/floor.js';
import { glance } from '../../src/cafe/looking-on.js';
import type { CafeModel, StorageModel } from '../../src/cafe/model.js';
import { PLACE_COUNT } from '../../src/cafe/places.js';
import { runDays } from '../../src/cafe/run-days.js';
import { SUMS, type SumName } from '../../src/cafe/rush.js';
import { STAGE } from '../../src/cafe/washing/machines.js';
import { smallStock, wholeCafe } from '../oracles/generators.js';

const QUARTER_MS = 900_000;
const MINUTE = 60_000;

/** Adds up how long things last: all day, or as far as the doors are open. */
class Onlooker implements Watcher {
  readonly sums: Partial<Record<SumName, number>> = {};
  readonly pieceMs: number[];
  readonly peaks: number[];
  readonly rackPeaks: number[];
  private readonly quarters: number[];

  constructor(private readonly model: CafeModel) {
    this.pieceMs = Array.from({ length: model.ware.length * PLACE_COUNT }, () => 0);
    this.peaks = model.ware.map(() => 0);
    this.rackPeaks = model.rackKinds.map(() => 0);
    this.quarters = Array.from({ length: Math.ceil(model.closingMs / QUARTER_MS) }, () => 0);
  }

  private add(name: SumName, value: number): void {
    this.sums[name] = (this.sums[name] ?? 0) + value;
  }

  before(nextMs: number, floor: Floor): void {
    const { now, washing, staff } = floor;
    const { closingMs } = this.model;
    const last = nextMs === Infinity;
    const long = last ? 0 : nextMs - now;
    const open = Math.max(0, Math.min(now + long, closingMs) - now);
    const seen = glance(floor);
    this.add('machineMs', seen.machinesBusy * open);
    this.add('makerMs', seen.makersBusy * open);
    this.add('handMs', seen.handsBusy * open);
    this.add('clearerMs', seen.clearersBusy * open);
    this.add('seatMs', seen.seatsTaken * open);
    this.add('waitedMs', seen.drinksWaiting * long);
    this.add('runMs', long);
    const handled = washing.machines.list.filter(
      ({ stage }) => stage === STAGE.loading || stage === STAGE.unloading,
    ).length;
    this.add('handlingMs', handled * long);
    // Hands that do nothing else polish what they do not load or unload.
    if (!staff.handsAreMakers && !staff.handsAreClearers)
      this.add('polishMs', (seen.handsBusy - handled) * long);
    this.hold(now, last ? Math.max(now, closingMs) : now + open, seen.seatsTaken);
    this.count(floor, long);
  }

  /** Seats taken from a moment to another. */
  private hold(from: number, to: number, seats: number): void {
    for (let at = from; at < to;) {
      const quarter = Math.floor(at / QUARTER_MS);
      const until = Math.min(to, (quarter + 1) * QUARTER_MS);
      this.quarters[quarter]! += seats * (until - at);
      at = until;
    }
  }

  private count({ ledger, bench }: Floor, long: number): void {
    this.model.ware.forEach((_, ware) => {
      let off = 0;
      for (let place = 1; place < PLACE_COUNT; place += 1) {
        const cell = ware * PLACE_COUNT + place;
        const pieces = ledger.counts[cell]!;
        this.pieceMs[cell]! += pieces * long;
        off += pieces;
      }
      this.peaks[ware] = Math.max(this.peaks[ware]!, off);
    });
    this.rackPeaks.forEach((most, kind) => {
      this.rackPeaks[kind] = Math.max(most, bench.inUse[kind]!);
    });
  }

  /** Most of the seats held in a quarter of an hour, in thousandths. */
  get seatPermille(): number {
    const { seats, closingMs } = this.model;
    if (seats.count === null) return 0;
    const means = this.quarters.map(
      (held, quarter) => held / Math.min(QUARTER_MS, closingMs - quarter * QUARTER_MS),
    );
    return Math.round((1000 * Math.max(...means)) / seats.count);
  }
}

const twoPlaces: fc.Arbitrary<StorageModel | null> = fc.option(
  fc.record({
    onTop: fc.array(fc.option(fc.integer({ min: 3, max: 5 })), { minLength: 8, maxLength: 8 }),
    trigger: fc.array(fc.nat(2), { minLength: 8, maxLength: 8 }),
    trip: fc.nat(4).map((minutes) => ({ law: 'constant', ms: minutes * MINUTE }) as const),
    tripPieces: fc.option(fc.integer({ min: 1, max: 3 })),
    fetchers: fc.constantFrom<StorageModel['fetchers']>(1, null, 'makers'),
  }),
);

it('what is gathered of a day is what an onlooker adds up from moment to moment', () => {
  const total: Partial<Record<SumName, number>> = {};
  fc.assert(
    fc.property(
      wholeCafe({ lowWater: true }),
      twoPlaces,
      fc.option(smallStock(4, 8), { nil: null }),
      fc.nat(1000),
      (cafe, places, pieces, number) => {
        const wares = cafe.ware.length;
        const storage = places && {
          ...places,
          onTop: places.onTop.slice(0, wares),
          trigger: places.trigger.slice(0, wares),
        };
        const model = { ...cafe, storage };
        const stock = pieces?.slice(0, wares) ?? null;
        const run = runDays({
          model,
          seed: 'sums',
          from: number,
          days: 1,
          stock,
          listed: null,
          byDay: true,
        });
        const [floor, day] = [new Floor(model, 'sums'), new Day()];
        new Demand(model, 'sums').draw(number, day);
        const onlooker = new Onlooker(model);
        floor.run(day, number, stock, onlooker);
        const { sums } = run;
        const { waitedMs, ...rest } = onlooker.sums;
        expect(sums).toMatchObject(rest);
        // Of drinks that nobody ever made the wait does not count.
        if (sums.unserved === 0) expect(sums.waitedMs).toBe(waitedMs);
        expect([...run.pieceMs]).toEqual(onlooker.pieceMs);
        expect([...run.peaks]).toEqual(onlooker.peaks);
        expect([...run.rackPeaks]).toEqual(onlooker.rackPeaks);
        expect([...run.seatPermille]).toEqual([onlooker.seatPermille]);
        for (const [name, sum] of Object.entries(sums)) {
          expect(sum).toBeGreaterThanOrEqual(0);
          total[name as SumName] = (total[name as SumName] ?? 0) + sum;
        }
        expect(run.guestsAtDoor[0]).toBe(
          sums.guestsSeated + sums.guestsTookAway + sums.guestsLeft + sums.guestsTakeawayInstead,
        );
        expect(sums.drinksStarted + sums.unserved).toBe(sums.houseDrinks + sums.takeawayDrinks);
        expect(run.away.reduce((all, cups) => all + cups, 0)).toBe(sums.takeawayDrinks);
        expect(run.paper.reduce((all, cups) => all + cups, 0)).toBe(sums.paperFallBacks);
        expect(run.short.reduce((all, drinks) => all + drinks, 0)).toBe(sums.shortDrinks);
        expect(sums.safeDays).toBe(sums.shortDrinks === 0 ? 1 : 0);
        expect(sums.fillPermille).toBeLessThanOrEqual(1000 * sums.ownRacks);
        expect(sums.ownRacks).toBeLessThanOrEqual(sums.racks);
      },
    ),
    { seed: 62, numRuns: 120 },
  );
  // Nothing was left out.
  for (const name of SUMS) expect(total[name], name).toBeGreaterThan(0);
});
