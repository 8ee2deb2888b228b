/** The sheet as boxes of the letter: the rows of the file, blank, or as a file that was handed over has them. */
import { AFTER, BEFORE, columnsOf, type PartId, type SheetFlaw } from '../../measuring/sheet.js';
import {
  flawsInto,
  printedColumns,
  tablesOf,
  type SheetRow,
  type SheetTables,
} from '../../measuring/sheet-rows.js';
import type { FillIn, FillInPart, FillInRow } from '../fill-in.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import type { SheetFacts } from './facts.js';
import { csvText, sheetProblems } from './given-sheets.js';
import { headLines, rowsOf } from './template.js';
import { partWords, say } from './words.js';
import { asCsv } from './workbook.js';

export const blankForm = (facts: SheetFacts): FillIn => ({
  head: headOf(facts, ''),
  parts: facts.parts.map((part) =>
    partOf(
      part,
      facts.sizes,
      rowsOf(part, facts).map((first) => rowOf(part, facts, [first])),
    ),
  ),
});

/** The boxes as a file fills them; its mistakes of form are named, those of its counts when it is read. */
export async function filledForm(file: GivenFile, facts: SheetFacts): Promise<Result<FillIn>> {
  const csv = await asCsv(file);
  if (!csv.ok) return csv;
  const flaws: SheetFlaw[] = [];
  const mornings: SheetTables[] = [];
  for (const one of csv.value) {
    const text = csvText(one);
    if (!text.ok) return text;
    mornings.push(...(tablesOf(text.value, flawsInto(flaws)) ?? []));
  }
  const [tables] = mornings;
  if (flaws.length === 0 && mornings.length > 1)
    flaws.push({
      row: 1,
      column: '',
      value: '',
      rule: `holds ${mornings.length} mornings`,
      remedy: 'put each into a file of its own, and read one after the other',
    });
  if (tables === undefined || flaws.length > 0)
    return { ok: false, problems: sheetProblems(flaws, file.name) };
  const { head, parts, sizes } = tables;
  const blank = blankForm(facts).parts.map((part) => ({ ...part, id: part.id as PartId }));
  const known = blank.map(({ id }) => id);
  const order = [...known, ...[...parts.keys()].filter((id) => !known.includes(id))];
  return {
    ok: true,
    value: {
      head: headOf(
        { ...facts, name: head.get('house')?.value || facts.name },
        head.get('date')?.value ?? '',
      ),
      parts: order.map((id) => {
        const rows = parts.get(id) ?? [];
        const from = rows.map((row) => rowOf(id, { ...facts, sizes }, cellsOf(id, sizes, row)));
        const empty = blank.find((one) => one.id === id)?.rows.slice(rows.length) ?? [];
        // Quarter hours are those of the file: one that is missing there is a mistake, not an empty row.
        return partOf(id, sizes, id === 'tally' && rows.length > 0 ? from : [...from, ...empty]);
      }),
    },
  };
}

const headOf = ({ name }: SheetFacts, date: string): FillIn['head'] =>
  headLines(name).map(([key, value]) => ({
    name: key,
    value: key === 'date' ? date : value,
    label: key === 'date' ? say.date : null,
  }));

const cellsOf = (part: PartId, sizes: number, { cells }: SheetRow): string[] =>
  columnsOf(part, sizes).map((name) => cells.get(name) ?? '');

function partOf(part: PartId, sizes: number, rows: readonly FillInRow[]): FillInPart {
  const { title, how } = partWords[part];
  return { id: part, title, how, columns: labelled(part, sizes), from: printedColumns(part), rows };
}

/** Columns of the file with their titles on paper; counts by party size stand under one title each. */
function labelled(part: PartId, sizes: number): FillInPart['columns'] {
  const titles = partWords[part].columns.flatMap((title, at) =>
    part === 'tally' && at >= 1 && at <= 3
      ? Array.from(
          { length: sizes },
          (_, size) => `${title} ${size + 1}${size + 1 === sizes ? '+' : ''}`,
        )
      : [title],
  );
  return columnsOf(part, sizes).map((name, at) => ({ name, label: titles[at]! }));
}

/** @param given cells from the first on; the rest are empty */
function rowOf(part: PartId, { ware, sizes }: SheetFacts, given: readonly string[]): FillInRow {
  const first = given[0] ?? '';
  const label =
    part === 'ware'
      ? (ware.find(({ id }) => id === first)?.name ?? null)
      : first === BEFORE
        ? say.before
        : first === AFTER
          ? say.after
          : part === 'tally' && given.length === 1
            ? first
            : null;
  // Those who sat there before are counted as in, those still there as out.
  const shut = (at: number): boolean =>
    (first === BEFORE && at > sizes) || (first === AFTER && (at <= sizes || at > 2 * sizes));
  return {
    label,
    cells: columnsOf(part, sizes).map((_, at) => (at > 0 && shut(at) ? null : (given[at] ?? ''))),
  };
}
