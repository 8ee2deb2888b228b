/** Writes down a day as it goes by, from what the floor reports. */
import type { Floor, Watcher } from '../../cafe/floor.js';
import { Observer } from '../../cafe/observer.js';
import { PLACE_COUNT, SHELF } from '../../cafe/places.js';
import { STAGE, type Machine } from '../../cafe/washing/machines.js';
import { Moments } from './moments.js';
import type { WalkParty, WalkRack, WalkShortage, WalkStage, WalkTrip } from './parts.js';

/** Stage of a machine that is out of order, after those of STAGE. */
const STOPPED = 5;
const NONE = -1;
/** The end of what has none yet; made one past the last moment when the day is over. */
const OPEN = 0x7fffffff;

/** A rack on its way: its number, the event that opened it, and by piece the event that racked it. */
interface Filling {
  readonly rack: number;
  readonly event: number;
  readonly seen: WalkRack;
  readonly events: number[];
}

/** A spell of a machine, the event that began it, and what is in the machine; undefined: food ware. */
interface Spell {
  readonly event: number;
  readonly seen: Omit<WalkStage, 'racks'>;
  readonly load: readonly (Filling | undefined)[];
}

/** Run a day, whose guests have come to the floor, and write it down. `stock` as in `Floor.run`. */
export function recorded(floor: Floor, day: number, stock: ArrayLike<number> | null): WalkRecorder {
  const recorder = new WalkRecorder(floor);
  floor.ledger.observer = recorder;
  floor.run(floor.day, day, stock, recorder);
  floor.ledger.observer = null;
  return recorder;
}

export class WalkRecorder extends Observer implements Watcher {
  readonly moments: Moments;
  readonly parties: WalkParty[] = [];
  readonly trips: WalkTrip[] = [];
  readonly racks: WalkRack[] = [];
  readonly stages: WalkStage[] = [];
  readonly shortages: WalkShortage[] = [];
  readonly tightest: number[];

  /** Number of the moment that is being made, and of the event under way. */
  private moment = 0;
  private event = 0;
  /** Shortages before that event. */
  private shortBefore = 0;
  /** Whether anything is different from the last moment. */
  private changed = true;
  private readonly fewest: number[];
  private readonly partyOf = new Map<number, WalkParty>();
  private readonly tripOf = new Map<number, WalkTrip>();
  private readonly fillingOf = new Map<number, Filling>();
  private readonly spellOf = new Map<number, Spell>();
  private readonly fillings: Filling[] = [];
  private readonly spells: Spell[] = [];
  /** Racks that are closed and wait for a machine. */
  private racksWaiting = 0;

  constructor(private readonly floor: Floor) {
    super();
    const { ware } = floor.model;
    this.moments = new Moments(ware.length * PLACE_COUNT);
    this.tightest = ware.map(() => 0);
    this.fewest = ware.map(() => Infinity);
  }

  before(nextMs: number): void {
    if (nextMs > this.floor.now) this.write();
    if (nextMs === Infinity) this.end();
    this.event += 1;
    this.shortBefore = this.shortages.length;
  }

  override moved(ware: number, from: number): void {
    const moment = this.change();
    if (from !== SHELF) return;
    const onShelf = this.floor.ledger.shelf(ware);
    if (onShelf >= this.fewest[ware]!) return;
    this.fewest[ware] = onShelf;
    this.tightest[ware] = moment;
  }

  override short(ware: number): void {
    let at = this.shortages.length;
    while (at > this.shortBefore && this.shortages[at - 1]!.ware > ware) at -= 1;
    this.shortages.splice(at, 0, { moment: this.change(), ware });
  }

  override seated(party: number): void {
    const seen: WalkParty = {
      party,
      size: this.floor.day.size[party]!,
      from: this.change(),
      left: OPEN,
      until: OPEN,
      ware: [],
      drink: [],
      served: [],
      picked: [],
    };
    this.parties.push(seen);
    this.partyOf.set(party, seen);
  }

  override served(party: number, drink: number, wares: Int32Array): void {
    const seen = this.partyOf.get(party)!;
    for (const ware of wares) {
      seen.ware.push(ware);
      seen.drink.push(drink);
      seen.served.push(this.change());
      seen.picked.push(OPEN);
    }
  }

  override left(party: number): void {
    const seen = this.partyOf.get(party)!;
    seen.left = this.change();
    if (seen.picked.length === 0) seen.until = seen.left;
  }

  override pickedUp(party: number): void {
    const seen = this.partyOf.get(party)!;
    const at = seen.picked.indexOf(OPEN);
    seen.picked[at] = this.change();
    if (at === seen.picked.length - 1) seen.until = this.moment;
  }

  override tripBegan(clearer: number, wares: Int32Array): void {
    const trip = { clearer, from: this.change(), until: OPEN, pieces: [...wares] };
    this.trips.push(trip);
    this.tripOf.set(clearer, trip);
  }

  override tripEnded(clearer: number): void {
    this.tripOf.get(clearer)!.until = this.change();
  }

  override racked(rack: number, ware: number): void {
    const { seen, events } = this.fillingOf.get(rack) ?? this.opened(rack, ware);
    // Those of one event stand in the order of ware.
    let at = events.length;
    while (events[at - 1] === this.event && seen.ware[at - 1]! > ware) at -= 1;
    seen.ware.splice(at, 0, ware);
    seen.racked.push(this.change());
    events.push(this.event);
  }

  private opened(rack: number, ware: number): Filling {
    const seen: WalkRack = {
      family: this.floor.bench.familyOf[ware]!,
      from: this.moment,
      closed: OPEN,
      washed: OPEN,
      machine: NONE,
      until: OPEN,
      ware: [],
      racked: [],
    };
    const filling = { rack, event: this.event, seen, events: [] };
    this.fillingOf.set(rack, filling);
    this.fillings.push(filling);
    return filling;
  }

  override rackClosed(rack: number): void {
    this.fillingOf.get(rack)!.seen.closed = this.change();
    this.racksWaiting += 1;
  }

  override machine(number: number, machine: Machine): void {
    const known = this.spellOf.get(number);
    const stage = !machine.busy && machine.stopped > 0 ? STOPPED : machine.stage;
    if (stage === (known?.seen.stage ?? STAGE.idle)) return;
    const from = this.change();
    // What begins and ends within one event is not shown.
    if (known?.event === this.event) this.spells.splice(this.spells.indexOf(known), 1);
    else if (known !== undefined) known.seen.until = from;
    if (!machine.busy) known?.load.forEach((filling) => this.givenBack(filling));
    this.spellOf.delete(number);
    if (stage === STAGE.idle) return;
    const load = !machine.busy
      ? []
      : stage === STAGE.loading
        ? Array.from(machine.racks.subarray(0, machine.count), (rack) => this.loaded(rack, number))
        : known!.load;
    const spell = {
      event: this.event,
      seen: { machine: number, stage, from, until: OPEN },
      load,
    };
    this.spells.push(spell);
    this.spellOf.set(number, spell);
  }

  private loaded(rack: number, machine: number): Filling | undefined {
    const filling = this.fillingOf.get(rack);
    if (filling === undefined) return undefined;
    const { seen } = filling;
    if (seen.closed === OPEN) seen.closed = this.moment;
    else this.racksWaiting -= 1;
    seen.washed = this.moment;
    seen.machine = machine;
    return filling;
  }

  private givenBack(filling: Filling | undefined): void {
    if (filling === undefined) return;
    filling.seen.until = this.moment;
    this.fillingOf.delete(filling.rack);
  }

  /** The moment at which something changes: the present one. */
  private change(): number {
    this.changed = true;
    return this.moment;
  }

  private write(): void {
    const { ledger, counter, seats, staff, washing, now } = this.floor;
    const row = {
      drinksWaiting: counter.waiting,
      partiesWaiting: seats.waiting,
      makersBusy: staff.makers.working,
      foodRacksWaiting: washing.waiting - this.racksWaiting,
    };
    if (!this.changed && this.moments.isLast(row)) return;
    this.moments.add(now, row, ledger.counts);
    this.moment += 1;
    this.changed = false;
  }

  /** What one event began stands in the order of the numbers of racks and machines. */
  private end(): void {
    this.fillings.sort((a, b) => a.event - b.event || a.rack - b.rack);
    this.spells.sort((a, b) => a.event - b.event || a.seen.machine - b.seen.machine);
    const index = new Map(this.fillings.map((filling, at) => [filling, at]));
    this.racks.push(...this.fillings.map(({ seen }) => seen));
    for (const { seen, load } of this.spells)
      this.stages.push({ ...seen, racks: load.map((one) => (one ? index.get(one)! : NONE)) });
    const atMostEnd = (moment: number): number => Math.min(moment, this.moment);
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
