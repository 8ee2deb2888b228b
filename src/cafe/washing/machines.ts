/**
 * Machines: which stand idle, which load each carries, and when they are out of order.
 *
 * Unlimited machines are numbered as they are first needed. The lowest-numbered free machine goes first.
 */
import { Duration } from '../../engine/durations.js';
import { overlap } from '../people.js';
import type { MachineModel, WashingModel } from '../model.js';

/** What a machine is about. */
export const STAGE = { idle: 0, loading: 1, running: 2, waiting: 3, unloading: 4 } as const;

/** A machine's times made ready for drawing, and the state of its load. */
export interface Machine {
  readonly model: MachineModel;
  readonly loading: Duration;
  readonly cycle: Duration;
  readonly unloading: Duration;
  readonly untilBreakdown: Duration | null;
  readonly repair: Duration | null;
  /** Racks in it; -1 an other load's. Filled up to `count`. */
  readonly racks: Int32Array;
  count: number;
  busy: boolean;
  /** One of STAGE; `waiting` is for a hand to unload it. */
  stage: number;
  /** How many reasons there are why it may not start: warm-up, a spell out of order, a breakdown. */
  stopped: number;
  startedAt: number;
}

export class Machines {
  readonly list: Machine[] = [];
  /** Machine-milliseconds between opening and closing. */
  busyMs = 0;
  private lowestIdle = 0;

  constructor(
    private readonly washing: WashingModel,
    private readonly closingMs: number,
  ) {
    for (const model of washing.machines ?? []) this.list.push(newMachine(model));
  }

  get unlimited(): boolean {
    return this.washing.machines === null;
  }

  open(): void {
    this.busyMs = 0;
    this.lowestIdle = 0;
    for (const machine of this.list) {
      machine.busy = false;
      machine.stage = STAGE.idle;
      machine.count = 0;
      machine.stopped = 0;
    }
  }

  /** Number of the lowest-numbered machine that may start a load, or -1. */
  nextFree(): number {
    const { list } = this;
    let number = this.lowestIdle;
    while (number < list.length && list[number]!.busy) number += 1;
    this.lowestIdle = number;
    while (number < list.length && (list[number]!.busy || list[number]!.stopped > 0)) number += 1;
    if (number < list.length) return number;
    if (!this.unlimited) return -1;
    list.push(newMachine(this.washing.everyMachine));
    return number;
  }

  /** The machine is taken from now until `release`. */
  start(number: number, now: number): void {
    const machine = this.list[number]!;
    machine.busy = true;
    machine.stage = STAGE.loading;
    machine.startedAt = now;
  }

  release(number: number, now: number): void {
    const machine = this.list[number]!;
    machine.busy = false;
    machine.stage = STAGE.idle;
    machine.count = 0;
    this.busyMs += overlap(machine.startedAt, now, this.closingMs);
    if (number < this.lowestIdle) this.lowestIdle = number;
  }

  /** Machines at work now. */
  get working(): number {
    return this.list.reduce((sum, machine) => sum + (machine.busy ? 1 : 0), 0);
  }
}

function newMachine(model: MachineModel): Machine {
  return {
    model,
    loading: new Duration(model.loading),
    cycle: new Duration(model.cycle),
    unloading: new Duration(model.unloading),
    untilBreakdown: model.breakdown && new Duration(model.breakdown.until),
    repair: model.breakdown && new Duration(model.breakdown.repair),
    racks: new Int32Array(model.racks),
    count: 0,
    busy: false,
    stage: STAGE.idle,
    stopped: 0,
    startedAt: 0,
  };
}
