/**
 * A slow, plain model of the rush, to hold the fast one against.
 *
 * It is written from the rules alone and shares no code with `src/cafe`: every piece is an object that
 * knows its place, counts are made by looking at all pieces, and what may go into a machine is sorted
 * afresh each time. Listed days and constant durations only, but for habits that vary (`Luck`); no polishing,
 * warm-up, spells out of order, or hands with another job.
 *
 * The rules, as R1 to R8 below: R1 arrivals, R2 seats, R3 counter, R4 table, R5 clearing, R6 racking,
 * R7 washing, R8 drying; R0 is the order of things within one millisecond.
 */
import type { CafeModel, Setting } from '../../src/cafe/model.js';
import type { ListedDay } from '../../src/cafe/listed-day.js';
import type { Drink, Kind, Luck, Party, Piece, Place } from './plain-parts.js';
import {
  constantMs,
  habit,
  HABITS,
  halfUp,
  luckOf,
  ORDER,
  PLAIN_PLACES,
  readParty,
  regularTimes,
} from './plain-parts.js';
import { plainWashUp } from './plain-wash-up.js';

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

/** The rush of a listed day at a stock (pieces per ware, in model order), or with unlimited ware (null); `luck` is for habits that vary. */
export function plainFloor(
  model: CafeModel,
  day: ListedDay,
  stock: readonly number[] | null,
  luck: Luck = luckOf('any seed', 0),
): PlainOutcome {
  const { ware, clearing, seats } = model;

  // ---- the calendar: one sorted list -------------------------------------------------------------
  const events: { ms: number; rank: number; sequence: number; run: () => void }[] = [];
  let [now, sequence] = [0, 0];
  /** Whether anything is still to come that is no mere habit. */
  const moreToCome = (): boolean => events.some(({ rank }) => !HABITS.includes(rank));
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
  const onShelf = (w: number): number =>
    stock === null ? Infinity : pieces.filter((p) => p.ware === w && p.place === 'shelf').length;
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
    ware.forEach(
      (_, w) =>
        (peaks[w] = Math.max(
          peaks[w]!,
          pieces.filter((p) => p.ware === w && p.place !== 'shelf').length,
        )),
    );
    at(now + drink.makeMs, 'drinkDone', () => drinkDone(drink));
    // R7: low-water marks, where there are any, are tested after each take.
    if (setting.length > 0 && ware.some((w) => w.lowWater !== null)) washUp.startLoads();
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
    const freeNow = !seats.heldUntilCleared || party.pieces.length === 0 || clearing.every === null;
    // R5: at once on leaving, without a walk, or the table waits for a round.
    if (clearing.every === null) washUp.reachBench(party.pieces);
    else if (party.pieces.length > 0) dirtyTables.push(party);
    if (freeNow) freeSeatsOf(party);
    extraRound();
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
  const callClearer = (extra: boolean): void => {
    if (freeClearers === 0 || dirtyTables.length === 0) return;
    if (extra) onExtraRound = true;
    freeClearers--;
    walk(extra);
  };
  let onExtraRound = false;
  /** R5: when a party leaves or a clearer becomes free, if enough lies dirty or dirty tables keep a party waiting; one at a time. */
  const extraRound = (): void => {
    if (onExtraRound || clearing.every === null) return;
    const dirty = dirtyTables.reduce((sum, party) => sum + party.pieces.length, 0);
    if (
      dirty >= (clearing.whenDirty ?? Infinity) ||
      (clearing.forSeats && line.length > 0 && dirty > 0)
    )
      callClearer(true);
  };
  /** R5: trip after trip until no table is dirty. */
  const walk = (extra: boolean): void => {
    if (dirtyTables.length === 0) {
      freeClearers++;
      if (extra) onExtraRound = false;
      extraRound();
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
      washUp.reachBench(carried);
      if (seats.heldUntilCleared) cleared.forEach(freeSeatsOf);
      walk(extra);
    });
  };
  const rounds = clearing.every && habit(clearing.every, 'clearing rounds', luck);
  const round = (): void => {
    callClearer(false);
    // Also after closing, while anything can still become dirty or is.
    if (moreToCome() || dirtyTables.length > 0) at(now + rounds!.interval(), 'round', round);
  };

  // ---- R6 racking, R7 washing, R8 drying ----------------------------------------------------------
  const washUp = plainWashUp({
    model,
    pieces,
    now: () => now,
    at,
    move,
    onShelf,
    shelfFuller: serveCounter,
    luck,
    moreToCome,
  });

  // ---- the day -----------------------------------------------------------------------------------
  for (const listed of day.parties) {
    const party = readParty(model, listed);
    at(halfUp(listed.minute * 60_000), 'arrival', () => arrive(party));
  }
  for (const ms of regularTimes(model)) at(ms, 'otherLoad', washUp.otherArrives);
  if (rounds !== null) at(rounds.first(), 'round', round);
  washUp.open();
  while (events.length > 0) {
    const event = events.shift()!;
    now = event.ms;
    event.run();
  }

  const notShelf = PLAIN_PLACES.slice(1);
  const atEnd = ware.map((_, w) =>
    notShelf.map((place) => pieces.filter((p) => p.ware === w && p.place === place).length),
  );
  return {
    peaks,
    short,
    firstShortMs,
    left,
    takeawayInstead,
    unserved: aside.length + fresh.length,
    atEnd,
    stays: stays.map((row) => row.slice(1)),
  };
}
