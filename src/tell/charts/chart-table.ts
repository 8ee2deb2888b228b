/** The data behind a chart as a table that anybody can read, and a chart with all that belongs to it. */
import type { Formats } from '../format.js';
import { titleOf, type ChartSpec } from './style.js';

export interface ChartColumn {
  readonly title: string;
  /** How its figures are written: a whole number, a number with a decimal, a share as %, minutes from opening as a clock time, or text. */
  readonly as: 'count' | 'decimal' | 'share' | 'clock' | 'text';
}

/** Raw figures, row by row in the order of columns; null: not known. */
export interface ChartTable {
  readonly caption: string;
  readonly columns: readonly ChartColumn[];
  readonly rows: readonly (readonly (number | string | null)[])[];
}

/** Figures of a table as people of the place write them; '–' where not known. */
export const tableText = (table: ChartTable, formats: Formats): string[][] =>
  table.rows.map((row) =>
    table.columns.map(({ as }, i) => {
      const value = row[i] ?? null;
      if (value === null) return '–';
      if (typeof value === 'string') return value;
      if (as === 'share') return formats.percent(value);
      if (as === 'clock') return formats.clock(value);
      return as === 'decimal' ? formats.decimal(value) : formats.count(value);
    }),
  );

export interface Chart {
  /** A word for file names and anchors. */
  readonly id: string;
  readonly title: string;
  /** What it shows, in words. */
  readonly words: string;
  readonly spec: ChartSpec;
  readonly table: ChartTable;
  /** The same picture of the whole range, shown in place of this one when its box is ticked. */
  readonly whole?: { readonly spec: ChartSpec; readonly label: string };
  /** The same picture for a phone, where it is too wide for its letters to be read. */
  readonly narrow?: ChartSpec;
}

/** A chart with its title and words taken from its specification. */
export const chart = (id: string, spec: ChartSpec, table: ChartTable): Chart => ({
  id,
  title: titleOf(spec),
  words: typeof spec.description === 'string' ? spec.description : '',
  spec,
  table,
});
