/** Reads the table of sites: what is wrong with its form, all at once. What cells mean is checked site by site (`site.ts`). */
import { csvRows, type CsvRow } from '../../quantities/csv-rows.js';
import { isWorkbook, workbookRows, type WorkbookCell } from '../../quantities/read-workbook.js';
import { isDate } from '../../ordering/dates.js';
import { dotted, type Path } from '../../scenario/path.js';
import type { Problem } from '../../scenario/problems.js';
import { parsePath, tidy } from '../../scenario/raw-paths.js';
import type { Opened } from '../question.js';
import type { Result } from '../result.js';
import { cellProblem, misfit } from './cell.js';
import { ABOUT, pathEdit, SHORT, type About, type BaseFigures, type Edited } from './columns.js';
import { pathMisfit } from './path-misfit.js';

const MOST_SITES = 10_000;
const MOST_BYTES = 20_000_000;
/** Ids name files and parts of a study. */
const ID = /^[\p{L}\p{N}][\p{L}\p{N}._-]{0,63}$/u;

/** A column that changes the scenario. */
export interface EditColumn {
  readonly name: string;
  /** Where its value stands: problems there belong to this column. */
  readonly path: Path;
  readonly edit: (tree: unknown, cell: string, base: BaseFigures) => Edited;
}

export interface TillFiles {
  readonly file: string;
  readonly map: string;
}

/** A row of the table: its cells by name of the column, empty ones left out. */
export interface SiteLine {
  readonly id: string;
  readonly name: string;
  /** Where its ware is delivered; '' : with all others. */
  readonly drop: string;
  /** Day of opening, `YYYY-MM-DD`; null: not given. */
  readonly opening: string | null;
  /** Export of its till and the map of its columns, as paths from the table; null: it has none. */
  readonly till: TillFiles | null;
  /** Line of the file, from 1. */
  readonly line: number;
  readonly cells: ReadonlyMap<string, string>;
}

export interface SiteTable {
  readonly file: string;
  readonly columns: readonly EditColumn[];
  readonly lines: readonly SiteLine[];
}

const whole = (file: string, rule: string, remedy: string, line = 1): Result<never> => ({
  ok: false,
  problems: [cellProblem(file, line, '', undefined, misfit(rule, remedy))],
});

/** A table in CSV, or in the first sheet of a workbook. @param file names the table in problems */
export async function openTable(
  bytes: Uint8Array,
  file: string,
  base: Opened,
): Promise<Result<SiteTable>> {
  if (!isWorkbook(bytes)) return readTable(bytes, file, base);
  const rows = await workbookRows(bytes);
  if (!rows.ok) return whole(file, rows.problems[0]!.rule, rows.problems[0]!.remedy);
  const names = (rows.value[0] ?? []).map((cell) => known(String(cell ?? '').trim()));
  const records = rows.value.map((cells, at) => ({
    cells: cells.map((cell, column) =>
      (at === 0 ? String(cell ?? '') : cellText(cell, names[column])).trim(),
    ),
    line: at + 1,
  }));
  return tableOf(records, file, base);
}

/** As a person would write it: a sheet keeps 40 % as 0.4. */
function cellText(cell: WorkbookCell, column: string | undefined): string {
  if (typeof cell !== 'number') return String(cell ?? '');
  return (column === 'stay' || column === 'takeaway') && cell >= 0 && cell <= 1
    ? `${tidy(100 * cell)} %`
    : String(tidy(cell));
}

/** A table in CSV. @param file names the table in problems */
export function readTable(bytes: Uint8Array, file: string, base: Opened): Result<SiteTable> {
  if (bytes.length > MOST_BYTES)
    return whole(file, 'is larger than 20 MB', 'leave out columns that no site needs');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return whole(file, 'is not text in UTF-8', 'save the table as CSV in UTF-8, or as XLSX');
  }
  const rows = csvRows(text);
  if (rows.ok) return tableOf(rows.value, file, base);
  const { line, rule, remedy } = rows.problem;
  return whole(file, rule, remedy, line);
}

function tableOf(given: readonly CsvRow[], file: string, base: Opened): Result<SiteTable> {
  // What a spreadsheet leaves below the last row is no row.
  const records = [...given];
  while (records.length > 0 && records.at(-1)!.cells.every((cell) => cell === '')) records.pop();
  const [head, ...rows] = records;
  if (head === undefined)
    return whole(file, 'is empty', 'write a row of names and a row for each site');
  const problems: Problem[] = [];
  const names = head.cells.map((name) => known(name));
  const columns = columnsOf(names, head.line, file, base, problems);
  if (rows.length === 0)
    problems.push(
      cellProblem(
        file,
        head.line,
        '',
        undefined,
        misfit('has no sites below', 'write a row for each site'),
      ),
    );
  if (rows.length > MOST_SITES)
    problems.push(
      cellProblem(
        file,
        rows[MOST_SITES]!.line,
        '',
        undefined,
        misfit(
          `is site ${(MOST_SITES + 1).toLocaleString('en')}, more than one table may have`,
          'split the table',
        ),
      ),
    );
  const lines = linesOf(rows.slice(0, MOST_SITES), names, file, problems);
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, value: { file, columns, lines } };
}

/** Short names may be written with capitals; paths are as they are. */
const known = (name: string): string => {
  const lower = name.toLowerCase();
  return isAbout(lower) || SHORT.some((one) => one.name === lower) ? lower : name;
};
const isAbout = (name: string): name is About => (ABOUT as readonly string[]).includes(name);

/** The columns that change something: short names first, so that a path can refine what one of them set. */
function columnsOf(
  names: readonly string[],
  line: number,
  file: string,
  base: Opened,
  problems: Problem[],
): EditColumn[] {
  const wrong = (name: string, rule: string, remedy: string): void =>
    void problems.push(cellProblem(file, line, '', name, misfit(rule, remedy)));
  const [short, paths]: [EditColumn[], EditColumn[]] = [[], []];
  if (!names.includes('id'))
    wrong(names.join(', '), 'has no column "id"', 'give each site an id of its own');
  names.forEach((name, at) => {
    if (names.indexOf(name) !== at) wrong(name, 'is given twice', 'keep one of the columns');
    else if (name === '') wrong(name, `is the name of column ${at + 1}`, 'name it or remove it');
    else if (!isAbout(name)) {
      const found = SHORT.find((one) => one.name === name);
      const path = found?.path ?? parsePath(name);
      const why = found !== undefined ? null : pathMisfit(path, name, base);
      if (why !== null) wrong(name, why.rule, why.remedy);
      else if (found !== undefined) short.push(found);
      else
        paths.push({
          name: dotted(path!),
          path: path!,
          edit: (tree, cell) => pathEdit(tree, cell, path!),
        });
    }
  });
  if (names.includes('stay') && names.includes('takeaway'))
    wrong('takeaway', 'says the same as the column stay', 'keep one of them');
  return [...short, ...paths];
}

function linesOf(
  rows: readonly { readonly cells: readonly string[]; readonly line: number }[],
  names: readonly string[],
  file: string,
  problems: Problem[],
): SiteLine[] {
  const lineOfId = new Map<string, number>();
  return rows.map(({ cells, line }) => {
    const wrong = (column: string, value: unknown, rule: string, remedy: string): void =>
      void problems.push(cellProblem(file, line, column, value, misfit(rule, remedy)));
    const cell = (name: string): string => cells[names.indexOf(name)] ?? '';
    const [id, drop, opening] = [cell('id'), cell('drop'), cell('opening')];
    // Files named after ids must differ where capitals do not count.
    const before = lineOfId.get(id.toLowerCase());
    if (cells.every((one) => one === ''))
      wrong('', undefined, 'is an empty row', 'remove it, or write the site');
    else if (cells.length > names.length)
      wrong(
        '',
        cells.slice(names.length).join(', '),
        'is beyond the last column',
        'put text with a comma in quotes',
      );
    else if (!ID.test(id))
      wrong(
        'id',
        id,
        'is not an id',
        'write letters and digits, with . _ or - between them, such as harbour-2',
      );
    else if (before !== undefined)
      wrong('id', id, `is the id of line ${before} already`, 'give each site an id of its own');
    if (before === undefined) lineOfId.set(id.toLowerCase(), line);
    const [till, map] = [cell('till'), cell('map')];
    if ((till === '') !== (map === ''))
      wrong(
        till === '' ? 'map' : 'till',
        till === '' ? map : till,
        till === '' ? 'has no till beside it' : 'has no map beside it',
        'give both: the export of a till, and the map of its columns',
      );
    if (opening !== '' && !isDate(opening))
      wrong('opening', opening, 'is not a day', 'write it as 2027-03-31');
    return {
      id,
      name: cell('name') === '' ? id : cell('name'),
      drop,
      opening: opening === '' ? null : opening,
      till: till === '' || map === '' ? null : { file: till, map },
      line,
      cells: new Map(
        names.flatMap((name, at) => {
          const text = cells[at] ?? '';
          return text === '' || isAbout(name) ? [] : [[columnName(name), text] as const];
        }),
      ),
    };
  });
}

/** A path as it is written in full: the name of its column. */
const columnName = (name: string): string => {
  const path = SHORT.some((one) => one.name === name) ? null : parsePath(name);
  return path === null ? name : dotted(path);
};
