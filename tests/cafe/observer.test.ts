/** What the floor reports of a day is that day: whoever only listens can keep the same books, and changes nothing. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Day } from '../../src/cafe/day.js';
import { Demand } from '../../src/cafe/demand.js';
import { Floor } from '../../src/cafe/floor.js';
import { PLENTY } from '../../src/cafe/ledger.js';
import { Observer } from '../../src/cafe/observer.js';
import { BENCH, CARRIED, DIRTY_TABLE, PLACE_COUNT, RACKED, SHELF } from '../../src/cafe/places.js';
import { STAGE, type Machine } from '../../src/cafe/washing/machines.js';
import { smallStock, wholeCafe } from '../oracles/generators.js';

/** Books kept from reports alone. */
class Books extends Observer {
  readonly counts: number[];
  readonly lacked: number[];
  /** Pieces by way: from × PLACE_COUNT + to. */
  readonly ways: number[] = Array.from({ length: PLACE_COUNT * PLACE_COUNT }, () => 0);
  /** Pieces before each party that has sat down, and those who have left. */
  readonly tables = new Map<number, number[]>();
  readonly gone = new Set<number>();
  readonly out = new Map<number, number>();
  readonly racks = new Map<number, number>();
  readonly stages = new Map<number, number>();
  readonly totals = { carried: 0, trips: 0, picked: 0, racked: 0, loads: 0, racks: 0 };
  readonly wrong: string[] = [];

  constructor(
    stock: readonly number[],
    private readonly clearers: number,
  ) {
    super();
    this.lacked = stock.map(() => 0);
    this.counts = stock.flatMap((pieces) =>
      Array.from({ length: PLACE_COUNT }, (_, place) => (place === SHELF ? pieces : 0)),
    );
  }

  private rule(what: string, holds: boolean): void {
    if (!holds) this.wrong.push(what);
  }

  override moved(ware: number, from: number, to: number, pieces: number): void {
    this.rule('a move moves something', pieces > 0);
    this.counts[ware * PLACE_COUNT + from]! -= pieces;
    this.counts[ware * PLACE_COUNT + to]! += pieces;
    this.ways[from * PLACE_COUNT + to]! += pieces;
  }

  override short(ware: number): void {
    this.lacked[ware]! += 1;
  }

  override seated(party: number): void {
    this.rule('a party sits down once', !this.tables.has(party));
    this.tables.set(party, []);
  }

  override served(party: number, _drink: number, wares: Int32Array): void {
    this.rule('guests are there when they are served', !this.gone.has(party));
    this.tables.get(party)!.push(...wares);
  }

  override left(party: number): void {
    this.rule('a party leaves once', !this.gone.has(party));
    this.gone.add(party);
  }

  override pickedUp(party: number): void {
    this.rule('only what guests have left is picked up', this.gone.has(party));
    this.rule('there is a piece to pick up', this.tables.get(party)!.shift() !== undefined);
    this.totals.picked += 1;
  }

  override tripBegan(clearer: number, wares: Int32Array): void {
    this.rule('a clearer is on one trip', !this.out.has(clearer));
    this.rule('clearers are numbered from 0 on', clearer >= 0 && clearer < this.clearers);
    this.out.set(clearer, wares.length);
    this.totals.trips += 1;
    this.totals.carried += wares.length;
  }

  override tripEnded(clearer: number): void {
    this.rule('a trip that ends has begun', this.out.delete(clearer));
  }

  override racked(rack: number): void {
    this.racks.set(rack, (this.racks.get(rack) ?? 0) + 1);
    this.totals.racked += 1;
  }

  override rackClosed(rack: number): void {
    this.rule('a closed rack holds something', this.racks.has(rack));
  }

  override machine(number: number, { busy, stage, racks, count }: Machine): void {
    const before = this.stages.get(number) ?? STAGE.idle;
    this.rule(
      'stages come in turn',
      stage === before || stage === before + 1 || (before === STAGE.unloading && !busy),
    );
    this.stages.set(number, stage);
    if (before === stage || stage !== STAGE.loading) return;
    this.totals.loads += 1;
    this.totals.racks += count;
    for (const rack of racks.subarray(0, count)) this.racks.delete(rack);
  }
}

it('a listener to any small café keeps the books of the day, which is the day nobody listens to', () => {
  const seen = { trips: 0, loads: 0, short: 0 };
  fc.assert(
    fc.property(
      wholeCafe({ lowWater: true }),
      fc.option(smallStock(4, 8), { nil: null }),
      fc.nat(1000),
      (model, pieces, number) => {
        const stock = pieces?.slice(0, model.ware.length) ?? null;
        const [floor, day] = [new Floor(model, 'heard'), new Day()];
        new Demand(model, 'heard').draw(number, day);
        const outcome = (): unknown => ({
          counts: [...floor.ledger.counts],
          fewest: [...floor.ledger.fewest],
          waitedMs: floor.counter.waitedMs,
          end: floor.now,
          events: floor.happened,
        });
        floor.run(day, number, stock);
        const alone = outcome();
        const books = new Books(
          stock ?? model.ware.map(() => PLENTY),
          model.clearing.clearers ?? Infinity,
        );
        floor.ledger.observer = books;
        floor.run(day, number, stock);
        const { ledger, counter, seats, tables, clearing, washing } = floor;
        expect(books.wrong).toEqual([]);
        expect(outcome()).toEqual(alone);
        expect(books.counts).toEqual([...ledger.counts]);
        expect(books.lacked).toEqual([...counter.short]);
        const guests = [...books.tables.keys()].reduce((sum, party) => sum + day.size[party]!, 0);
        expect(guests).toBe(seats.guestsSeated);
        expect(books.tables.size - books.gone.size).toBe(tables.parties);
        const way = (from: number, to: number): number => books.ways[from * PLACE_COUNT + to]!;
        const { totals } = books;
        expect(totals.carried).toBe(way(DIRTY_TABLE, CARRIED));
        expect(totals.picked).toBe(way(DIRTY_TABLE, CARRIED) + way(DIRTY_TABLE, BENCH));
        expect(totals.racked).toBe(way(BENCH, RACKED));
        expect([totals.trips, totals.loads, totals.racks]).toEqual([
          clearing.trips,
          washing.loads,
          washing.racks,
        ]);
        seen.trips += totals.trips;
        seen.loads += totals.loads;
        seen.short += counter.shortDrinks;
      },
    ),
    { seed: 12, numRuns: 200 },
  );
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(100);
});
