/**
 * What is kept of an export while it streams past: counts by day and slot, and why rows were left out.
 *
 * Memory goes with the days and slots of the export, never with its rows: line numbers and names of
 * items are kept up to a cap.
 */

import { shownText } from './flaw.js';

/** One day of the export; lists by slot cover the fitted hours only. */
export interface TillDay {
  /** Days since 1970-01-01. */
  readonly day: number;
  /** Tickets of any kind, by slot. */
  readonly tickets: number[];
  /** Tickets that hold a drink, by slot. */
  readonly parties: number[];
  /** Drinks on them, by slot. */
  readonly drinks: number[];
  /** Drinks by group of the map, within the hours. */
  readonly byGroup: number[];
  /** Tickets by their number of drinks, within the hours: `sizes[2]` hold two. Empty for a counted report. */
  readonly sizes: number[];
}

interface Skipped {
  readonly reason: string;
  readonly rows: number;
  /** The first lines of the export it happened on, at most eight. */
  readonly lines: readonly number[];
  /** What stood there the first time; may be empty. */
  readonly example: string;
}

export interface Tally {
  readonly form: 'tickets' | 'counts';
  /** Rows under the heading, those left out included. */
  readonly rows: number;
  readonly skipped: readonly Skipped[];
  /** Rows whose item the map says to ignore. */
  readonly ignoredRows: number;
  /** The commonest items that are no drink by the map, at most twelve. */
  readonly otherItems: readonly { readonly item: string; readonly rows: number }[];
  /** Rows that repeat the row before, to the letter. */
  readonly repeatedRows: number;
  /** Of the whole export, whatever the day and hour. */
  readonly tickets: number;
  readonly parties: number;
  readonly drinks: number;
  /** Tickets of the whole export by their number of drinks; empty for a counted report. */
  readonly sizes: readonly number[];
  /** Tickets with a drink at another hour than those fitted. */
  readonly partiesOutsideHours: number;
  /** Tickets left out for holding more drinks than the map's largest party. */
  readonly tooLarge: number;
  /** Times the rows came back to a day after another day. */
  readonly dayReturns: number;
  /** Tickets are told apart by their time alone, and times have no seconds: those of one minute are one. */
  readonly minutesMerged: boolean;
  /** Some time was marked as UTC. */
  readonly markedUtc: boolean;
  readonly days: ReadonlyMap<number, TillDay>;
}

/** Which slot of the fitted hours a time falls in; outside them, null. */
export interface Slots {
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly slotMinutes: number;
}

const LINES_KEPT = 8;
const ITEMS_KEPT = 2000;
const ITEMS_TOLD = 12;

function zeros(length: number): number[] {
  return Array.from({ length }, () => 0);
}

/** Adds up an export row by row. */
export class Counter {
  rows = 0;
  skippedRows = 0;
  private readonly skipped = new Map<string, { rows: number; lines: number[]; example: string }>();
  private readonly others = new Map<string, number>();
  private ignoredRows = 0;
  private repeatedRows = 0;
  private tickets = 0;
  private parties = 0;
  private drinks = 0;
  private readonly sizes: number[] = [];
  private outside = 0;
  private tooLarge = 0;
  private dayChanges = 0;
  private lastDay: number | null = null;
  private lastRow = '';
  /** Set where an export has no ticket numbers. */
  byMoment = false;
  private wholeMinutes = true;
  private markedUtc = false;
  private readonly days = new Map<number, TillDay>();
  private readonly slotCount: number;

  constructor(
    private readonly form: Tally['form'],
    private readonly slots: Slots,
    private readonly groups: number,
    private readonly largestParty: number,
  ) {
    this.slotCount = (slots.toMinute - slots.fromMinute) / slots.slotMinutes;
  }

  skip(line: number, reason: string, example = ''): void {
    this.skippedRows += 1;
    const entry = this.skipped.get(reason) ?? { rows: 0, lines: [], example: shownText(example) };
    entry.rows += 1;
    if (entry.lines.length < LINES_KEPT) entry.lines.push(line);
    this.skipped.set(reason, entry);
  }

  /** Note a good row's day and time, in the order of the export. */
  see(day: number, time: string, fields: readonly string[]): void {
    if (day !== this.lastDay) {
      this.lastDay = day;
      this.dayChanges += 1;
    }
    if (!this.days.has(day)) {
      this.days.set(day, {
        day,
        tickets: zeros(this.slotCount),
        parties: zeros(this.slotCount),
        drinks: zeros(this.slotCount),
        byGroup: zeros(this.groups),
        sizes: [],
      });
    }
    if (this.wholeMinutes && /[:.]\d{2}[:.](?!00)\d{2}/.test(time)) this.wholeMinutes = false;
    if (time.endsWith('Z')) this.markedUtc = true;
    const row = fields.join('\u0000');
    if (row === this.lastRow) this.repeatedRows += 1;
    this.lastRow = row;
  }

  ignore(): void {
    this.ignoredRows += 1;
  }

  other(item: string): void {
    const rows = this.others.get(item);
    if (rows !== undefined || this.others.size < ITEMS_KEPT) this.others.set(item, (rows ?? 0) + 1);
  }

  private slotOf(minute: number): number | null {
    const { fromMinute, toMinute, slotMinutes } = this.slots;
    return minute < fromMinute || minute >= toMinute
      ? null
      : Math.floor((minute - fromMinute) / slotMinutes);
  }

  /** A whole ticket: drinks by group, at a minute of a day that was seen. */
  ticket(day: number, minute: number, byGroup: readonly number[]): void {
    const drinks = byGroup.reduce((sum, count) => sum + count, 0);
    const large = drinks > this.largestParty;
    if (large) this.tooLarge += 1;
    const party = drinks > 0 && !large;
    this.add(day, minute, 1, party ? 1 : 0, party ? byGroup : []);
    const size = Math.max(0, drinks);
    this.sizes[size] = (this.sizes[size] ?? 0) + 1;
    if (party && this.slotOf(minute) !== null) {
      const { sizes } = this.days.get(day)!;
      sizes[drinks] = (sizes[drinks] ?? 0) + 1;
    }
  }

  /** So many tickets, those with a drink among them and their drinks by group, at a minute of a day that was seen. */
  add(
    day: number,
    minute: number,
    tickets: number,
    parties: number,
    byGroup: readonly number[],
  ): void {
    const drinks = byGroup.reduce((sum, count) => sum + count, 0);
    this.tickets += tickets;
    this.parties += parties;
    this.drinks += drinks;
    const slot = this.slotOf(minute);
    if (slot === null) {
      this.outside += parties;
      return;
    }
    const counts = this.days.get(day)!;
    counts.tickets[slot]! += tickets;
    counts.parties[slot]! += parties;
    counts.drinks[slot]! += drinks;
    byGroup.forEach((count, group) => {
      counts.byGroup[group]! += count;
    });
  }

  tally(): Tally {
    return {
      form: this.form,
      rows: this.rows,
      skipped: [...this.skipped]
        .map(([reason, entry]) => ({ reason, ...entry }))
        .sort((one, other) => other.rows - one.rows),
      ignoredRows: this.ignoredRows,
      otherItems: [...this.others]
        .map(([item, rows]) => ({ item: shownText(item), rows }))
        .sort((one, other) => other.rows - one.rows)
        .slice(0, ITEMS_TOLD),
      repeatedRows: this.repeatedRows,
      tickets: this.tickets,
      parties: this.parties,
      drinks: this.drinks,
      sizes: this.form === 'tickets' ? Array.from(this.sizes, (tickets) => tickets ?? 0) : [],
      partiesOutsideHours: this.outside,
      tooLarge: this.tooLarge,
      dayReturns: Math.max(0, this.dayChanges - this.days.size),
      minutesMerged: this.byMoment && this.wholeMinutes,
      markedUtc: this.markedUtc,
      days: this.days,
    };
  }
}
