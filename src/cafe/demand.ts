/**
 * Demand: draws a day of guests. All randomness about guests is spent here and nothing later redraws,
 * so every alternative meets the same guests.
 *
 * Each attribute has a stream of its own, and most take one uniform a party: when a rate rises, the
 * same parties come in closer step; when a share changes, the same guests keep their luck.
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
    const { arrivals, dayFactorCv } = this.model;
    const clock = this.streams.arrivals;
    let level = 1;
    if (dayFactorCv > LEAST_SPREAD) {
      const shape = 1 / square(dayFactorCv);
      level = standardGamma(shape, this.streams.level) / shape;
    }
    // A Poisson process of rate 1 on the axis of expected parties, read back to the clock step by step.
    let wanted = clock.exponential();
    let expected = 0;
    let from = 0;
    for (const step of arrivals) {
      const rate = step.partiesPerMs * level;
      const expectedAtEnd = expected + rate * (step.untilMs - from);
      while (wanted < expectedAtEnd) {
        this.drawParty(wholeMs(from + (wanted - expected) / rate), into);
        if (into.parties + into.drinks > MOST_EVENTS) throw tooManyEvents(day);
        wanted += clock.exponential();
      }
      expected = expectedAtEnd;
      from = step.untilMs;
    }
  }

  /** The shares that hold at a moment; the last part of the day goes on to its end. */
  private sharesAt(ms: number): Shares {
    const { shares } = this;
    let part = 0;
    while (part < shares.length - 1 && ms >= shares[part]!.untilMs) part += 1;
    return shares[part]!;
  }

  private drawParty(arrivalMs: number, into: Day): void {
    const { streams, model } = this;
    const { drinksEach, secondDrink } = model.guests;
    const { staysIn, menuUpTo } = this.sharesAt(arrivalMs);
    const size = 1 + drawShare(this.sizeUpTo, streams.sizes);
    const stays = staysIn >= 1 || (staysIn > 0 && streams.stays.uniform() < staysIn);
    const dwell = this.dwell[Math.min(size, this.dwell.length) - 1]!;
    into.arrive(arrivalMs, size, stays, dwell.draw(streams.dwell));
    const least = Math.floor(drinksEach);
    const chanceOfMore = drinksEach - least;
    for (let guest = 0; guest < size; guest += 1) {
      const drinks = least + (chanceOfMore > 0 && streams.rounds.uniform() < chanceOfMore ? 1 : 0);
      for (let drink = 0; drink < drinks; drink += 1) {
        const kind = drawShare(menuUpTo, streams.kinds);
        into.order(kind, this.making[kind]!.draw(streams.making));
      }
    }
    if (secondDrink <= 0) return;
    for (let guest = 0; guest < size; guest += 1) {
      if (secondDrink < 1 && streams.seconds.uniform() >= secondDrink) continue;
      const kind = drawShare(menuUpTo, streams['second kinds']);
      into.orderSecond(
        kind,
        this.making[kind]!.draw(streams['second making']),
        streams['second moments'].uniform(),
      );
    }
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
  while (u >= upTo[index]!) index += 1;
  return index;
}
