/**
 * The plain floor's bench, racks, machines and drying (R6 to R8). What comes first in `nextToGo` is sorted
 * afresh each time it is asked.
 */
import type { CafeModel } from '../../src/cafe/model.js';
import type { Kind, Load, Luck, Piece, Place, Rack } from './plain-parts.js';
import { constantMs, habit } from './plain-parts.js';

/** What the wash-up needs of the floor around it. */
export interface House {
  readonly model: CafeModel;
  /** Every piece of the day. */
  readonly pieces: readonly Piece[];
  now(): number;
  at(ms: number, kind: Kind, run: () => void): void;
  move(piece: Piece, to: Place): void;
  /** Pieces of a ware on the shelf; Infinity where they are unlimited. */
  onShelf(ware: number): number;
  /** Pieces have come back to the shelf. */
  shelfFuller(): void;
  readonly luck: Luck;
  /** Whether anything is still to come that is no mere habit. */
  moreToCome(): boolean;
}

export interface WashUp {
  /** The day begins. */
  open(): void;
  /** Dirty pieces reach the bench, in this order. */
  reachBench(carried: readonly Piece[]): void;
  /** Start what may start: unloading, then loads. */
  startLoads(): void;
  /** A rack of other ware arrives. */
  otherArrives(): void;
}

export function plainWashUp(house: House): WashUp {
  const { model, pieces, now, at, move, onShelf, shelfFuller, luck, moreToCome } = house;
  const { ware, families, rackKinds, washing } = model;

  // ---- R6 racking --------------------------------------------------------------------------------
  /** Racks in use, a part rack and full ones, until unloaded. */
  let racks: Rack[] = [];
  let waitingRacks: Rack[] = [];
  let [benchOrders, fullOrders] = [0, 0];
  /** A rack is cut into so many equal parts that every piece takes a whole number of them. */
  const parts = ware.reduce((product, { perRack }) => product * perRack, 1);
  const partsOf = (w: number): number => parts / ware[w]!.perRack;
  const used = (rack: Rack): number => rack.pieces.reduce((sum, p) => sum + partsOf(p.ware), 0);
  const smallest = (family: number): number =>
    Math.min(...ware.flatMap((w, i) => (w.family === family ? [partsOf(i)] : [])));
  const partRackOf = (family: number): Rack | undefined =>
    waitingRacks.find((r) => r.family === family && r.fullOrder === null);
  const looseKinds = (): number[] =>
    pieces.filter((p) => p.place === 'bench').map((p) => families[ware[p.ware]!.family]!.rackKind);

  const reachBench = (carried: readonly Piece[]): void => {
    if (carried.length === 0) return;
    for (const piece of carried) {
      move(piece, 'bench');
      Object.assign(piece, { benchMs: now(), benchOrder: benchOrders++ });
    }
    rackBench();
    startLoads();
  };

  /** R6: in bench order, whatever the family; a piece without a rack is passed over. */
  const rackBench = (): void => {
    for (const piece of pieces
      .filter((p) => p.place === 'bench')
      .sort((a, b) => a.benchOrder - b.benchOrder)) {
      const { family } = ware[piece.ware]!;
      const kind = families[family]!.rackKind;
      let rack = partRackOf(family);
      // R6: a piece that does not fit closes the rack.
      if (rack !== undefined && used(rack) + partsOf(piece.ware) > parts) {
        rack.fullOrder = fullOrders++;
        rack = undefined;
      }
      if (rack === undefined) {
        if (racks.filter((r) => r.kind === kind).length >= (rackKinds[kind]!.owned ?? Infinity))
          continue;
        rack = { kind, family, pieces: [], fullOrder: null, dueMs: Infinity, released: false };
        racks.push(rack);
        waitingRacks.push(rack);
      }
      rack.pieces.push(piece);
      move(piece, 'racked');
      // R6: full when the family's smallest piece no longer fits.
      if (used(rack) + smallest(family) > parts) rack.fullOrder = fullOrders++;
      else if (rack.pieces.length === 1 && washing.partLoadWait !== null) {
        // R7: the wait of a rack is drawn with its first piece, and counts from when that reached the bench.
        rack.dueMs = piece.benchMs + luck.length('part-load waits', washing.partLoadWait);
        if (rack.dueMs > now()) at(rack.dueMs, 'waitOver', startLoads);
      }
    }
  };

  // ---- R7 washing --------------------------------------------------------------------------------
  let freeHands = typeof washing.hands === 'number' ? washing.hands : Infinity;
  if (typeof washing.hands === 'string')
    throw new RangeError('the plain floor knows no shared hands');
  const busyMachines = new Set<number>();
  const toUnload: Load[] = [];

  /** R7: the rack that goes next, or undefined when none may go. */
  const nextToGo = (): Rack | undefined => {
    const full = waitingRacks
      .filter((r) => r.fullOrder !== null)
      .sort((a, b) => a.fullOrder! - b.fullOrder!);
    const ours = full.filter((r) => r.kind >= 0);
    const others = full.filter((r) => r.kind < 0);
    const oldest = (rack: Rack): Piece =>
      rack.pieces.reduce((a, b) => (a.benchOrder < b.benchOrder ? a : b));
    const part = waitingRacks
      .filter((r) => r.fullOrder === null)
      .sort(
        (a, b) =>
          oldest(a).benchMs - oldest(b).benchMs || oldest(a).benchOrder - oldest(b).benchOrder,
      );
    // R7 goes by the clock: a rack whose wait ends in this millisecond may go with a machine that comes free in it.
    const filled = part.filter((r) => used(r) / parts >= (washing.partLoadFrom ?? 0));
    const waited = filled.filter((r) => now() >= r.dueMs);
    const timed = filled.filter((r) => r.released);
    // R7: the last loads of the day.
    const over =
      washing.partLoadFrom !== null &&
      now() >= model.closingMs &&
      !pieces.some((p) => ['in use', 'table', 'carried'].includes(p.place));
    const swept = over ? part : [];
    const low = part.filter((r) =>
      r.pieces.some((p) => onShelf(p.ware) <= (ware[p.ware]!.lowWater ?? -1)),
    );
    const loose = looseKinds();
    const relief = part.filter((r) => loose.includes(r.kind)).sort((a, b) => used(b) - used(a));
    const goes = washing.otherLoads?.goes ?? 'inTurn';
    const first = goes === 'first' ? [...others, ...ours] : goes === 'last' ? ours : full;
    return [
      ...first,
      ...waited,
      ...timed,
      ...swept,
      ...low,
      ...relief,
      ...(goes === 'last' ? others : []),
    ][0];
  };

  const startLoads = (): void => {
    // R7: unloading goes before loading.
    while (freeHands > 0 && toUnload.length > 0) {
      const load = toUnload.shift()!;
      freeHands--;
      at(now() + constantMs(load.machine.unloading), 'unloaded', () => unloaded(load));
    }
    for (;;) {
      // R7: the free machine with the lowest number; without a limit there is always another.
      let number = 0;
      while (busyMachines.has(number)) number++;
      const machine = washing.machines === null ? washing.everyMachine : washing.machines[number];
      if (machine === undefined || freeHands === 0 || nextToGo() === undefined) return;
      const load: Load = { machine, number, racks: [] };
      while (load.racks.length < machine.racks && nextToGo() !== undefined) {
        const rack = nextToGo()!;
        load.racks.push(rack);
        waitingRacks = waitingRacks.filter((r) => r !== rack);
        for (const piece of rack.pieces) move(piece, 'washing');
      }
      freeHands--;
      busyMachines.add(number);
      at(now() + constantMs(machine.loading), 'loaded', () => loaded(load));
    }
  };
  const loaded = (load: Load): void => {
    at(now() + constantMs(load.machine.cycle), 'cycleDone', () => {
      toUnload.push(load);
      startLoads();
    });
    freeHands++;
    startLoads();
  };
  const unloaded = (load: Load): void => {
    for (const piece of load.racks.flatMap((r) => r.pieces)) dry(piece);
    racks = racks.filter((r) => !load.racks.includes(r));
    freeHands++;
    busyMachines.delete(load.number);
    rackBench();
    startLoads();
  };

  // ---- R8 drying ---------------------------------------------------------------------------------
  const drying = new Map<number, Piece[]>();
  const dry = (piece: Piece): void => {
    move(piece, 'drying');
    const ms = now() + constantMs(ware[piece.ware]!.drying);
    const together = drying.get(ms);
    if (together !== undefined) together.push(piece);
    else {
      drying.set(ms, [piece]);
      // R8: what dries at one moment comes back together.
      at(ms, 'shelf', () => {
        for (const p of drying.get(ms)!) move(p, 'shelf');
        drying.delete(ms);
        shelfFuller();
      });
    }
  };

  const otherArrives = (): void => {
    waitingRacks.push({
      kind: -1,
      family: -1,
      pieces: [],
      fullOrder: fullOrders++,
      dueMs: Infinity,
      released: false,
    });
    startLoads();
  };

  /** R7: at the times for part racks, all of them may go. */
  const open = (): void => {
    if (washing.partLoadFrom !== null) at(model.closingMs, 'partTime', startLoads);
    if (washing.partLoadsEvery === null) return;
    const times = habit(washing.partLoadsEvery, 'part-load times', luck);
    const release = (): void => {
      const part = waitingRacks.filter((r) => r.fullOrder === null);
      for (const rack of part) rack.released = true;
      const goOn = part.some((r) => used(r) / parts >= (washing.partLoadFrom ?? 0)) || moreToCome();
      startLoads();
      if (goOn) at(now() + times.interval(), 'partTime', release);
    };
    at(times.first(), 'partTime', release);
  };

  return { open, reachBench, startLoads, otherArrives };
}
