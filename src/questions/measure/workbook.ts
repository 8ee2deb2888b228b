/** The sheet as a workbook (XLSX): the rows of the CSV, cell for cell, so that both are read back alike. */
import write from 'write-excel-file/universal';
import { isWorkbook, workbookSheets, type WorkbookCell } from '../../quantities/read-workbook.js';
import { safeCell } from '../../tell/charts/picture-files.js';
import { PARTS } from '../../measuring/sheet.js';
import { problem } from '../../scenario/problems.js';
import type { Result } from '../result.js';
import type { GivenFile } from '../settings.js';
import type { SheetFacts } from './facts.js';
import { sheetLines } from './template.js';

const MINUTES_A_DAY = 24 * 60;
/** Widths of columns in characters: the first holds names and times. */
const FIRST_WIDTH = 16;
const WIDTH = 11;

export const sheetXlsx = (facts: SheetFacts): Promise<Uint8Array> => linesXlsx(sheetLines(facts));

/** Every cell is text, so that 08:05 stays as it is typed. */
export async function linesXlsx(lines: readonly (readonly string[])[]): Promise<Uint8Array> {
  const columns = Math.max(...lines.map((line) => line.length));
  const isHead = (at: number): boolean =>
    PARTS.some((part) => part === lines[at - 1]?.[0] && lines[at - 1]!.length === 1);
  const data = lines.map((line, at) => {
    const alone = line.length === 1;
    return line.map((text) => ({
      type: String,
      format: '@',
      value: text,
      ...(alone || isHead(at) || at < 3 ? { fontWeight: 'bold' as const } : {}),
      ...(isHead(at) ? { wrap: true, backgroundColor: '#E8E4DA' } : {}),
      ...(alone ? {} : { borderStyle: 'thin' as const, borderColor: '#B8B2A4' }),
    }));
  });
  const blob = await write([
    {
      data,
      sheet: 'Morning',
      columns: Array.from({ length: columns }, (_, at) => ({
        width: at === 0 ? FIRST_WIDTH : WIDTH,
      })),
    },
  ] as never).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

/** Filled sheets as CSV, row for row where the file is a workbook: each of its sheets on which a part of ours stands, else the first. */
export async function asCsv(file: GivenFile): Promise<Result<readonly GivenFile[]>> {
  if (!isWorkbook(file.bytes)) return { ok: true, value: [file] };
  const sheets = await workbookSheets(file.bytes);
  if (!sheets.ok)
    return {
      ok: false,
      problems: sheets.problems.map(({ rule, remedy }) =>
        problem({ path: [], value: undefined, rule, remedy }, file.name, { line: 1, column: 0 }),
      ),
    };
  const ours = sheets.value.filter(({ rows }) =>
    rows.some(([first]) => PARTS.some((part) => part === String(first ?? '').toLowerCase())),
  );
  const read = ours.length > 0 ? ours : sheets.value.slice(0, 1);
  return {
    ok: true,
    value: read.map(({ name, rows }) => ({
      name: read.length > 1 ? `${file.name}, sheet ${name}` : file.name,
      bytes: new TextEncoder().encode(
        rows.map((row) => `${row.map(cellText).join(',')}\n`).join(''),
      ),
    })),
  };
}

/** What is typed as 08:05 a spreadsheet may keep as a part of a day. */
function cellText(cell: WorkbookCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number' && cell > 0 && cell < 1) {
    const minutes = cell * MINUTES_A_DAY;
    if (Math.abs(minutes - Math.round(minutes)) < 1e-4) return clockOf(Math.round(minutes));
  }
  const moment = /^1(?:899|900)-\d\d-\d\dT(\d\d:\d\d)/.exec(String(cell));
  return safeCell(moment?.[1] ?? String(cell).replace(/\s+/g, ' '));
}

const clockOf = (minutes: number): string =>
  [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':');
