/** Filled sheets from the files that were handed over: a morning each, or everything that is wrong with them. */
import { readSheets } from '../../measuring/read-sheet.js';
import type { Sheet } from '../../measuring/sheet.js';
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
  const at = (row: number, column: string, value: string, rule: string, remedy: string): Problem =>
    problem({ path: column === '' ? [] : [column], value, rule, remedy }, file.name, {
      line: row,
      column: 0,
    });
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(file.bytes);
  } catch {
    return {
      ok: false,
      problems: [
        at(1, '', '', 'is not text in UTF-8', 'save the sheet as XLSX, or as CSV in UTF-8'),
      ],
    };
  }
  const read = readSheets(text, {
    ...facts,
    ware: facts.ware.map(({ id }) => id),
    today,
  });
  return read.ok
    ? read
    : {
        ok: false,
        problems: inOrder(
          read.flaws.map(({ row, column, value, rule, remedy }) =>
            at(row, column, value, rule, remedy),
          ),
        ),
      };
}
