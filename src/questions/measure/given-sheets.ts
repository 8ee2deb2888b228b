/** Filled sheets from the files that were handed over: a morning each, or everything that is wrong with them. */
import { readSheets } from '../../measuring/read-sheet.js';
import type { Sheet, SheetFlaw } from '../../measuring/sheet.js';
import { inOrder, problem, type Problem } from '../../scenario/problems.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import type { SheetFacts } from './facts.js';
import { asCsv } from './workbook.js';

/** All mornings, in the order of their days; each day once, and with the same columns of party sizes. */
export async function givenSheets(
  files: readonly GivenFile[],
  facts: SheetFacts,
  today: string,
): Promise<Result<readonly Sheet[]>> {
  const problems: Problem[] = [];
  const read: { file: string; sheet: Sheet }[] = [];
  for (const file of files) {
    const tables = await asCsv(file);
    if (!tables.ok) problems.push(...tables.problems);
    for (const table of tables.ok ? tables.value : []) {
      const found = sheetsOf(table, facts, today);
      if (found.ok) read.push(...found.value.map((sheet) => ({ file: table.name, sheet })));
      else problems.push(...found.problems);
    }
  }
  read.forEach(({ file, sheet: { date, row, sizes } }, at) => {
    const first = read.findIndex((one) => one.sheet.date === date);
    const tell = (column: string, value: unknown, rule: string, remedy: string): void =>
      void problems.push(
        problem({ path: [column], value, rule, remedy }, file, { line: row, column: 0 }),
      );
    if (first < at)
      tell(
        'date',
        date,
        `is the day of another sheet too (${read[first]!.file})`,
        'give each morning once, with all its parts in one sheet',
      );
    if (sizes !== read[0]!.sheet.sizes)
      tell(
        'tally',
        `${sizes} sizes`,
        `are not the ${read[0]!.sheet.sizes} party sizes of the first sheet`,
        'count both mornings on sheets with the same columns',
      );
  });
  return problems.length > 0
    ? { ok: false, problems }
    : {
        ok: true,
        value: read.map(({ sheet }) => sheet).toSorted((a, b) => (a.date < b.date ? -1 : 1)),
      };
}

/** The sheets of one file, a morning each. */
export function sheetsOf(
  file: GivenFile,
  facts: SheetFacts,
  today: string,
): Result<readonly Sheet[]> {
  const text = csvText(file);
  if (!text.ok) return text;
  const read = readSheets(text.value, {
    ...facts,
    ware: facts.ware.map(({ id }) => id),
    today,
  });
  return read.ok ? read : { ok: false, problems: sheetProblems(read.flaws, file.name) };
}

/** The text of a CSV file. */
export function csvText({ name, bytes }: GivenFile): Result<string> {
  try {
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    const flaw = {
      row: 1,
      column: '',
      value: '',
      rule: 'is not text in UTF-8',
      remedy: 'save the sheet as XLSX, or as CSV in UTF-8',
    };
    return { ok: false, problems: sheetProblems([flaw], name) };
  }
}

/** Flaws at their rows and columns of the file. */
export const sheetProblems = (flaws: readonly SheetFlaw[], fileName: string): Problem[] =>
  inOrder(
    flaws.map(({ row, column, value, rule, remedy }) =>
      problem({ path: column === '' ? [] : [column], value, rule, remedy }, fileName, {
        line: row,
        column: 0,
      }),
    ),
  );
