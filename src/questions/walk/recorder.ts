/**
 * Writes down a day as it goes by. It compares what it sees after each event with what it saw before, so
 * that the stages need to tell nothing but how things stand.
 */
import type { Floor, Watcher } from '../../cafe/floor.js';
import type { CafeModel } from '../../cafe/model.js';
import { PLACE_COUNT, SHELF } from '../../cafe/places.js';
import { STAGE, type Machine } from '../../cafe/washing/machines.js';
import { Moments } from './moments.js';
import type { WalkParty, WalkRack, WalkShortage, WalkStage, WalkTrip } from './parts.js';

/** Stage of a machine that is out of order, after those of STAGE. */
const STOPPED = 5;
const NONE = -1;
/** The end of what has none yet; made one past the last moment when the day is over. */
const OPEN = 0x7fffffff;

/** A rack on its way, and which filling of the rack it is. */
interface Filling {
  readonly first: number;
  readonly index: number;
}

export class WalkRecorder implements Watcher {
  readonly moments: Moments;
  readonly parties: WalkParty[] = [];
  readonly trips: WalkTrip[] = [];
  readonly racks: WalkRack[] = [];
  readonly stages: WalkStage[] = [];
  readonly shortages: WalkShortage[] = [];
  readonly tightest: number[];

  /** Number of the moment that is being made. */
  private moment = 0;
  /** Whether anything is different from the last moment. */
  private changed = true;
  private readonly fewest: number[];
  private readonly short: number[];
  /** Parties that have arrived: the next to come, and those who sit or have left something. */
  private arrived = 0;
  private toSit: number[] = [];
  private present: WalkParty[] = [];
  private readonly tripOf = new Map<number, { startedAt: number; trip: WalkTrip }>();
  private readonly fillingOf = new Map<number, Filling>();
  private readonly stageOf = new Map<number, WalkStage>();

  constructor(model: CafeModel) {
    this.moments = new Moments(model.ware.length * PLACE_COUNT);
    this.tightest = model.ware.map(() => 0);
    this.fewest = model.ware.map(() => Infinity);
    this.short = model.ware.map(() => 0);
  }

  before(nextMs: number, floor: Floor): void {
    this.seeParties(floor);
    this.seeTrips(floor);
    this.seeRacks(floor);
    this.seeMachines(floor);
    this.seeShelf(floor);
    if (nextMs > floor.now) this.write(floor);
    if (nextMs === Infinity) this.end();
  }

  private seeParties(floor: Floor): void {
    const { day, now, tables } = floor;
    while (this.arrived < day.parties && day.arrivalMs[this.arrived]! <= now) {
      if (day.staysIn[this.arrived] === 1) this.toSit.push(this.arrived);
      this.arrived += 1;
    }
    this.toSit = this.toSit.filter((party) => {
      if (!floor.inHouse(party)) return true;
      this.changed = true;
      const seen: WalkParty = {
        party,
        size: day.size[party]!,
        from: this.moment,
        left: OPEN,
        until: OPEN,
        ware: [],
        drink: [],
        served: [],
        picked: [],
      };
      this.parties.push(seen);
      this.present.push(seen);
      return false;
    });
    let anyGone = false;
    for (const party of this.present) {
      if (this.seeTable(party, tables)) anyGone = true;
    }
    if (anyGone) this.present = this.present.filter(({ until }) => until === OPEN);
  }

  /** One event serves a table or picks up from it, never both. True once nothing is left there. */
  private seeTable(seen: WalkParty, tables: Floor['tables']): boolean {
    if (seen.left === OPEN && tables.hasLeft(seen.party)) {
      seen.left = this.moment;
      this.changed = true;
    }
    const gone = seen.left !== OPEN;
    const known = seen.ware.length;
    let there = 0;
    tables.eachPiece(seen.party, (ware, drink) => {
      there += 1;
      if (gone || there <= known) return;
      seen.ware.push(ware);
      seen.drink.push(drink);
      seen.served.push(this.moment);
      seen.picked.push(OPEN);
      this.changed = true;
    });
    if (!gone) return false;
    for (let at = 0; at < known - there; at += 1) {
      if (seen.picked[at] !== OPEN) continue;
      seen.picked[at] = this.moment;
      this.changed = true;
    }
    if (there === 0) seen.until = this.moment;
    return there === 0;
  }

  private seeTrips({ clearing }: Floor): void {
    const out = new Set<number>();
    clearing.eachTrip(({ startedAt, pieces, count }, clearer) => {
      out.add(clearer);
      const known = this.tripOf.get(clearer);
      if (known !== undefined && known.startedAt === startedAt) return;
      if (known !== undefined) known.trip.until = this.moment;
      const trip: WalkTrip = {
        clearer,
        from: this.moment,
        until: OPEN,
        pieces: Array.from(pieces.subarray(0, count)),
      };
      this.trips.push(trip);
      this.tripOf.set(clearer, { startedAt, trip });
      this.changed = true;
    });
    for (const [clearer, { trip }] of this.tripOf) {
      if (out.has(clearer)) continue;
      trip.until = this.moment;
      this.tripOf.delete(clearer);
      this.changed = true;
    }
  }

  private seeRacks({ washing: { bench, machines } }: Floor): void {
    const { wareCount } = bench;
    for (let rack = 0; rack < bench.numbered; rack += 1) {
      const row = bench.pieces.subarray(rack * wareCount, (rack + 1) * wareCount);
      const used = row.some((pieces) => pieces > 0);
      let filling = this.fillingOf.get(rack);
      if (filling !== undefined && (!used || filling.first !== bench.firstPiece[rack])) {
        this.racks[filling.index]!.until = this.moment;
        this.fillingOf.delete(rack);
        this.changed = true;
        filling = undefined;
      }
      if (!used) continue;
      if (filling === undefined) {
        filling = { first: bench.firstPiece[rack]!, index: this.racks.length };
        this.fillingOf.set(rack, filling);
        this.racks.push({
          family: bench.family[rack]!,
          from: this.moment,
          closed: OPEN,
          washed: OPEN,
          machine: NONE,
          until: OPEN,
          ware: [],
          racked: [],
        });
      }
      const seen = this.racks[filling.index]!;
      this.seePieces(seen, row);
      if (seen.closed === OPEN && bench.openRack[seen.family] !== rack) {
        seen.closed = this.moment;
        this.changed = true;
      }
    }
    machines.list.forEach((machine, number) => {
      for (let at = 0; machine.busy && at < machine.count; at += 1) {
        const filling = this.fillingOf.get(machine.racks[at]!);
        const seen = filling && this.racks[filling.index]!;
        if (seen === undefined || seen.washed !== OPEN) continue;
        seen.washed = this.moment;
        seen.machine = number;
        this.changed = true;
      }
    });
  }

  private seePieces(seen: WalkRack, row: Int32Array): void {
    row.forEach((pieces, ware) => {
      let known = 0;
      for (const one of seen.ware) if (one === ware) known += 1;
      for (; known < pieces; known += 1) {
        seen.ware.push(ware);
        seen.racked.push(this.moment);
        this.changed = true;
      }
    });
  }

  private seeMachines({ washing: { machines } }: Floor): void {
    machines.list.forEach((machine, number) => {
      const stage = !machine.busy && machine.stopped > 0 ? STOPPED : machine.stage;
      const racks = machine.busy ? this.racksIn(machine) : [];
      const known = this.stageOf.get(number);
      if (
        known === undefined
          ? stage === STAGE.idle
          : known.stage === stage && sameList(known.racks, racks)
      )
        return;
      if (known !== undefined) known.until = this.moment;
      this.stageOf.delete(number);
      this.changed = true;
      if (stage === STAGE.idle) return;
      const seen: WalkStage = { machine: number, stage, from: this.moment, until: OPEN, racks };
      this.stages.push(seen);
      this.stageOf.set(number, seen);
    });
  }

  private racksIn(machine: Machine): number[] {
    return Array.from(
      machine.racks.subarray(0, machine.count),
      (rack) => this.fillingOf.get(rack)?.index ?? NONE,
    );
  }

  /** The least on the shelf may be reached between two events of one instant. */
  private seeShelf({ ledger, counter }: Floor): void {
    for (let ware = 0; ware < this.fewest.length; ware += 1) {
      const onShelf = ledger.counts[ware * PLACE_COUNT + SHELF]!;
      if (onShelf < this.fewest[ware]!) {
        this.fewest[ware] = onShelf;
        this.tightest[ware] = this.moment;
        this.changed = true;
      }
      for (; this.short[ware]! < counter.short[ware]!; this.short[ware] = this.short[ware]! + 1) {
        this.shortages.push({ moment: this.moment, ware });
        this.changed = true;
      }
    }
  }

  private write({ ledger, counter, seats, staff, washing, now }: Floor): void {
    const waitingOwn = this.racks.reduce(
      (sum, { closed, washed, until }) =>
        sum + (closed !== OPEN && washed === OPEN && until === OPEN ? 1 : 0),
      0,
    );
    const row = {
      drinksWaiting: counter.waiting,
      partiesWaiting: seats.waiting,
      makersBusy: staff.makers.working,
      foodRacksWaiting: washing.waiting - waitingOwn,
    };
    if (!this.changed && this.moments.isLast(row, ledger.counts)) return;
    this.moments.add(now, row, ledger.counts);
    this.moment += 1;
    this.changed = false;
  }

  private end(): void {
    const end = this.moment;
    const atMostEnd = (moment: number): number => Math.min(moment, end);
    for (const party of this.parties) {
      party.left = atMostEnd(party.left);
      party.until = atMostEnd(party.until);
      party.picked.forEach((moment, piece) => (party.picked[piece] = atMostEnd(moment)));
    }
    for (const trip of this.trips) trip.until = atMostEnd(trip.until);
    for (const stage of this.stages) stage.until = atMostEnd(stage.until);
    for (const rack of this.racks) {
      rack.closed = atMostEnd(rack.closed);
      rack.washed = atMostEnd(rack.washed);
      rack.until = atMostEnd(rack.until);
    }
  }
}

const sameList = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((value, at) => value === b[at]);
