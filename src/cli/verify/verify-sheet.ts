/** The sheets of an answer, XLSX or CSV, worked out again and held against it cell by cell. */
import { basename } from 'node:path';
import { existsSync } from 'node:fs';
import { CsvError, parse } from 'csv-parse/sync';
import { MADE_FROM } from '../../ordering/workbook-sheets.js';
import { madeData, type Made } from '../../questions/made.js';
import type { OutFile } from '../../questions/question.js';
import { readWhole } from '../files.js';
import { MistakeError } from '../mistakes.js';
import { madeOfData, readAnswer, type SavedAnswer } from './answer-file.js';
import { askedAgain, type Sources } from './asked-again.js';
import type { Difference } from './differences.js';
import type { Verified } from './verify-letter.js';
import { sitesAgain } from './verify-sites.js';

type Rows = readonly (readonly unknown[])[];
interface Sheet {
  readonly sheet: string;
  readonly data: Rows;
}
/** Name of a cell, from its row and column, both from 0. */
type Place = (row: number, column: number) => string;

/** The JSON of an answer about sites. */
const SITES_JSON = ['sites.json', 'what-if.json'];
const LARGEST_ANSWER = 50_000_000;

/** @throws MistakeError where it says nothing of what it was made from, or cannot be worked out again */
export async function verifyWorkbook(bytes: Uint8Array, sources: Sources): Promise<Verified> {
  const { name } = sources;
  const printed = await sheetsOf(bytes, name);
  const from = printed.find(({ sheet }) => sheet === MADE_FROM);
  const data = from && madeData(from.data);
  if (typeof data !== 'string')
    throw new MistakeError(
      `${name}: does not say what it was made from (it has no sheet "${MADE_FROM}", or not the whole of it), as workbooks of cuptide order --out do. In its place verify the letter, if it was saved from one: its order is found without the solver of the command, so the sheet leaves this out. Else verify the JSON that was written with it, such as sites.json`,
    );
  const made = madeOfData(data, name);
  const reply = await askedAgain(made, made.settings['date'], sources);
  const book = await reply.workbook?.(made);
  if (book === undefined || typeof book.content === 'string') throw noSheet(name, made);
  const found = await sheetsOf(book.content, name);
  const names = [...new Set([...found, ...printed].map(({ sheet }) => sheet))];
  const rowsOf = (sheets: readonly Sheet[], wanted: string): Rows =>
    sheets.find(({ sheet }) => sheet === wanted)?.data ?? [];
  return verified(
    made,
    found.map(({ data: rows }) => rows),
    names.flatMap((sheet) =>
      cellDifferences(
        rowsOf(printed, sheet),
        rowsOf(found, sheet),
        (row, column) => `${sheet}!${columnName(column)}${row + 1}`,
      ),
    ),
  );
}

/** A CSV has no place to say what it was made from: the JSON that was written with it does. @throws MistakeError as above */
export async function verifyCsv(text: string, sources: Sources): Promise<Verified> {
  const { name } = sources;
  const own = name.replace(/\.csv$/i, '.json');
  // One JSON stands for all tables of sites.
  const beside = [own, ...SITES_JSON.map((ending) => own.replace(/[^./\\]+\.json$/, ending))].find(
    (path) => existsSync(path),
  );
  if (beside === undefined)
    throw new MistakeError(
      `${name}: a table cannot say what it was made from; put the JSON that was written with it beside it, under the name ${basename(own)} (of tables of sites, the name that ends in ${SITES_JSON.join(' or ')})`,
    );
  const json = new TextDecoder().decode(await readWhole(beside, LARGEST_ANSWER));
  const { made, answer } = readAnswer(json, beside);
  const table = await tableAgain({ made, answer }, sources);
  if (table === undefined) throw noSheet(name, made);
  const [printed, found] = [rowsOfCsv(text, name), rowsOfCsv(String(table.content), name)];
  return verified(
    made,
    [found],
    cellDifferences(
      printed,
      found,
      (row, column) => `row ${row + 1}, ${String(found[0]?.[column] ?? `column ${column + 1}`)}`,
    ),
  );
}

async function tableAgain(
  { made, answer }: SavedAnswer,
  sources: Sources,
): Promise<OutFile | undefined> {
  if (made.question !== 'sites') return (await askedAgain(made, answer['date'], sources)).figures;
  const { files } = await sitesAgain(made, sources);
  return (await files()).find(({ ending }) => sources.name.endsWith(`.${ending}`));
}

const noSheet = (name: string, { question }: Made): MistakeError =>
  new MistakeError(
    `${name}: cuptide ${question}, which it says it was made with, writes no such file; the file beside it, or the sheet in it, is of another answer`,
  );

const verified = (
  { version, seed }: Made,
  sheets: readonly Rows[],
  differences: readonly Difference[],
): Verified => ({
  version,
  seed,
  values: sheets.flat(2).filter((cell) => shown(cell) !== '').length,
  parts: 0,
  differences,
});

async function sheetsOf(bytes: Uint8Array, name: string): Promise<readonly Sheet[]> {
  const { default: readBook } = await import('read-excel-file/universal');
  try {
    return await readBook(new Blob([new Uint8Array(bytes)]));
  } catch {
    // The reader throws whatever its parts do: each means that the file is no workbook, or half of one.
    throw new MistakeError(
      `${name}: is no workbook that can be read, or cut short; take the file as the command wrote it`,
    );
  }
}

function rowsOfCsv(text: string, name: string): Rows {
  try {
    return parse(text, {
      bom: true,
      relax_column_count: true,
      delimiter: [',', ';', '\t'],
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new MistakeError(
      `${name}: line ${error.lines as number} is not a row of a table; take the file as the command wrote it`,
    );
  }
}

const shown = (cell: unknown): string =>
  cell === null || cell === undefined
    ? ''
    : cell instanceof Date
      ? cell.toISOString()
      : String(cell as string | number);

function cellDifferences(printed: Rows, found: Rows, place: Place): Difference[] {
  return Array.from({ length: Math.max(printed.length, found.length) }, (_, row) => {
    const [was, is] = [printed[row] ?? [], found[row] ?? []];
    return Array.from({ length: Math.max(was.length, is.length) }, (__, column) => {
      const [one, other] = [shown(was[column]), shown(is[column])];
      return one === other
        ? []
        : [{ place: place(row, column), printed: one || 'nothing', found: other || 'nothing' }];
    }).flat();
  }).flat();
}

/** `A` to `Z`, then `AA` on. */
const columnName = (column: number): string =>
  (column >= 26 ? columnName(Math.floor(column / 26) - 1) : '') +
  String.fromCharCode(65 + (column % 26));
