/**
 * Storage: the shelf as two places, the machine top and the reserve.
 *
 * A ware that has room on the top is taken from there. When no more than its trigger is left, somebody
 * fetches from the reserve; a drink that finds the top empty while the reserve is not waits for that,
 * which is counted and is not short. Clean pieces go to the top while there is room. The ledger knows one
 * shelf: what is on top is part of it.
 */
import { Duration } from '../engine/durations.js';
import { Stream, streamKey } from '../engine/streams.js';
import type { Flow } from './flow.js';
import { EVENT } from './events.js';
import type { StorageModel } from './model.js';
import { People } from './people.js';
import type { Settings } from './settings.js';

export class Storage {
  /** Trips to the reserve, and drinks that waited for one. */
  trips = 0;
  waits = 0;
  /** Pieces brought up from the reserve, by ware. */
  readonly broughtUp: Float64Array;
  readonly fetchers: People;
  private readonly top: Int32Array;
  private readonly underWay: Uint8Array;
  private readonly trip: Duration;
  private readonly times: Stream;
  private readonly most: number;

  constructor(
    private readonly rules: StorageModel,
    seed: string,
    closingMs: number,
    makers: People,
    private readonly settings: Settings,
    private readonly flow: Flow,
  ) {
    this.top = new Int32Array(rules.onTop.length);
    this.broughtUp = new Float64Array(rules.onTop.length);
    this.underWay = new Uint8Array(rules.onTop.length);
    this.fetchers = rules.fetchers === 'makers' ? makers : new People(rules.fetchers, closingMs);
    this.trip = new Duration(rules.trip);
    this.times = new Stream(streamKey(seed, 'fetching'));
    this.most = rules.tripPieces ?? Number.MAX_SAFE_INTEGER;
  }

  /** After the ledger has opened the day. */
  open(day: number): void {
    this.trips = this.waits = 0;
    this.broughtUp.fill(0);
    this.underWay.fill(0);
    if (this.rules.fetchers !== 'makers') this.fetchers.open();
    if (!this.trip.constant) this.times.toDay(day);
    this.rules.onTop.forEach((room, ware) => {
      if (room !== null) this.top[ware] = Math.min(room, this.flow.ledger.shelf(ware));
    });
  }

  /** Whether the top lacks a piece of a setting that the shelf as a whole has. */
  lacks(setting: number): boolean {
    const { pieces, start } = this.settings;
    const to = start[setting + 1]!;
    for (let at = start[setting]!; at < to; at += 1) {
      const ware = pieces[at]!;
      if (this.rules.onTop[ware] === null) continue;
      let needed = 1;
      for (let before = start[setting]!; before < at; before += 1)
        if (pieces[before] === ware) needed += 1;
      if (this.top[ware]! < needed) return true;
    }
    return false;
  }

  taken(ware: number): void {
    if (this.rules.onTop[ware] !== null) this.top[ware] = this.top[ware]! - 1;
  }

  /** Clean pieces have come to the shelf. */
  returned(ware: number, pieces: number): void {
    const room = this.rules.onTop[ware]!;
    if (room !== null) this.top[ware] = Math.min(room, this.top[ware]! + pieces);
  }

  /** Whoever is free fetches what has run down to its trigger. */
  work(): void {
    const { ledger, now, calendar } = this.flow;
    for (let ware = 0; ware < this.top.length && this.fetchers.free > 0; ware += 1) {
      if (this.rules.onTop[ware] === null || this.underWay[ware] === 1) continue;
      if (this.top[ware]! > this.rules.trigger[ware]! || ledger.shelf(ware) <= this.top[ware]!)
        continue;
      const time = this.trip.draw(this.times);
      this.underWay[ware] = 1;
      this.trips += 1;
      this.fetchers.hold(now, time);
      calendar.schedule(now + time, EVENT.fetched, ware);
    }
  }

  /** Pieces of a ware arrive on the top, as many as were carried, are in reserve and find room. */
  fetched(ware: number): void {
    this.fetchers.release();
    this.underWay[ware] = 0;
    const top = this.top[ware]!;
    const inReserve = this.flow.ledger.shelf(ware) - top;
    const pieces = Math.max(0, Math.min(this.most, this.rules.onTop[ware]! - top, inReserve));
    this.broughtUp[ware] = this.broughtUp[ware]! + pieces;
    this.top[ware] = top + pieces;
  }
}
