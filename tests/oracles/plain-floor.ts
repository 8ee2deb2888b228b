/**
 * A slow, plain model of the rush, to hold the fast one against.
 *
 * It is written from the rules alone and shares no code with `src/cafe`: every piece is an object that
 * knows its place, counts are made by looking at all pieces, and what may go into a machine is sorted
 * afresh each time. Listed days and constant durations only; no polishing, warm-up, spells out of order,
 * part loads by the clock, or hands with another job.
 *
 * The rules, as R1 to R8 below: R1 arrivals, R2 seats, R3 counter, R4 table, R5 clearing, R6 racking,
 * R7 washing, R8 drying; R0 is the order of things within one millisecond.
 */
import type { CafeModel, MachineModel, Setting } from '../../src/cafe/model.js';
import type { ListedDay } from '../../src/cafe/listed-day.js';
import type { DurationLaw } from '../../src/engine/durations.js';

/** The places a piece goes through, in the order of its way round. */
export const PLAIN_PLACES = ['shelf', 'in use', 'table', 'carried', 'bench', 'racked', 'washing', 'drying'] as const;
type Place = (typeof PLAIN_PLACES)[number];

interface Piece {
  readonly ware: number;
  place: Place;
  /** When it reached the bench last, and as which piece of the day. */
  benchMs: number;
  benchOrder: number;
}

interface Party {
  readonly size: number;
  readonly staysIn: boolean;
  readonly dwellMs: number;
  readonly drinks: readonly Drink[];
  readonly seconds: readonly { readonly drink: Drink; readonly share: number }[];
  firstsToServe: number;
  secondsOnOrder: number;
  dwellOver: boolean;
  gone: boolean;
  /** Pieces brought to the table, in the order served; after leaving, those not yet picked up. */
  pieces: Piece[];
}

interface Drink {
  readonly wanted: Setting;
  readonly fallBacks: readonly Setting[];
  readonly makeMs: number;
  party: Party;
  second: boolean;
  counterOrder: number;
  short: boolean;
  pieces: Piece[];
}

/** A rack of the café, or a rack of other ware (kind and family -1, no pieces). */
interface Rack {
  readonly kind: number;
  readonly family: number;
  readonly pieces: Piece[];
  /** When it closed, or arrived, in order; null: a part rack. */
  fullOrder: number | null;
}

interface Load {
  readonly machine: MachineModel;
  readonly number: number;
  readonly racks: Rack[];
}

/** R0: what comes first within one millisecond. */
const ORDER = ['shelf', 'unloaded', 'cycleDone', 'loaded', 'tripEnd', 'leave', 'drinkDone', 'round', 'waitOver', 'seatWaitOver', 'otherLoad', 'arrival', 'second'] as const;
type Kind = (typeof ORDER)[number];

export interface PlainOutcome {
  /** Per ware, the most ever off the shelf. */
  readonly peaks: readonly number[];
  /** Per ware, drinks counted short against it. */
  readonly short: readonly number[];
  readonly firstShortMs: number | null;
  /** Parties that left for want of seats, and that took away instead. */
  readonly left: number;
  readonly takeawayInstead: number;
  /** Drinks ordered and never served. */
  readonly unserved: number;
  /** Per ware and place but the shelf (in the order of `PLAIN_PLACES`): pieces there at the end, and Σ moments of leaving − Σ moments of entering, ms. */
  readonly atEnd: readonly (readonly number[])[];
  readonly stays: readonly (readonly number[])[];
}

const halfUp = (x: number): number => Math.floor(x + 0.5);

function constantMs(law: DurationLaw): number {
  if (law.law !== 'constant') throw new RangeError('the plain floor knows constant durations only');
  return halfUp(law.ms);
}

/** Times at which the accumulated rate reaches 1, 2, 3 ..., strictly before closing. */
function regularTimes(model: CafeModel): number[] {
  const times: number[] = [];
  let [from, accumulated] = [0, 0];
  for (const { untilMs, racksPerMs } of model.washing.otherLoads?.steps ?? []) {
    const atEnd = accumulated + racksPerMs * (untilMs - from);
    // A hair of tolerance, as the rate is a binary fraction of what was meant.
    while (racksPerMs > 0 && times.length + 1 <= atEnd + 1e-9) times.push(halfUp(from + (times.length + 1 - accumulated) / racksPerMs));
    [from, accumulated] = [untilMs, atEnd];
  }
  return times.filter((ms) => ms < model.closingMs);
}

/** The rush of a listed day at a stock (pieces per ware, in model order), or with unlimited ware (null). */
export function plainFloor(model: CafeModel, day: ListedDay, stock: readonly number[] | null): PlainOutcome {
  const { ware, families, rackKinds, washing, clearing, seats } = model;

  // ---- the calendar: one sorted list -------------------------------------------------------------
  const events: { ms: number; rank: number; sequence: number; run: () => void }[] = [];
  let [now, sequence] = [0, 0];
  const at = (ms: number, kind: Kind, run: () => void): void => {
    events.push({ ms, rank: ORDER.indexOf(kind), sequence: sequence++, run });
    events.sort((a, b) => a.ms - b.ms || a.rank - b.rank || a.sequence - b.sequence);
  };

  // ---- pieces ------------------------------------------------------------------------------------
  const pieces: Piece[] = [];
  const newPiece = (w: number): Piece => {
    const piece: Piece = { ware: w, place: 'shelf', benchMs: 0, benchOrder: 0 };
    pieces.push(piece);
    return piece;
  };
  // Every day opens with all pieces clean.
  stock?.forEach((n, w) => Array.from({ length: n }, () => newPiece(w)));
  const stays = ware.map(() => PLAIN_PLACES.map(() => 0));
  const move = (piece: Piece, to: Place): void => {
    stays[piece.ware]![PLAIN_PLACES.indexOf(piece.place)]! += now;
    stays[piece.ware]![PLAIN_PLACES.indexOf(to)]! -= now;
    piece.place = to;
  };
  const onShelf = (w: number): number => (stock === null ? Infinity : pieces.filter((p) => p.ware === w && p.place === 'shelf').length);
  const peaks = ware.map(() => 0);

  // ---- R3 counter --------------------------------------------------------------------------------
  const short = ware.map(() => 0);
  let firstShortMs: number | null = null;
  let freeMakers = model.makers ?? Infinity;
  let counterOrders = 0;
  const fresh: Drink[] = [];
  let aside: Drink[] = [];

  const order = (drink: Drink): void => {
    drink.counterOrder = counterOrders++;
    fresh.push(drink);
  };

  /** R3: the first piece of a setting, in its order, that the shelf cannot give; null: all there. */
  const firstMissing = (setting: Setting): number | null => {
    const needed = ware.map(() => 0);
    for (const w of setting) {
      needed[w]!++;
      if (needed[w]! > onShelf(w)) return w;
    }
    return null;
  };

  /** R3: start a drink if a setting for it is there. */
  const started = (drink: Drink): boolean => {
    const missing = firstMissing(drink.wanted);
    if (missing !== null && !drink.short) {
      drink.short = true;
      short[missing]!++;
      firstShortMs ??= now;
    }
    const setting = [drink.wanted, ...drink.fallBacks].find((s) => firstMissing(s) === null);
    if (setting === undefined) return false;
    freeMakers--;
    for (const w of setting) {
      const piece = pieces.find((p) => p.ware === w && p.place === 'shelf') ?? newPiece(w);
      move(piece, 'in use');
      drink.pieces.push(piece);
    }
    ware.forEach((_, w) => (peaks[w] = Math.max(peaks[w]!, pieces.filter((p) => p.ware === w && p.place !== 'shelf').length)));
    at(now + drink.makeMs, 'drinkDone', () => drinkDone(drink));
    // R7: low-water marks, where there are any, are tested after each take.
    if (setting.length > 0 && ware.some((w) => w.lowWater !== null)) startLoads();
    return true;
  };

  /** R3: those that stepped aside first, in counter order; then fresh drinks, first come first served. */
  const serveCounter = (): void => {
    for (const drink of [...aside].sort((a, b) => a.counterOrder - b.counterOrder)) {
      if (freeMakers > 0 && started(drink)) aside = aside.filter((d) => d !== drink);
    }
    while (freeMakers > 0 && fresh.length > 0) {
      const drink = fresh.shift()!;
      if (!started(drink)) aside.push(drink);
    }
  };

  const drinkDone = (drink: Drink): void => {
    freeMakers++;
    const { party } = drink;
    if (party.staysIn) {
      party.pieces.push(...drink.pieces);
      if (drink.second) {
        party.secondsOnOrder--;
        // R4: it outstayed its dwell for this drink.
        if (party.secondsOnOrder === 0 && party.dwellOver) at(now, 'leave', () => leave(party));
      } else {
        party.firstsToServe--;
        if (party.firstsToServe === 0) startDwell(party);
      }
    }
    serveCounter();
  };

  // ---- R4 table ----------------------------------------------------------------------------------
  const startDwell = (party: Party): void => {
    at(now + party.dwellMs, 'leave', () => leave(party));
    for (const { drink, share } of party.seconds) {
      at(now + halfUp(share * party.dwellMs), 'second', () => {
        // R0: none in the millisecond in which the party leaves.
        if (party.gone) return;
        party.secondsOnOrder++;
        order(drink);
        serveCounter();
      });
    }
  };

  const leave = (party: Party): void => {
    if (party.secondsOnOrder > 0) {
      party.dwellOver = true;
      return;
    }
    party.gone = true;
    for (const piece of party.pieces) move(piece, 'table');
    // R4: seats are free now, or once the last piece has been carried off; with no piece there is nothing to wait for.
    const freeNow = !seats.heldUntilCleared || party.pieces.length === 0 || clearing.everyMs === null;
    // R5: at once on leaving, without a walk, or the table waits for a round.
    if (clearing.everyMs === null) reachBench(party.pieces);
    else if (party.pieces.length > 0) dirtyTables.push(party);
    if (freeNow) freeSeatsOf(party);
  };

  // ---- R2 seats ----------------------------------------------------------------------------------
  let freeSeats = seats.count ?? Infinity;
  let line: Party[] = [];
  let [left, takeawayInstead] = [0, 0];

  const seat = (party: Party): void => {
    freeSeats -= party.size;
    if (party.drinks.length === 0) startDwell(party);
    party.drinks.forEach(order);
    serveCounter();
  };
  /** R2: strictly first come first served: nobody passes the head of the line. */
  const seatLine = (): void => {
    while (line.length > 0 && line[0]!.size <= freeSeats) seat(line.shift()!);
  };
  const freeSeatsOf = (party: Party): void => {
    freeSeats += party.size;
    seatLine();
  };
  const takeAway = (party: Party): void => {
    // R3: a takeaway drink takes a maker but no ware; there are no second drinks.
    const plain = (drink: Drink): Drink => ({ ...drink, wanted: [], fallBacks: [] });
    const outside: Party = { ...party, staysIn: false, seconds: [] };
    for (const drink of party.drinks) order({ ...plain(drink), party: outside });
    serveCounter();
  };
  const arrive = (party: Party): void => {
    if (!party.staysIn) takeAway(party);
    else if (line.length === 0 && party.size <= freeSeats) seat(party);
    else if (party.size > (seats.count ?? Infinity) || seats.whenFull === 'leave') left++;
    else if (seats.whenFull === 'takeaway') {
      takeawayInstead++;
      takeAway(party);
    } else {
      line.push(party);
      at(now + seats.waitLimitMs, 'seatWaitOver', () => {
        if (!line.includes(party)) return;
        line = line.filter((p) => p !== party);
        left++;
        seatLine();
      });
    }
  };

  // ---- R5 clearing -------------------------------------------------------------------------------
  const dirtyTables: Party[] = [];
  let freeClearers = clearing.clearers ?? Infinity;

  /** R5: one free clearer sets out, if there is one and anything to clear. */
  const callClearer = (): void => {
    if (freeClearers === 0 || dirtyTables.length === 0) return;
    freeClearers--;
    walk();
  };
  /** R5: trip after trip until no table is dirty. */
  const walk = (): void => {
    if (dirtyTables.length === 0) {
      freeClearers++;
      return;
    }
    const carried: Piece[] = [];
    const cleared: Party[] = [];
    while (dirtyTables.length > 0 && carried.length < (clearing.tripPieces ?? Infinity)) {
      const piece = dirtyTables[0]!.pieces.shift()!;
      move(piece, 'carried');
      carried.push(piece);
      if (dirtyTables[0]!.pieces.length === 0) cleared.push(dirtyTables.shift()!);
    }
    at(now + constantMs(clearing.trip), 'tripEnd', () => {
      reachBench(carried);
      if (seats.heldUntilCleared) cleared.forEach(freeSeatsOf);
      walk();
    });
  };
  const round = (): void => {
    callClearer();
    // Also after closing, while anything can still become dirty or is.
    if (events.length > 0 || dirtyTables.length > 0) at(now + clearing.everyMs!, 'round', round);
  };

  // ---- R6 racking --------------------------------------------------------------------------------
  /** Racks in use, a part rack and full ones, until unloaded. */
  let racks: Rack[] = [];
  let waitingRacks: Rack[] = [];
  let [benchOrders, fullOrders] = [0, 0];
  /** A rack is cut into so many equal parts that every piece takes a whole number of them. */
  const parts = ware.reduce((product, { perRack }) => product * perRack, 1);
  const partsOf = (w: number): number => parts / ware[w]!.perRack;
  const used = (rack: Rack): number => rack.pieces.reduce((sum, p) => sum + partsOf(p.ware), 0);
  const smallest = (family: number): number => Math.min(...ware.flatMap((w, i) => (w.family === family ? [partsOf(i)] : [])));
  const partRackOf = (family: number): Rack | undefined => waitingRacks.find((r) => r.family === family && r.fullOrder === null);
  const looseKinds = (): number[] => pieces.filter((p) => p.place === 'bench').map((p) => families[ware[p.ware]!.family]!.rackKind);

  const reachBench = (carried: Piece[]): void => {
    if (carried.length === 0) return;
    for (const piece of carried) {
      move(piece, 'bench');
      Object.assign(piece, { benchMs: now, benchOrder: benchOrders++ });
    }
    if (washing.partLoadWaitMs !== null) at(now + washing.partLoadWaitMs, 'waitOver', startLoads);
    rackBench();
    startLoads();
  };

  /** R6: in bench order, whatever the family; a piece without a rack is passed over. */
  const rackBench = (): void => {
    for (const piece of pieces.filter((p) => p.place === 'bench').sort((a, b) => a.benchOrder - b.benchOrder)) {
      const { family } = ware[piece.ware]!;
      const kind = families[family]!.rackKind;
      let rack = partRackOf(family);
      // R6: a piece that does not fit closes the rack.
      if (rack !== undefined && used(rack) + partsOf(piece.ware) > parts) {
        rack.fullOrder = fullOrders++;
        rack = undefined;
      }
      if (rack === undefined) {
        if (racks.filter((r) => r.kind === kind).length >= (rackKinds[kind]!.owned ?? Infinity)) continue;
        rack = { kind, family, pieces: [], fullOrder: null };
        racks.push(rack);
        waitingRacks.push(rack);
      }
      rack.pieces.push(piece);
      move(piece, 'racked');
      // R6: full when the family's smallest piece no longer fits.
      if (used(rack) + smallest(family) > parts) rack.fullOrder = fullOrders++;
    }
  };

  // ---- R7 washing --------------------------------------------------------------------------------
  let freeHands = typeof washing.hands === 'number' ? washing.hands : Infinity;
  if (typeof washing.hands === 'string') throw new RangeError('the plain floor knows no shared hands');
  const busyMachines = new Set<number>();
  const toUnload: Load[] = [];

  /** R7: the rack that goes next, or undefined when none may go. */
  const nextToGo = (): Rack | undefined => {
    const full = waitingRacks.filter((r) => r.fullOrder !== null).sort((a, b) => a.fullOrder! - b.fullOrder!);
    const ours = full.filter((r) => r.kind >= 0);
    const others = full.filter((r) => r.kind < 0);
    const oldest = (rack: Rack): Piece => rack.pieces.reduce((a, b) => (a.benchOrder < b.benchOrder ? a : b));
    const part = waitingRacks
      .filter((r) => r.fullOrder === null)
      .sort((a, b) => oldest(a).benchMs - oldest(b).benchMs || oldest(a).benchOrder - oldest(b).benchOrder);
    // R7 goes by the clock: a rack whose wait ends in this millisecond may go with a machine that comes free in it.
    const waited = part.filter((r) => now - oldest(r).benchMs >= (washing.partLoadWaitMs ?? Infinity));
    const low = part.filter((r) => r.pieces.some((p) => onShelf(p.ware) <= (ware[p.ware]!.lowWater ?? -1)));
    const loose = looseKinds();
    const relief = part.filter((r) => loose.includes(r.kind)).sort((a, b) => used(b) - used(a));
    const goes = washing.otherLoads?.goes ?? 'inTurn';
    const first = goes === 'first' ? [...others, ...ours] : goes === 'last' ? ours : full;
    return [...first, ...waited, ...low, ...relief, ...(goes === 'last' ? others : [])][0];
  };

  const startLoads = (): void => {
    // R7: unloading goes before loading.
    while (freeHands > 0 && toUnload.length > 0) {
      const load = toUnload.shift()!;
      freeHands--;
      at(now + constantMs(load.machine.unloading), 'unloaded', () => unloaded(load));
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
      at(now + constantMs(machine.loading), 'loaded', () => loaded(load));
    }
  };
  const loaded = (load: Load): void => {
    at(now + constantMs(load.machine.cycle), 'cycleDone', () => {
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
    const ms = now + constantMs(ware[piece.ware]!.drying);
    const together = drying.get(ms);
    if (together !== undefined) together.push(piece);
    else {
      drying.set(ms, [piece]);
      // R8: what dries at one moment comes back together.
      at(ms, 'shelf', () => {
        for (const p of drying.get(ms)!) move(p, 'shelf');
        drying.delete(ms);
        serveCounter();
      });
    }
  };

  // ---- the day -----------------------------------------------------------------------------------
  for (const listed of day.parties) {
    const party = readParty(model, listed);
    at(halfUp(listed.minute * 60_000), 'arrival', () => arrive(party));
  }
  for (const ms of regularTimes(model)) {
    at(ms, 'otherLoad', () => {
      waitingRacks.push({ kind: -1, family: -1, pieces: [], fullOrder: fullOrders++ });
      startLoads();
    });
  }
  if (clearing.everyMs !== null) at(clearing.everyMs, 'round', round);
  while (events.length > 0) {
    const event = events.shift()!;
    now = event.ms;
    event.run();
  }

  const notShelf = PLAIN_PLACES.slice(1);
  const atEnd = ware.map((_, w) => notShelf.map((place) => pieces.filter((p) => p.ware === w && p.place === place).length));
  return { peaks, short, firstShortMs, left, takeawayInstead, unserved: aside.length + fresh.length, atEnd, stays: stays.map((row) => row.slice(1)) };
}

function readParty(model: CafeModel, listed: ListedDay['parties'][number]): Party {
  const party: Party = {
    size: listed.size,
    staysIn: listed.staysIn,
    dwellMs: halfUp(listed.dwellMinutes * 60_000),
    drinks: listed.drinks.map((d) => read(d, false)),
    seconds: listed.seconds.map((d) => ({ drink: read(d, true), share: d.shareOfDwell })),
    firstsToServe: listed.drinks.length,
    secondsOnOrder: 0,
    dwellOver: false,
    gone: false,
    pieces: [],
  };
  for (const drink of [...party.drinks, ...party.seconds.map((s) => s.drink)]) drink.party = party;
  return party;

  function read({ drink, makeMinutes }: { drink: string; makeMinutes: number }, second: boolean): Drink {
    const kind = model.menu.find(({ id }) => id === drink);
    if (kind === undefined) throw new RangeError(`no drink "${drink}" on the menu`);
    const nobody: Party = { size: 0, staysIn: false, dwellMs: 0, drinks: [], seconds: [], firstsToServe: 0, secondsOnOrder: 0, dwellOver: false, gone: false, pieces: [] };
    return { wanted: kind.setting, fallBacks: kind.fallBacks, makeMs: halfUp(makeMinutes * 60_000), party: nobody, second, counterOrder: 0, short: false, pieces: [] };
  }
}
