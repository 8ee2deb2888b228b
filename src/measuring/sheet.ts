/** The sheet of a morning: its parts and their columns, for print, spreadsheet and reading alike, and what stands on it. */

export const SLOT_MINUTES = 15;
/** Party sizes that have a column each; the last stands for all larger ones. */
export const MOST_SIZES = 4;

export type PartId = 'tally' | 'stays' | 'rounds' | 'loads' | 'dirty' | 'ware';

/** Heads of the rows that stand before and after the quarter hours of the tally. */
export const BEFORE = 'before';
export const AFTER = 'after';

/** Titles of the columns of a part. @param sizes columns by party size */
export function columnsOf(part: PartId, sizes: number): string[] {
  const by = (word: string): string[] =>
    Array.from({ length: sizes }, (_, at) => `${word} ${at + 1}${at + 1 === sizes ? '+' : ''}`);
  switch (part) {
    case 'tally':
      return [
        'from',
        ...by('in'),
        ...by('out'),
        ...by('away'),
        'first drinks',
        'second drinks',
        'seats taken',
      ];
    case 'stays':
      return ['guests', 'served', 'left'];
    case 'rounds':
      return ['began', 'first trip, s', 'pieces of first trip'];
    case 'loads':
      return [
        'machine',
        'first piece waiting',
        'started',
        'loading, s',
        'cycle, s',
        'unloading, s',
        'pieces',
        'full at',
      ];
    case 'dirty':
      return ['at', 'on tables', 'waiting to be washed'];
    case 'ware':
      return ['ware', 'brim, ml', 'rim, mm'];
  }
}

export const PARTS: readonly PartId[] = ['tally', 'stays', 'rounds', 'loads', 'dirty', 'ware'];

/** Rows to fill, of the parts that have a fixed number. */
export const ROWS = { stays: 12, rounds: 16, loads: 12, dirty: 3 } as const;

interface AtRow {
  /** Line of the file, from 1. */
  readonly row: number;
}

/** A filled sheet of one morning; its row is that of its day. Minutes are from midnight; null: not filled in. */
export interface Sheet extends AtRow {
  readonly date: string;
  readonly sizes: number;
  /** Parties by size at the start and at the end. */
  readonly before: readonly number[];
  readonly after: readonly number[] | null;
  readonly tally: readonly (AtRow & {
    readonly minute: number;
    readonly came: readonly number[];
    readonly went: readonly number[];
    readonly away: readonly number[];
    /** Drinks of the first round for those who came in, and later ones. */
    readonly drinks: number | null;
    readonly seconds: number | null;
    readonly seats: number | null;
  })[];
  readonly stays: readonly (AtRow & {
    readonly guests: number;
    readonly served: number;
    readonly left: number;
  })[];
  readonly rounds: readonly (AtRow & {
    readonly minute: number;
    readonly tripSeconds: number | null;
    readonly pieces: number | null;
  })[];
  readonly loads: readonly (AtRow & {
    /** From 1. */
    readonly machine: number;
    readonly first: number | null;
    readonly started: number | null;
    readonly loadingSeconds: number | null;
    readonly cycleSeconds: number | null;
    readonly unloadingSeconds: number | null;
    readonly pieces: number | null;
    readonly full: number | null;
  })[];
  readonly dirty: readonly (AtRow & {
    readonly minute: number;
    readonly tables: number;
    readonly bench: number;
  })[];
  readonly ware: readonly (AtRow & {
    readonly id: string;
    readonly brim: number | null;
    readonly rim: number | null;
  })[];
}

/** What is wrong with a sheet, at a row and a column of its file. */
export interface SheetFlaw extends AtRow {
  readonly column: string;
  readonly value: string;
  readonly rule: string;
  readonly remedy: string;
}

export const clockText = (minute: number): string =>
  `${String(Math.floor(minute / 60) % 24).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
