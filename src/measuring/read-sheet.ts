/** A filled sheet from the text of its file, or everything that is wrong with it. */
import { checkTally, type Tallied } from './check-tally.js';
import { didYouMean } from '../quantities/nearest.js';
import {
  Cells,
  flawsInto,
  tablesOf,
  type SheetRow,
  type SheetTables,
  type Tell,
} from './sheet-rows.js';
import {
  AFTER,
  BEFORE,
  clockText,
  columnsOf,
  type PartId,
  type Sheet,
  type SheetFlaw,
} from './sheet.js';

/** What of the house a sheet is held against. */
export interface SheetHouse {
  readonly name: string;
  /** Minutes from midnight. */
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly machines: number;
  readonly ware: readonly string[];
  /** No later day can have been measured, `YYYY-MM-DD`. */
  readonly today: string;
}

export type SheetResult =
  | { readonly ok: true; readonly value: readonly Sheet[] }
  | { readonly ok: false; readonly flaws: readonly SheetFlaw[] };

const MOST_PARTIES = 500;
const MOST_PIECES = 2000;
/** The sheets of a file: one morning, or several beneath each other. */
export function readSheets(text: string, house: SheetHouse): SheetResult {
  const flaws: SheetFlaw[] = [];
  const tell = flawsInto(flaws);
  const mornings = tablesOf(text, tell) ?? [];
  const sheets = mornings.map((tables) => sheetOf(tables, house, tell));
  if (flaws.length === 0 && mornings.every(({ parts }) => parts.size === 0))
    tell(1, '', '', 'has no part of a sheet', 'fill in the sheet that measure writes with --out');
  return flaws.length > 0
    ? { ok: false, flaws: flaws.toSorted((a, b) => a.row - b.row) }
    : { ok: true, value: sheets };
}

function sheetOf(tables: SheetTables, house: SheetHouse, tell: Tell): Sheet {
  checkHead(tables, house, tell);
  const rowsOf = (part: PartId): readonly SheetRow[] => tables.parts.get(part) ?? [];
  const tally = tallyOf(rowsOf('tally'), tables.sizes, house, tell);
  const rows = <T>(part: PartId, read: (cells: Cells) => T | null): (T & { row: number })[] =>
    rowsOf(part).flatMap((from) => {
      const found = read(new Cells(from, tell));
      return found === null ? [] : [{ ...found, row: from.row }];
    });
  const date = tables.head.get('date');
  const sheet: Sheet = {
    date: dayOf(date?.value) ?? '',
    row: date?.row ?? 1,
    sizes: tables.sizes,
    ...tally,
    stays: rows('stays', stayOf),
    rounds: rows('rounds', (cells) => {
      const minute = cells.needed('began', cells.clock('began'));
      const tripSeconds = cells.whole('first trip, s', 3600, 1);
      const pieces = cells.whole('pieces of first trip', MOST_PIECES, 1);
      return minute === null ? null : { minute, tripSeconds, pieces };
    }),
    loads: rows('loads', (cells) => loadOf(cells, house)),
    dirty: rows('dirty', (cells) => {
      const minute = cells.needed('at', cells.clock('at'));
      const tables = cells.needed('on tables', cells.whole('on tables', MOST_PIECES));
      const bench = cells.needed(
        'waiting to be washed',
        cells.whole('waiting to be washed', MOST_PIECES),
      );
      return minute === null || tables === null || bench === null
        ? null
        : { minute, tables, bench };
    }),
    ware: rows('ware', (cells) => wareOf(cells, house)),
  };
  const { rounds } = sheet;
  rounds.forEach(({ minute, row }, at) => {
    if (at > 0 && minute < rounds[at - 1]!.minute)
      tell(
        row,
        'began',
        clockText(minute),
        'is before the round above it',
        'write rounds in the order in which they began',
      );
  });
  return sheet;
}

function checkHead({ head }: SheetTables, { name, today }: SheetHouse, tell: Tell): void {
  const house = head.get('house');
  if (house !== undefined && house.value.trim() !== '' && house.value.trim() !== name.trim())
    tell(
      house.row,
      'house',
      house.value,
      `is another house than ${name}`,
      'give the scenario of this sheet',
    );
  const date = head.get('date');
  const day = dayOf(date?.value);
  if (day === null)
    tell(
      date?.row ?? 1,
      'date',
      date?.value ?? '',
      'is not a day',
      'write the day of the morning as 2027-03-31',
    );
  else if (day > today)
    tell(date!.row, 'date', day, `is after today, ${today}`, 'write the day on which you counted');
}

const MS_A_DAY = 86_400_000;
/** Day 0 of spreadsheets. */
const SPREADSHEET_ZERO = Date.UTC(1899, 11, 30);

/** `2027-03-31`, or the number by which a spreadsheet counts it. */
function dayOf(text = ''): string | null {
  const time = /^[3-6]\d{4}$/.test(text)
    ? SPREADSHEET_ZERO + Number(text) * MS_A_DAY
    : Date.parse(`${text}T00:00:00Z`);
  if (Number.isNaN(time)) return null;
  const day = new Date(time).toISOString().slice(0, 10);
  return day === text || !text.includes('-') ? day : null;
}

function tallyOf(rows: readonly SheetRow[], sizes: number, house: SheetHouse, tell: Tell): Tallied {
  const names = columnsOf('tally', sizes).slice(1, 1 + 3 * sizes);
  const none = Array.from({ length: sizes }, () => 0);
  let before: readonly number[] = none;
  let after: readonly number[] | null = null;
  const tally: Sheet['tally'][number][] = [];
  /** Rows up to the last that somebody wrote in. */
  let counted = 0;
  for (const from of rows) {
    const cells = new Cells(from, tell);
    const head = cells.text('from').toLowerCase();
    const counts = (at: number): number[] =>
      names.slice(at * sizes, (at + 1) * sizes).map((name) => cells.whole(name, MOST_PARTIES) ?? 0);
    if (head === BEFORE) before = counts(0);
    else if (head === AFTER) {
      const filled = names.slice(sizes, 2 * sizes).some((name) => cells.text(name) !== '');
      const left = counts(1);
      if (filled) after = left;
    } else {
      const seats = cells.whole('seats taken', 10_000);
      const drinks = cells.whole('first drinks', MOST_PIECES);
      const seconds = cells.whole('second drinks', MOST_PIECES);
      const minute = cells.needed('from', cells.clock('from'));
      const filled = [...names, 'seats taken'].some((name) => cells.text(name) !== '');
      const [came, went, away] = [counts(0), counts(1), counts(2)];
      // Rows after closing that nobody needed are left out, not zero.
      if (minute !== null && (filled || minute < house.toMinute)) {
        tally.push({ row: from.row, minute, came, went, away, drinks, seconds, seats });
        if (filled) counted = tally.length;
      }
    }
  }
  // Where the count ends before the house closes, the rest of the rows is not known, rather than zero.
  if (counted > 0) tally.length = counted;
  checkTally({ before, after, tally }, names.slice(sizes, 2 * sizes), house, tell);
  return { before, after, tally };
}

function stayOf(cells: Cells): Omit<Sheet['stays'][number], 'row'> | null {
  const guests = cells.needed('guests', cells.whole('guests', 99, 1));
  const served = cells.needed('served', cells.clock('served'));
  const left = cells.needed('left', cells.clock('left'));
  if (served !== null && left !== null && left < served)
    return cells.wrong(
      'left',
      `is before ${clockText(served)}, when they were served`,
      'check both times',
    );
  return guests === null || served === null || left === null ? null : { guests, served, left };
}

function loadOf(
  cells: Cells,
  { machines }: SheetHouse,
): Omit<Sheet['loads'][number], 'row'> | null {
  const machine = cells.whole('machine', machines, 1) ?? 1;
  const first = cells.clock('first piece waiting');
  const started = cells.clock('started');
  const loadingSeconds = cells.whole('loading, s', 3600, 1);
  const cycleSeconds = cells.whole('cycle, s', 3600, 1);
  const unloadingSeconds = cells.whole('unloading, s', 3600, 1);
  const pieces = cells.whole('pieces', MOST_PIECES);
  const full = cells.whole('full at', MOST_PIECES, 1);
  if (first !== null && started !== null && started < first)
    return cells.wrong(
      'started',
      `is before ${clockText(first)}, when its first piece came`,
      'check both times',
    );
  if (pieces !== null && full !== null && pieces > full)
    return cells.wrong(
      'pieces',
      `is more than the ${full} that fill the rack`,
      'check both numbers',
    );
  return { machine, first, started, loadingSeconds, cycleSeconds, unloadingSeconds, pieces, full };
}

function wareOf(cells: Cells, { ware }: SheetHouse): Omit<Sheet['ware'][number], 'row'> | null {
  const id = cells.text('ware');
  if (!ware.includes(id))
    return cells.wrong('ware', 'is not an item of this house', didYouMean(id, ware));
  return { id, brim: cells.measure('brim, ml', 5000), rim: cells.measure('rim, mm', 600) };
}
