/** What the plain floor is made of: pieces, parties, drinks, racks, and the order of things within a millisecond. */
import type { CafeModel, MachineModel, Setting } from '../../src/cafe/model.js';
import type { ListedDay } from '../../src/cafe/listed-day.js';
import { Duration, type DurationLaw } from '../../src/engine/durations.js';
import { Stream, streamKey } from '../../src/engine/streams.js';

/** The places a piece goes through, in the order of its way round. */
export const PLAIN_PLACES = [
  'shelf',
  'in use',
  'table',
  'carried',
  'bench',
  'racked',
  'washing',
  'drying',
] as const;
export type Place = (typeof PLAIN_PLACES)[number];

export interface Piece {
  readonly ware: number;
  place: Place;
  /** When it reached the bench last, and as which piece of the day. */
  benchMs: number;
  benchOrder: number;
}

export interface Party {
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

export interface Drink {
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
export interface Rack {
  readonly kind: number;
  readonly family: number;
  readonly pieces: Piece[];
  /** When it closed, or arrived, in order; null: a part rack. */
  fullOrder: number | null;
  /** When its first piece has waited long enough. */
  dueMs: number;
  /** Whether a time for part racks has come since it was opened. */
  released: boolean;
}

export interface Load {
  readonly machine: MachineModel;
  readonly number: number;
  readonly racks: Rack[];
}

/** R0: what comes first within one millisecond. */
export const ORDER = [
  'shelf',
  'unloaded',
  'cycleDone',
  'loaded',
  'tripEnd',
  'leave',
  'drinkDone',
  'round',
  'waitOver',
  'partTime',
  'seatWaitOver',
  'otherLoad',
  'arrival',
  'second',
] as const;
export type Kind = (typeof ORDER)[number];

/** Events that only keep a habit going: they are no reason to go on. */
export const HABITS: readonly number[] = [ORDER.indexOf('round'), ORDER.indexOf('partTime')];

export const halfUp = (x: number): number => Math.floor(x + 0.5);

export function constantMs(law: DurationLaw): number {
  if (law.law !== 'constant') throw new RangeError('the plain floor knows constant durations only');
  return halfUp(law.ms);
}

/** Where habits vary: how they fall. */
export interface Luck {
  /** A length of the law, ms. */
  length(purpose: string, law: DurationLaw): number;
  /** A share between 0 and 1. */
  share(purpose: string): number;
}

/** The luck of a day: the streams that the seed has for each purpose. */
export function luckOf(seed: string, day: number): Luck {
  const streams = new Map<string, Stream>();
  const stream = (purpose: string): Stream => {
    const known = streams.get(purpose) ?? new Stream(streamKey(seed, purpose)).toDay(day);
    streams.set(purpose, known);
    return known;
  };
  return {
    length: (purpose, law) => new Duration(law).draw(stream(purpose)),
    share: (purpose) => stream(purpose).uniform(),
  };
}

/** Times of a habit: at every multiple of a constant, or after intervals drawn one by one, each at least a second. */
export function habit(
  law: DurationLaw,
  purpose: string,
  luck: Luck,
): { readonly first: () => number; readonly interval: () => number } {
  if (law.law === 'constant')
    return { first: () => constantMs(law), interval: () => constantMs(law) };
  const interval = (): number => Math.max(1000, luck.length(purpose, law));
  return {
    first: () => {
      const drawn = interval();
      return halfUp(drawn * luck.share(purpose));
    },
    interval,
  };
}

/** Times at which the accumulated rate reaches 1, 2, 3 ..., strictly before closing. */
export function regularTimes(model: CafeModel): number[] {
  const times: number[] = [];
  let [from, accumulated] = [0, 0];
  for (const { untilMs, racksPerMs } of model.washing.otherLoads?.steps ?? []) {
    const atEnd = accumulated + racksPerMs * (untilMs - from);
    // A hair of tolerance, as the rate is a binary fraction of what was meant.
    while (racksPerMs > 0 && times.length + 1 <= atEnd + 1e-9)
      times.push(halfUp(from + (times.length + 1 - accumulated) / racksPerMs));
    [from, accumulated] = [untilMs, atEnd];
  }
  return times.filter((ms) => ms < model.closingMs);
}

/** A party of a listed day and its drinks, before anything has happened to them. */
export function readParty(model: CafeModel, listed: ListedDay['parties'][number]): Party {
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

  function read(
    { drink, makeMinutes }: { drink: string; makeMinutes: number },
    second: boolean,
  ): Drink {
    const kind = model.menu.find(({ id }) => id === drink);
    if (kind === undefined) throw new RangeError(`no drink "${drink}" on the menu`);
    const nobody: Party = {
      size: 0,
      staysIn: false,
      dwellMs: 0,
      drinks: [],
      seconds: [],
      firstsToServe: 0,
      secondsOnOrder: 0,
      dwellOver: false,
      gone: false,
      pieces: [],
    };
    return {
      wanted: kind.setting,
      fallBacks: kind.fallBacks,
      makeMs: halfUp(makeMinutes * 60_000),
      party: nobody,
      second,
      counterOrder: 0,
      short: false,
      pieces: [],
    };
  }
}
