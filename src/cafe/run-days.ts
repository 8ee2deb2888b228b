/** Running the days of a task, in one go or a little at a time, so that whoever runs them can be interrupted within a day. */
import { Day } from './day.js';
import { Demand } from './demand.js';
import { Floor } from './floor.js';
import { fillDay } from './listed-day.js';
import type { CafeModel } from './model.js';
import { PLACE_COUNT } from './places.js';
import { addInto, emptyRun, type DaysRun, type RushTask, type SumName } from './rush.js';
import { MOST_EVENTS, MOST_PIECES, tooManyPieces } from './too-much.js';

/** What a run of days needs, kept for the next one: nothing of a day lingers in it, and a warm floor is twice as fast as a new one. */
interface House {
  readonly seed: string;
  readonly floor: Floor;
  readonly demand: Demand;
  readonly day: Day;
}

/** Houses in which no run is under way. */
const houses = new WeakMap<CafeModel, House>();

/** Whoever takes a house has it alone, so that two runs of one café may take turns. */
function takeHouse(model: CafeModel, seed: string): House {
  const known = houses.get(model);
  if (known?.seed !== seed)
    return { seed, floor: new Floor(model, seed), demand: new Demand(model, seed), day: new Day() };
  houses.delete(model);
  return known;
}

/** Run the days of a task in this thread. Throws an error that `isTooMuch` knows where a day asks for too many pieces or events. */
export function runDays(task: RushTask): DaysRun {
  const run = new RunningDays(task);
  while (!run.advance(MOST_EVENTS));
  return run.result();
}

/** A task under way. Give it up by letting go of it. */
export class RunningDays {
  private readonly house: House;
  private readonly run: ReturnType<typeof emptyRun>;
  /** Days that are over. */
  private over = 0;
  /** Whether the day after them has begun. */
  private begun = false;

  constructor(private readonly task: RushTask) {
    const { model, seed, from, days } = task;
    const { ware, rackKinds, menu } = model;
    this.house = takeHouse(model, seed);
    this.run = emptyRun(from, days, ware.length, rackKinds.length, menu.length);
  }

  /**
   * Go on for about so many events.
   * @returns whether all days are over
   */
  advance(events: number): boolean {
    const { floor, day } = this.house;
    for (let left = events; this.over < this.task.days && left > 0;) {
      if (!this.begun) {
        this.begin();
        // Drawing a party takes about as long as an event.
        left -= day.parties;
      }
      const before = floor.happened;
      if (floor.advance(Math.max(1, left))) this.end();
      left -= floor.happened - before;
    }
    return this.over === this.task.days;
  }

  /** What the days left behind; once all are over. */
  result(): DaysRun {
    houses.set(this.task.model, this.house);
    return this.run;
  }

  private begin(): void {
    const { floor, demand, day } = this.house;
    const { model, from, stock, listed } = this.task;
    const number = from + this.over;
    if (listed === null) demand.draw(number, day);
    else fillDay(listed[number]!, model.menu, day);
    floor.open(day, number, stock);
    this.begun = true;
  }

  private end(): void {
    const { floor, day } = this.house;
    const { model, from, byDay } = this.task;
    const index = this.over;
    const wares = model.ware.length;
    const kinds = model.rackKinds.length;
    const { run } = this;
    const { peaks, rackPeaks, guestsAtDoor, uses, short, pieceMs } = run;
    const { ledger, counter, seats, bench } = floor;
    for (let ware = 0; ware < wares; ware += 1) {
      const peak = ledger.peak(ware);
      if (peak > MOST_PIECES) throw tooManyPieces(model.ware[ware]!.id, peak, from + index);
      peaks[index * wares + ware] = peak;
      uses[ware] = uses[ware]! + ledger.uses[ware]!;
      short[ware] = short[ware]! + counter.short[ware]!;
      for (let place = 1; place < PLACE_COUNT; place += 1) {
        const cell = ware * PLACE_COUNT + place;
        pieceMs[cell] = pieceMs[cell]! + ledger.pieceMs(ware, place);
      }
    }
    for (let kind = 0; kind < kinds; kind += 1)
      rackPeaks[index * kinds + kind] = Math.min(MOST_PIECES, bench.mostInUse[kind]!);
    for (let party = 0; party < day.parties; party += 1)
      guestsAtDoor[index] = guestsAtDoor[index]! + day.size[party]!;
    run.seatPermille[index] = seats.fullestPermille();
    if (byDay) {
      run.byDay.push({
        short: [...counter.short],
        firstShortMs: counter.firstShort,
        left: seats.partiesLeft,
        takeawayInstead: seats.partiesTakeawayInstead,
        unserved: counter.unserved,
      });
    }
    if (floor.storage !== null) addInto(run.fetched, floor.storage.broughtUp);
    addInto(run.away, counter.awayByKind);
    addInto(run.paper, counter.paperByKind);
    addDay(run.sums, floor);
    this.over += 1;
    this.begun = false;
  }
}

function addDay(sums: Record<SumName, number>, floor: Floor): void {
  const { counter, seats, washing, clearing } = floor;
  const { makers, clearers, hands } = floor.staff;
  sums.days += 1;
  sums.safeDays += counter.shortDrinks === 0 ? 1 : 0;
  sums.parties += floor.day.parties;
  sums.guestsSeated += seats.guestsSeated;
  sums.guestsTookAway += floor.visits.guestsTookAway;
  sums.guestsLeft += seats.guestsLeft;
  sums.guestsTakeawayInstead += seats.guestsTakeawayInstead;
  sums.houseDrinks += counter.houseDrinks;
  sums.shortDrinks += counter.shortDrinks;
  sums.takeawayDrinks += counter.takeawayDrinks;
  sums.paperFallBacks += counter.paperFallBacks;
  sums.unserved += counter.unserved;
  sums.waitedMs += counter.waitedMs;
  sums.drinksStarted += counter.started;
  sums.machineMs += washing.machines.busyMs;
  sums.makerMs += makers.busyMs;
  sums.seatMs += seats.seatMs();
  sums.clearerMs += clearers.busyMs;
  sums.handMs += hands.busyMs;
  sums.handlingMs += washing.handlingMs;
  sums.polishMs += floor.polishing.handMs;
  sums.loads += washing.loads;
  sums.racks += washing.racks;
  sums.ownRacks += washing.ownRacks;
  sums.fillPermille += washing.fillPermille;
  sums.trips += clearing.trips;
  sums.fetchTrips += floor.storage?.trips ?? 0;
  sums.fetchWaits += floor.storage?.waits ?? 0;
  sums.runMs += floor.now;
}
