/**
 * A table for the letter's reader to fill in: boxes by part and row. What is typed becomes the CSV file that the question
 * reads, so that a form and a file are read by the same code and a mistake has the line of its row.
 */
import { safeCell } from '../tell/charts/picture-files.js';

export interface FillIn {
  /** Lines before the first part. */
  readonly head: readonly FillInLine[];
  readonly parts: readonly FillInPart[];
}

export interface FillInLine {
  readonly name: string;
  readonly value: string;
  /** Label of its box, which takes a day; null: it goes along as it is. */
  readonly label: string | null;
}

export interface FillInPart {
  readonly id: string;
  readonly title: string;
  /** How it is filled in. */
  readonly how: string;
  readonly columns: readonly { readonly name: string; readonly label: string }[];
  /** Columns before this one are printed: a row is filled in where something stands from here on. */
  readonly from: number;
  readonly rows: readonly FillInRow[];
}

export interface FillInRow {
  /** Stands in place of the first box; null: somebody types it. */
  readonly label: string | null;
  /** What the boxes hold; null: there is no box. */
  readonly cells: readonly (string | null)[];
}

/** What was typed, by key of its box. */
export type Typed = Readonly<Record<string, string>>;

export const headKey = (name: string): string => `head/${name}`;
export const cellKey = (part: string, row: number, column: number): string =>
  `${part}/${row}/${column}`;

export const cellText = (part: FillInPart, row: number, column: number, typed: Typed): string =>
  typed[cellKey(part.id, row, column)] ?? part.rows[row]?.cells[column] ?? '';

/** Rows that a part has once some were added. */
export const rowsOf = (part: FillInPart, more: number): FillInRow[] => [
  ...part.rows,
  ...Array.from({ length: more }, () => ({ label: null, cells: part.columns.map(() => '') })),
];

export interface FilledFile {
  readonly text: string;
  /** By line of the text, from 1: the part and row that stand there, or the line of the head. */
  readonly places: ReadonlyMap<
    number,
    { readonly part: string; readonly row: number } | { readonly head: string }
  >;
  /** Parts in which something was typed. */
  readonly filled: number;
}

/**
 * The file of what was typed (CSV, RFC 4180).
 * @param more rows added, by part
 * @param whole parts in which nothing was typed go along too, to be filled in elsewhere
 */
export function filledFile(
  form: FillIn,
  typed: Typed,
  more: Readonly<Record<string, number>>,
  whole = false,
): FilledFile {
  const lines: string[][] = [];
  const places = new Map<number, { part: string; row: number } | { head: string }>();
  let filled = 0;
  for (const { name, value } of form.head) {
    lines.push([name, typed[headKey(name)] ?? value]);
    places.set(lines.length, { head: name });
  }
  for (const part of form.parts) {
    const rows = rowsOf(part, more[part.id] ?? 0);
    const cells = rows.map(({ cells: given }, row) =>
      given.map((_, column) => cellText(part, row, column, typed)),
    );
    const isFilled = cells.some((line) => line.slice(part.from).some((text) => text !== ''));
    if (isFilled) filled += 1;
    else if (!whole) continue;
    lines.push(
      [],
      [part.id],
      part.columns.map(({ name }) => name),
    );
    cells.forEach((line, row) => {
      lines.push(line);
      places.set(lines.length, { part: part.id, row });
    });
  }
  const text = lines.map((line) => `${line.map(safeCell).join(',')}\r\n`).join('');
  return { text, places, filled };
}
