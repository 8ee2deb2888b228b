/** The rows of a sheet's file by part: what is a table of which part, and cells read as what they hold. */
import { csvRows } from '../quantities/csv-rows.js';
import { didYouMean } from '../quantities/nearest.js';
import { columnsOf, MOST_SIZES, PARTS, type PartId, type SheetFlaw } from './sheet.js';

export interface SheetRow {
  readonly row: number;
  readonly cells: ReadonlyMap<string, string>;
}

export interface SheetTables {
  readonly head: ReadonlyMap<string, { readonly row: number; readonly value: string }>;
  readonly parts: ReadonlyMap<PartId, readonly SheetRow[]>;
  readonly sizes: number;
}

export type Tell = (
  row: number,
  column: string,
  value: string,
  rule: string,
  remedy: string,
) => void;

/** Lines before the first part. */
const HEAD = ['sheet', 'house', 'date'];

/**
 * The sheets of a file, a morning each: another one begins where lines of a head follow a part.
 * @returns null where the file is no table at all; what is wrong goes to `tell`
 */
export function tablesOf(text: string, tell: Tell): SheetTables[] | null {
  const read = csvRows(text, separatorOf(text));
  if (!read.ok) {
    const { line, rule, remedy } = read.problem;
    tell(line, '', '', rule, remedy);
    return null;
  }
  const mornings: Mutable[] = [emptyTables()];
  let part: PartId | null = null;
  let columns: readonly string[] | null = null;
  let unknown = false;
  for (const { cells: record, line } of read.value) {
    const first = (record[0] ?? '').toLowerCase();
    if (record.every((cell) => cell === '')) continue;
    if (part !== null && HEAD.includes(first)) {
      mornings.push(emptyTables());
      [part, columns, unknown] = [null, null, false];
    }
    const { head, parts } = mornings.at(-1)!;
    const alone = record.slice(1).every((cell) => cell === '');
    const named = PARTS.find((id) => id === first);
    if (alone && named !== undefined) {
      if (parts.has(named))
        tell(line, '', first, 'is there twice', 'put its rows under one heading');
      [part, columns, unknown] = [named, null, false];
      parts.set(named, parts.get(named) ?? []);
    } else if (part === null && !unknown) {
      if (HEAD.includes(first)) head.set(first, { row: line, value: record[1] ?? '' });
      else if (alone) {
        tell(line, '', record[0]!, 'is not a part of the sheet', didYouMean(first, PARTS));
        unknown = true;
      } else
        tell(
          line,
          '',
          record[0]!,
          'stands before the first part',
          `begin with ${HEAD.join(', ')}, then the parts`,
        );
    } else if (part !== null && columns === null) {
      columns = record.map((cell) => cell.toLowerCase());
      if (part === 'tally')
        mornings.at(-1)!.sizes = Math.max(
          1,
          columns.filter((one) => /^out \d+\+?$/.test(one)).length,
        );
      checkColumns(part, columns, mornings.at(-1)!.sizes, line, tell);
    } else if (part !== null) {
      const cells = new Map(columns!.map((name, at) => [name, record[at] ?? '']));
      if (record.slice(columns!.length).some((cell) => cell !== ''))
        tell(
          line,
          part,
          record.join(','),
          'has more cells than the heading of its part',
          'put text that has a comma in quotes',
        );
      if (isFilled(part, record)) parts.get(part)!.push({ row: line, cells });
    }
  }
  return mornings;
}

interface Mutable extends SheetTables {
  readonly head: Map<string, { row: number; value: string }>;
  readonly parts: Map<PartId, SheetRow[]>;
  sizes: number;
}
const emptyTables = (): Mutable => ({ head: new Map(), parts: new Map(), sizes: MOST_SIZES });

/** Columns that stand on the sheet as it is printed. */
export const printedColumns = (part: PartId): number =>
  part === 'tally' || part === 'loads' || part === 'ware' ? 1 : 0;

/** A row of which nothing was filled in is left out; a machine's number and a ware's name are printed. */
function isFilled(part: PartId, record: readonly string[]): boolean {
  return part === 'tally' || record.slice(printedColumns(part)).some((cell) => cell !== '');
}

function checkColumns(
  part: PartId,
  columns: readonly string[],
  sizes: number,
  row: number,
  tell: Tell,
): void {
  if (columns.every((name) => !columnsOf(part, MOST_SIZES).includes(name))) {
    const wanted = columnsOf(part, MOST_SIZES).join(', ');
    tell(row, part, columns[0] ?? '', 'stands where the headings should', `write ${wanted} above`);
    return;
  }
  const wanted = columnsOf(part, sizes);
  for (const name of wanted.filter((one) => !columns.includes(one)))
    tell(row, part, name, 'is missing from the headings', `write ${wanted.join(', ')}`);
  columns.forEach((name, at) => {
    if (name === '') return;
    if (!wanted.includes(name))
      tell(row, part, name, `is not a column of ${part}`, didYouMean(name, wanted));
    else if (columns.indexOf(name) !== at)
      tell(row, part, name, 'is there twice', 'keep one of them');
  });
}

/** Cells are parted by semicolons where decimals have commas. */
function separatorOf(text: string): string {
  const line = text.slice(0, 4000);
  const count = (sign: string): number => line.split(sign).length;
  return [',', ';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

/** Reads the cells of one row; what does not fit is told, and read as null. */
export class Cells {
  constructor(
    private readonly from: SheetRow,
    private readonly tell: Tell,
  ) {}

  text(column: string): string {
    return this.from.cells.get(column) ?? '';
  }

  wrong(column: string, rule: string, remedy: string): null {
    this.tell(this.from.row, column, this.text(column), rule, remedy);
    return null;
  }

  /** A whole number; null where the cell is empty. */
  whole(column: string, most: number, least = 0): number | null {
    const text = this.text(column);
    if (text === '') return null;
    if (/^[-−–]\s?\d/.test(text)) return this.wrong(column, 'is negative', 'write 0 or more');
    // A spreadsheet may write 3 as 3.0 or 3,00.
    if (!/^\d{1,7}([.,]0{1,2})?$/.test(text))
      return this.wrong(column, 'is not a whole number', 'write how many, such as 3');
    const value = Number(text.replace(',', '.'));
    if (value < least) return this.wrong(column, `is below ${least}`, `write ${least} or more`);
    return value <= most
      ? value
      : this.wrong(
          column,
          `is more than ${most.toLocaleString('en')}`,
          'check it for a slip of the pen',
        );
  }

  /** A number above 0 with or without decimals. */
  measure(column: string, most: number): number | null {
    const typed = this.text(column);
    if (typed === '') return null;
    if (/^\d{1,3},\d{3}$/.test(typed))
      return this.wrong(
        column,
        'may have a decimal comma or a comma between thousands',
        `write ${typed.replace(',', '')} or ${typed.replace(',', '.')}`,
      );
    const text = typed.replace(',', '.').replace(/^[−–]/, '-');
    const value = /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : NaN;
    if (Number.isNaN(value))
      return this.wrong(column, 'is not a number', 'write a number alone, such as 212');
    if (value <= 0)
      return this.wrong(column, value < 0 ? 'is negative' : 'is 0', 'write a number above 0');
    return value <= most
      ? value
      : this.wrong(column, `is more than ${most}`, 'check it for a slip of the pen');
  }

  /** A time of day, minutes from midnight. */
  clock(column: string): number | null {
    const text = this.text(column);
    if (text === '') return null;
    return minuteOf(text) ?? this.wrong(column, 'is not a time of day', 'write it as 08:05');
  }

  /** Tells of an empty cell that the row needs. */
  needed<T>(column: string, value: T | null): T | null {
    if (value === null && this.text(column) === '')
      this.wrong(
        column,
        'is empty in a row that is filled in',
        'fill it in, or empty the whole row',
      );
    return value;
  }
}

/** `8:05`, `08.05`, `8h05`, `08:05:00`; with am or pm also `7am`. */
function minuteOf(text: string): number | null {
  const match =
    /^(\d{1,2})[:.h](\d{2})(?:[:.]\d{2})?$/i.exec(text) ??
    /^(\d{1,2})(?:[:.](\d{2})(?:[:.]\d{2})?)?\s*([ap])\.?m\.?$/i.exec(text);
  if (match === null) return null;
  const [, hours = '', minutes = '0', half] = match;
  const hour = Number(hours);
  if (Number(minutes) > 59 || hour > 23) return null;
  if (half === undefined) return hour * 60 + Number(minutes);
  if (hour < 1 || hour > 12) return null;
  return ((hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0)) * 60 + Number(minutes);
}

export const flawsInto =
  (flaws: SheetFlaw[]): Tell =>
  (row, column, value, rule, remedy) =>
    void flaws.push({ row, column, value, rule, remedy });
