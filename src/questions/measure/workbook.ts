/** The sheet as a workbook (XLSX): the rows of the CSV, cell for cell, so that both are read back alike. */
import write from 'write-excel-file/universal';
import { isWorkbook, workbookRows, type WorkbookCell } from '../../quantities/read-workbook.js';
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

/** A filled sheet as CSV, row for row where it is a workbook. */
export async function asCsv(file: GivenFile): Promise<Result<GivenFile>> {
  if (!isWorkbook(file.bytes)) return { ok: true, value: file };
  const rows = await workbookRows(file.bytes);
  if (!rows.ok)
    return {
      ok: false,
      problems: rows.problems.map(({ rule, remedy }) =>
        problem({ path: [], value: undefined, rule, remedy }, file.name, { line: 1, column: 0 }),
      ),
    };
  const text = rows.value.map((row) => `${row.map(cellText).join(',')}\n`).join('');
  return { ok: true, value: { name: file.name, bytes: new TextEncoder().encode(text) } };
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
