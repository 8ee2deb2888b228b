/**
 * Washing: racks go into machines, in one order; hands load and unload.
 *
 * A load starts when a machine and a hand are free and a rack may go. Full racks go by the moment they
 * were closed, together with other loads in the order of arrival; then part racks by the rules; a
 * machine takes racks down this order up to its number and is never topped up.
 */
import { Duration } from '../../engine/durations.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { grown } from '../day.js';
import { Bench, type RackTaker } from '../bench.js';
import type { Flow } from '../flow.js';
import { MOMENT } from '../moments.js';
import type { CafeModel } from '../model.js';
import type { People } from '../people.js';
import { DRYING, RACKED, WASHING } from '../places.js';
import { NO_RACK, type LoadRule, type Yard } from './load-rule.js';
import { Machines, STAGE } from './machines.js';
import { rulesInOrder } from './rules/in-order.js';

const OTHER_LOAD = -2;

export class Washing implements RackTaker {
  readonly machines: Machines;
  /** Loads started, racks in them, and of these our own and how full they were. */
  loads = 0;
  racks = 0;
  ownRacks = 0;
  /** Σ units used × 1000 / units of a full rack over our own racks, whole numbers so that sums merge exactly. */
  fillPermille = 0;
  /** Loading and unloading, after closing too, whoever does it. */
  handlingMs = 0;

  private ready = new Int32Array(64);
  private head = 0;
  private tail = 0;
  private otherWaiting = 0;
  /** Machines whose cycle is over, waiting for a hand. */
  private toUnload = new Int32Array(64);
  private unloadHead = 0;
  private unloadTail = 0;
  private readonly rules: readonly LoadRule[];
  private readonly times: Stream;
  private readonly dryingTimes: Stream;
  private readonly drying: readonly Duration[];
  private readonly yard: Yard;
  readonly bench: Bench;
  private readonly goes: 'first' | 'inTurn' | 'last';

  constructor(
    private readonly model: CafeModel,
    seed: string,
    private readonly hands: People,
    private readonly flow: Flow,
  ) {
    this.machines = new Machines(model.washing, model.closingMs);
    this.rules = rulesInOrder(model);
    this.times = new Stream(streamKey(seed, 'machines'));
    this.dryingTimes = new Stream(streamKey(seed, 'drying'));
    this.drying = model.ware.map((ware) => new Duration(ware.drying));
    this.goes = model.washing.otherLoads?.goes ?? 'inTurn';
    this.bench = new Bench(model, flow.ledger, this);
    this.yard = { bench: this.bench, ledger: flow.ledger };
  }

  open(day: number): void {
    this.machines.open();
    this.loads = this.racks = this.ownRacks = this.fillPermille = this.handlingMs = 0;
    this.head = this.tail = this.otherWaiting = this.unloadHead = this.unloadTail = 0;
    this.times.toDay(day);
    this.dryingTimes.toDay(day);
    const { calendar } = this.flow;
    this.machines.list.forEach((machine, number) => {
      if (machine.model.warmUpMs > 0) this.stop(number, 0, machine.model.warmUpMs);
      for (const [from, to] of machine.model.down) this.stop(number, from, to);
      if (machine.untilBreakdown)
        calendar.schedule(
          machine.untilBreakdown.draw(this.times),
          MOMENT.machineChanges,
          number * 4 + 2,
        );
    });
  }

  /** Full racks and other loads waiting for a machine. */
  get waiting(): number {
    return this.tail - this.head + this.otherWaiting;
  }

  /** A rack has just been closed. */
  rackClosed(rack: number): void {
    this.join(rack);
  }

  /** A part rack has taken its first piece: look again when that has waited long enough. */
  rackOpened(rack: number): void {
    const wait = this.model.washing.partLoadWaitMs;
    if (wait === null) return;
    const due = this.bench.since[rack]! + wait;
    if (due > this.flow.now) this.flow.calendar.schedule(due, MOMENT.partLoadWait, 0);
  }

  /** A rack of food ware arrives. */
  otherArrives(): void {
    if (this.goes === 'inTurn') this.join(OTHER_LOAD);
    else this.otherWaiting += 1;
    this.work();
  }

  /** Free hands take up their work: unloading first, then loading. */
  work(): void {
    this.unload();
    while (this.hands.free > 0) {
      if (!this.anythingMayGo()) return;
      const number = this.machines.nextFree();
      if (number < 0) return;
      this.load(number);
    }
  }

  loaded(number: number): void {
    this.hands.release();
    const machine = this.machines.list[number]!;
    machine.stage = STAGE.running;
    this.flow.calendar.schedule(
      this.flow.now + machine.cycle.draw(this.times),
      MOMENT.cycleDone,
      number,
    );
    this.flow.peopleFree();
  }

  cycleDone(number: number): void {
    this.machines.list[number]!.stage = STAGE.waiting;
    if (this.unloadTail === this.toUnload.length) this.compactUnload();
    this.toUnload[this.unloadTail] = number;
    this.unloadTail += 1;
    this.work();
  }

  unloaded(number: number): void {
    const { bench, flow } = this;
    this.hands.release();
    const machine = this.machines.list[number]!;
    for (let at = 0; at < machine.count; at += 1) {
      const rack = machine.racks[at]!;
      if (rack === OTHER_LOAD) continue;
      this.toDry(rack);
      bench.giveBack(rack);
    }
    this.machines.release(number, flow.now);
    flow.racksFree();
    flow.peopleFree();
  }

  /** A machine goes out of order or comes back; the payload is number × 4 + (0 stops, 1 starts again, 2 breaks down, 3 is repaired). */
  machineChanges(payload: number): void {
    const number = payload >> 2;
    const what = payload & 3;
    const machine = this.machines.list[number]!;
    const { calendar, now } = this.flow;
    if (what === 0 || what === 2) machine.stopped += 1;
    else machine.stopped -= 1;
    if (what === 2)
      calendar.schedule(
        now + machine.repair!.draw(this.times),
        MOMENT.machineChanges,
        number * 4 + 3,
      );
    // After closing no new breakdown is drawn, so that the day can end.
    if (what === 3 && now < this.model.closingMs)
      calendar.schedule(
        now + machine.untilBreakdown!.draw(this.times),
        MOMENT.machineChanges,
        number * 4 + 2,
      );
    if (machine.stopped === 0) this.work();
  }

  /** A fixed time for part loads: whatever is racked may go. True while there may be a use for the next. */
  releasePartRacks(): boolean {
    let any = false;
    for (const rack of this.bench.openRack) {
      if (rack === NO_RACK) continue;
      this.bench.released[rack] = 1;
      any = true;
    }
    if (any) this.work();
    return any;
  }

  private stop(number: number, from: number, to: number): void {
    this.flow.calendar.schedule(from, MOMENT.machineChanges, number * 4);
    this.flow.calendar.schedule(to, MOMENT.machineChanges, number * 4 + 1);
  }

  private join(entry: number): void {
    if (this.tail === this.ready.length) {
      if (this.head > this.tail / 2) {
        this.ready.copyWithin(0, this.head, this.tail);
        this.tail -= this.head;
        this.head = 0;
      } else {
        this.ready = grown(this.ready, new Int32Array(this.tail * 2));
      }
    }
    this.ready[this.tail] = entry;
    this.tail += 1;
  }

  private compactUnload(): void {
    this.toUnload.copyWithin(0, this.unloadHead, this.unloadTail);
    this.unloadTail -= this.unloadHead;
    this.unloadHead = 0;
    if (this.unloadTail > this.toUnload.length / 2)
      this.toUnload = grown(this.toUnload, new Int32Array(this.toUnload.length * 2));
  }

  private unload(): void {
    while (this.hands.free > 0 && this.unloadHead < this.unloadTail) {
      const number = this.toUnload[this.unloadHead]!;
      this.unloadHead += 1;
      const machine = this.machines.list[number]!;
      machine.stage = STAGE.unloading;
      const time = machine.unloading.draw(this.times);
      this.hands.hold(this.flow.now, time);
      this.handlingMs += time;
      this.flow.calendar.schedule(this.flow.now + time, MOMENT.unloaded, number);
    }
  }

  private load(number: number): void {
    const { flow } = this;
    const machine = this.machines.list[number]!;
    while (machine.count < machine.model.racks) {
      const rack = this.takeNext();
      if (rack === NO_RACK) break;
      machine.racks[machine.count] = rack;
      machine.count += 1;
      if (rack !== OTHER_LOAD) this.intoMachine(rack);
    }
    this.loads += 1;
    this.racks += machine.count;
    const time = machine.loading.draw(this.times);
    this.machines.start(number, flow.now);
    this.hands.hold(flow.now, time);
    this.handlingMs += time;
    flow.calendar.schedule(flow.now + time, MOMENT.loaded, number);
  }

  private anythingMayGo(): boolean {
    return this.head < this.tail || this.otherWaiting > 0 || this.nextPartRack() !== NO_RACK;
  }

  private takeNext(): number {
    if (this.otherWaiting > 0 && this.goes === 'first') {
      this.otherWaiting -= 1;
      return OTHER_LOAD;
    }
    if (this.head < this.tail) {
      const entry = this.ready[this.head]!;
      this.head += 1;
      return entry;
    }
    const part = this.nextPartRack();
    if (part !== NO_RACK) {
      this.bench.takeOpen(part);
      return part;
    }
    if (this.otherWaiting > 0) {
      this.otherWaiting -= 1;
      return OTHER_LOAD;
    }
    return NO_RACK;
  }

  private nextPartRack(): number {
    for (let at = 0; at < this.rules.length; at += 1) {
      const rack = this.rules[at]!.next(this.yard);
      if (rack !== NO_RACK) return rack;
    }
    return NO_RACK;
  }

  private intoMachine(rack: number): void {
    const { bench, flow } = this;
    this.ownRacks += 1;
    this.fillPermille += Math.round(1000 * bench.fill(rack));
    const row = rack * bench.wareCount;
    for (let ware = 0; ware < bench.wareCount; ware += 1) {
      const pieces = bench.pieces[row + ware]!;
      if (pieces > 0) flow.ledger.move(ware, RACKED, WASHING, pieces);
    }
  }

  /** The pieces of an unloaded rack dry, each ware for its own time, and then come back. */
  private toDry(rack: number): void {
    const { bench, flow } = this;
    const row = rack * bench.wareCount;
    for (let ware = 0; ware < bench.wareCount; ware += 1) {
      const pieces = bench.pieces[row + ware]!;
      if (pieces === 0) continue;
      bench.pieces[row + ware] = 0;
      flow.ledger.move(ware, WASHING, DRYING, pieces);
      const time = this.drying[ware]!.draw(this.dryingTimes);
      flow.calendar.schedule(flow.now + time, MOMENT.piecesReturn, pieces * bench.wareCount + ware);
    }
  }
}
