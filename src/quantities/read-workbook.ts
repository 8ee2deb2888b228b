/** Sheets of a workbook (XLSX) as rows of plain values; formulas give what they last came to. */
import type { Outcome } from './flaw.js';

export type WorkbookCell = string | number | boolean | null;

/** What is wrong with the file as a whole, as a problem's rule and remedy. */
export interface WorkbookFlaw {
  readonly rule: string;
  readonly remedy: string;
}

/** Unpacked, a small file may be huge. */
const LARGEST = 200_000_000;
const DAY_LETTERS = 'YYYY-MM-DD'.length;

/** A workbook is a ZIP archive: no text begins so. */
export const isWorkbook = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;

type Rows = readonly (readonly WorkbookCell[])[];

/** The first sheet. */
export async function workbookRows(bytes: Uint8Array): Promise<Outcome<Rows, WorkbookFlaw>> {
  const sheets = await workbookSheets(bytes);
  return sheets.ok ? { ok: true, value: sheets.value[0]?.rows ?? [] } : sheets;
}

/** All sheets. Days come as `2027-03-31`, numbers as they are, shares too: 40 % is 0.4. Empty rows stay, so that rows keep their numbers. */
export async function workbookSheets(
  bytes: Uint8Array,
): Promise<Outcome<readonly { readonly name: string; readonly rows: Rows }[], WorkbookFlaw>> {
  const flaw = (rule: string, remedy: string) =>
    ({ ok: false, problems: [{ rule, remedy }] }) as const;
  const unreadable = flaw('is no workbook that can be read', 'save it again as XLSX, or as CSV');
  const [{ unzipSync }, { default: readSheets }] = await Promise.all([
    import('fflate'),
    import('read-excel-file/universal'),
  ]);
  try {
    let unpacked = 0;
    unzipSync(bytes, { filter: ({ originalSize }) => (unpacked += originalSize) < 0 });
    if (unpacked > LARGEST)
      return flaw('is larger than 200 MB when unpacked', 'leave out sheets that are not needed');
    const sheets = await readSheets(new Blob([new Uint8Array(bytes)]));
    return {
      ok: true,
      value: sheets.map(({ sheet, data }) => ({
        name: sheet,
        rows: data.map((row) => row.map(plain)),
      })),
    };
  } catch {
    // The reader throws whatever its parts do: each means that the file is no workbook, or half of one.
    return unreadable;
  }
}

function plain(cell: unknown): WorkbookCell {
  if (cell === null || cell === undefined) return null;
  if (cell instanceof Date) {
    const text = Number.isNaN(cell.getTime()) ? '' : cell.toISOString();
    return text.endsWith('T00:00:00.000Z') ? text.slice(0, DAY_LETTERS) : text;
  }
  return typeof cell === 'number' || typeof cell === 'boolean' ? cell : String(cell as string);
}
