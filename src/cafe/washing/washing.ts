/**
 * Washing: racks go into machines, in one order; hands load and unload.
 *
 * A load starts when a machine and a hand are free and a rack may go. Full racks go by the moment they
 * were closed, together with other loads in the order of arrival; then part racks by the rules; a
 * machine takes racks down this order up to its number and is never topped up.
 */
import { Duration } from '../../engine/durations.js';
import { Stream, streamKey } from '../../engine/streams.js';
import { Bench, type RackTaker } from '../bench.js';
import { Fifo } from '../fifo.js';
import type { Flow } from '../flow.js';
import { EVENT } from '../events.js';
import type { CafeModel } from '../model.js';
import type { People } from '../people.js';
import { DRYING, RACKED, WASHING } from '../places.js';
import { NEVER, NO_RACK, type LoadRule, type RuleView } from './load-rule.js';
import { Machines, STAGE, type Machine } from './machines.js';
import { rulesInOrder } from './rules/in-order.js';

const OTHER_LOAD = -2;
/** Of what changes about a machine. */
const BREAKS_DOWN = 2;

/** @param payload of an event `machineChanges` */
export const isBreakdown = (payload: number): boolean => (payload & 3) === BREAKS_DOWN;

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

  /** Full racks and other loads, in the order of arrival. */
  private readonly ready = new Fifo();
  private otherWaiting = 0;
  /** Machines whose cycle is over, waiting for a hand. */
  private readonly toUnload = new Fifo();
  readonly rules: readonly LoadRule[];
  private readonly times: Stream;
  private readonly dryingTimes: Stream;
  private readonly drying: readonly Duration[];
  readonly bench: Bench;
  private readonly goes: 'first' | 'inTurn' | 'last';

  constructor(
    private readonly model: CafeModel,
    seed: string,
    private readonly hands: People,
    private readonly view: RuleView,
    private readonly flow: Flow,
  ) {
    this.machines = new Machines(model.washing, model.closingMs);
    this.rules = rulesInOrder(model, seed);
    this.times = new Stream(streamKey(seed, 'machines'));
    this.dryingTimes = new Stream(streamKey(seed, 'drying'));
    this.drying = model.ware.map((ware) => new Duration(ware.drying));
    this.goes = model.washing.otherLoads?.goes ?? 'inTurn';
    this.bench = new Bench(model, flow.ledger, this);
  }

  open(day: number): void {
    this.machines.open();
    this.loads = this.racks = this.ownRacks = this.fillPermille = this.handlingMs = 0;
    this.otherWaiting = 0;
    this.ready.clear();
    this.toUnload.clear();
    this.times.toDay(day);
    this.dryingTimes.toDay(day);
    this.machines.list.forEach((machine, number) => {
      if (machine.model.warmUpMs > 0) this.stop(number, 0, machine.model.warmUpMs);
      for (const [from, to] of machine.model.down) this.stop(number, from, to);
      if (machine.untilBreakdown) this.breaksDown(number, machine.untilBreakdown.draw(this.times));
    });
    this.rules.forEach((rule, number) => this.callAgain(number, rule.open(day)));
  }

  /** Full racks and other loads waiting for a machine. */
  get waiting(): number {
    return this.ready.size + this.otherWaiting;
  }

  /** A rack has just been closed. */
  rackClosed(rack: number): void {
    this.ready.push(rack);
    this.flow.ledger.observer?.rackClosed(rack);
  }

  /** A part rack has taken its first piece and stays open. */
  rackOpened(rack: number): void {
    for (let at = 0; at < this.rules.length; at += 1) {
      const moment = this.rules[at]!.rackOpened(rack, this.view);
      if (moment !== NEVER) this.flow.calendar.schedule(moment, EVENT.partLoadWait, 0);
    }
  }

  /** The moment that a rule asked for. */
  ruleCalled(number: number): void {
    const next = this.rules[number]!.called(this.view);
    this.work();
    this.callAgain(number, next);
  }

  /** A rack of food ware arrives. */
  otherArrives(): void {
    if (this.goes === 'inTurn') this.ready.push(OTHER_LOAD);
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
    const machine = this.goOn(number, STAGE.running);
    this.flow.calendar.schedule(
      this.flow.now + machine.cycle.draw(this.times),
      EVENT.cycleDone,
      number,
    );
    this.flow.handFree();
  }

  cycleDone(number: number): void {
    this.goOn(number, STAGE.waiting);
    this.toUnload.push(number);
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
    flow.ledger.observer?.machine(number, machine);
    flow.racksFree();
    flow.handFree();
  }

  /** A machine goes out of order or comes back; the payload is number × 4 + (0 stops, 1 starts again, 2 breaks down, 3 is repaired). */
  machineChanges(payload: number): void {
    const number = payload >> 2;
    const what = payload & 3;
    const machine = this.machines.list[number]!;
    const { calendar, ledger, now } = this.flow;
    if (what === 0 || what === BREAKS_DOWN) machine.stopped += 1;
    else machine.stopped -= 1;
    ledger.observer?.machine(number, machine);
    if (what === BREAKS_DOWN)
      calendar.schedule(
        now + machine.repair!.draw(this.times),
        EVENT.machineChanges,
        number * 4 + 3,
      );
    // After closing no new breakdown is drawn, so that the day can end.
    if (what === 3 && now < this.model.closingMs)
      this.breaksDown(number, now + machine.untilBreakdown!.draw(this.times));
    if (machine.stopped === 0) this.work();
  }

  /** A loaded machine goes on to its next stage. */
  private goOn(number: number, stage: number): Machine {
    const machine = this.machines.list[number]!;
    machine.stage = stage;
    this.flow.ledger.observer?.machine(number, machine);
    return machine;
  }

  private callAgain(number: number, moment: number): void {
    if (moment !== NEVER) this.flow.recur(moment, EVENT.ruleCalled, number);
  }

  /** It may lie days ahead: rounds and rules do not go on until then. */
  private breaksDown(number: number, moment: number): void {
    this.flow.recur(moment, EVENT.machineChanges, number * 4 + BREAKS_DOWN);
  }

  private stop(number: number, from: number, to: number): void {
    this.flow.calendar.schedule(from, EVENT.machineChanges, number * 4);
    this.flow.calendar.schedule(to, EVENT.machineChanges, number * 4 + 1);
  }

  private unload(): void {
    while (this.hands.free > 0 && this.toUnload.size > 0) {
      const number = this.toUnload.shift();
      const machine = this.goOn(number, STAGE.unloading);
      const time = machine.unloading.draw(this.times);
      this.hands.hold(this.flow.now, time);
      this.handlingMs += time;
      this.flow.calendar.schedule(this.flow.now + time, EVENT.unloaded, number);
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
    flow.ledger.observer?.machine(number, machine);
    this.hands.hold(flow.now, time);
    this.handlingMs += time;
    flow.calendar.schedule(flow.now + time, EVENT.loaded, number);
  }

  private anythingMayGo(): boolean {
    return this.ready.size > 0 || this.otherWaiting > 0 || this.nextPartRack() !== NO_RACK;
  }

  private takeNext(): number {
    if (this.otherWaiting > 0 && this.goes === 'first') {
      this.otherWaiting -= 1;
      return OTHER_LOAD;
    }
    if (this.ready.size > 0) return this.ready.shift();
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
      const rack = this.rules[at]!.next(this.view);
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
      flow.calendar.schedule(flow.now + time, EVENT.piecesReturn, pieces * bench.wareCount + ware);
    }
  }
}
