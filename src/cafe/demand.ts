/**
 * Demand: draws a day of guests. All randomness about guests is spent here and nothing later redraws,
 * so every alternative meets the same guests.
 *
 * Each attribute has a stream of its own, and most take one uniform a party: when a rate rises, the
 * same parties come in closer step; when a share changes, the same guests keep their luck. So attributes can be
 * drawn one after the other, each for the whole day, in short loops: a quarter to a half quicker than party by party.
 */
import { square } from '../elementary/powers.js';
import { Duration, LEAST_SPREAD, standardGamma, wholeMs } from '../engine/durations.js';
import { Stream, streamKey } from '../engine/streams.js';
import type { Day } from './day.js';
import type { CafeModel } from './model.js';
import { MOST_EVENTS, tooManyEvents } from './too-much.js';

const PURPOSES = [
  'level',
  'arrivals',
  'sizes',
  'stays',
  'rounds',
  'kinds',
  'making',
  'dwell',
  'seconds',
  'second kinds',
  'second making',
  'second moments',
] as const;
type Purpose = (typeof PURPOSES)[number];

export class Demand {
  private readonly streams: Record<Purpose, Stream>;
  private readonly all: readonly Stream[];
  private readonly making: readonly Duration[];
  private readonly dwell: readonly Duration[];
  /** Parts of the day with shares of their own; one part where they are the same all day. */
  private readonly shares: readonly Shares[];
  private readonly sizeUpTo: Float64Array;

  constructor(
    private readonly model: CafeModel,
    seed: string,
  ) {
    const entries = PURPOSES.map(
      (purpose) => [purpose, new Stream(streamKey(seed, purpose))] as const,
    );
    this.streams = Object.fromEntries(entries) as Record<Purpose, Stream>;
    this.all = entries.map(([, stream]) => stream);
    this.making = model.menu.map((drink) => new Duration(drink.making));
    this.dwell = model.guests.dwell.map((law) => new Duration(law));
    const allDay = {
      untilMs: Infinity,
      staysIn: model.guests.staysIn,
      menu: model.menu.map((drink) => drink.share),
    };
    this.shares = (model.shareSteps ?? [allDay]).map(({ untilMs, staysIn, menu }) => ({
      untilMs,
      staysIn,
      menuUpTo: runningShares(menu),
    }));
    this.sizeUpTo = runningShares(model.guests.partySize);
  }

  /** Draw day number `day` into `into`, replacing what was there. */
  draw(day: number, into: Day): void {
    for (const stream of this.all) stream.toDay(day);
    into.clear();
    const { dayFactorCv } = this.model;
    let level = 1;
    if (dayFactorCv > LEAST_SPREAD) {
      const shape = 1 / square(dayFactorCv);
      level = standardGamma(shape, this.streams.level) / shape;
    }
    this.drawArrivals(level, day, into);
    this.drawParties(into);
    this.countDrinks(day, into);
    this.drawDrinks(into);
  }

  /** A Poisson process of rate 1 on the axis of expected parties, read back to the clock step by step. */
  private drawArrivals(level: number, day: number, into: Day): void {
    const clock = this.streams.arrivals;
    let parties = 0;
    let wanted = clock.exponential();
    let expected = 0;
    let from = 0;
    for (const step of this.model.arrivals) {
      const rate = step.partiesPerMs * level;
      const expectedAtEnd = expected + rate * (step.untilMs - from);
      while (wanted < expectedAtEnd) {
        if (parties === into.arrivalMs.length) into.growParties();
        into.arrivalMs[parties] = wholeMs(from + (wanted - expected) / rate);
        parties += 1;
        if (parties > MOST_EVENTS) throw tooManyEvents(day);
        wanted += clock.exponential();
      }
      expected = expectedAtEnd;
      from = step.untilMs;
    }
    into.parties = parties;
  }

  /** Who comes, and for how long. */
  private drawParties(into: Day): void {
    const { parties, size, staysIn, dwellMs, arrivalMs } = into;
    const { sizes, stays, dwell } = this.streams;
    for (let party = 0; party < parties; party += 1)
      size[party] = 1 + drawShare(this.sizeUpTo, sizes);
    for (let party = 0; party < parties; party += 1) {
      const share = this.sharesAt(arrivalMs[party]!).staysIn;
      if (share >= 1) staysIn[party] = 1;
      else staysIn[party] = share > 0 ? +(stays.uniform() < share) : 0;
    }
    for (let party = 0; party < parties; party += 1)
      dwellMs[party] = this.dwell[Math.min(size[party]!, this.dwell.length) - 1]!.draw(dwell);
  }

  /** How many drinks each party orders: its first round, then its second drinks. */
  private countDrinks(day: number, into: Day): void {
    const { parties, size, firstDrink, firstSecond } = into;
    const { rounds, seconds } = this.streams;
    const { drinksEach, secondDrink } = this.model.guests;
    const least = Math.floor(drinksEach);
    const chanceOfMore = drinksEach - least;
    let drinks = 0;
    for (let party = 0; party < parties; party += 1) {
      const guests = size[party]!;
      firstDrink[party] = drinks;
      drinks += guests * least;
      if (chanceOfMore > 0)
        for (let guest = 0; guest < guests; guest += 1)
          drinks += +(rounds.uniform() < chanceOfMore);
      firstSecond[party] = drinks;
      if (secondDrink >= 1) drinks += guests;
      else if (secondDrink > 0)
        for (let guest = 0; guest < guests; guest += 1)
          drinks += +(seconds.uniform() < secondDrink);
      if (parties + drinks > MOST_EVENTS) throw tooManyEvents(day);
    }
    firstDrink[parties] = drinks;
    into.makeRoomForDrinks(drinks);
    into.drinks = drinks;
  }

  /** What is ordered, and at which share of the dwell where it is a second drink. */
  private drawDrinks(into: Day): void {
    const { parties, firstDrink, firstSecond, arrivalMs, shareOfDwell } = into;
    const { streams } = this;
    for (let party = 0; party < parties; party += 1) {
      const { menuUpTo } = this.sharesAt(arrivalMs[party]!);
      const first = firstDrink[party]!;
      const second = firstSecond[party]!;
      const end = firstDrink[party + 1]!;
      this.drawOrders(into, party, first, second, menuUpTo, streams.kinds, streams.making);
      for (let drink = first; drink < second; drink += 1) shareOfDwell[drink] = 0;
      if (second === end) continue;
      const [kinds, making] = [streams['second kinds'], streams['second making']];
      this.drawOrders(into, party, second, end, menuUpTo, kinds, making);
      for (let drink = second; drink < end; drink += 1)
        shareOfDwell[drink] = streams['second moments'].uniform();
    }
  }

  /** Drinks `from` up to `to` of a party. */
  private drawOrders(
    into: Day,
    party: number,
    from: number,
    to: number,
    menuUpTo: Float64Array,
    kinds: Stream,
    making: Stream,
  ): void {
    for (let drink = from; drink < to; drink += 1) {
      const kind = drawShare(menuUpTo, kinds);
      into.party[drink] = party;
      into.kind[drink] = kind;
      into.makeMs[drink] = this.making[kind]!.draw(making);
    }
  }

  /** The shares that hold at a moment; the last part of the day goes on to its end. */
  private sharesAt(ms: number): Shares {
    const { shares } = this;
    let part = 0;
    while (part < shares.length - 1 && ms >= shares[part]!.untilMs) part += 1;
    return shares[part]!;
  }
}

/** Shares made ready for drawing, up to a moment. */
interface Shares {
  readonly untilMs: number;
  readonly staysIn: number;
  readonly menuUpTo: Float64Array;
}

/** Running sums of shares; the last is exactly 1, so that a draw always falls somewhere. */
function runningShares(shares: readonly number[]): Float64Array {
  let sum = 0;
  const upTo = Float64Array.from(shares, (share) => (sum += share));
  let last = upTo.length - 1;
  while (last > 0 && shares[last] === 0) last -= 1;
  upTo.fill(1, last);
  return upTo;
}

function drawShare(upTo: Float64Array, stream: Stream): number {
  if (upTo[0]! >= 1) return 0;
  const u = stream.uniform();
  let index = 0;
  // As a sum, not a search, as no processor foresees where a random number ends one.
  for (let at = 0; at < upTo.length - 1; at += 1) index += +(u >= upTo[at]!);
  return index;
}
