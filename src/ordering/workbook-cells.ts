/** Cells of a workbook, and how values get beside its formulas. */
import type { CellObject, SheetData } from 'write-excel-file/universal';
import { minorDigits } from '../quantities/money.js';
import { safeText } from './safe-text.js';

export interface WorkbookSheet {
  readonly sheet: string;
  readonly data: SheetData;
  readonly columns: { readonly width: number }[];
  readonly stickyRowsCount: number;
  readonly orientation: 'landscape';
}

/** The part of the writer's features that is used, whichever of its builds writes the file. */
export interface WorkbookFeature {
  readonly files: {
    readonly transform: {
      readonly 'xl/worksheets/sheet{id}.xml': {
        readonly transform: (
          content: string,
          options: object,
          place: { readonly sheetIndex: number },
        ) => string;
      };
    };
  };
}

export interface Workbook {
  /** First argument of the writer. */
  readonly sheets: WorkbookSheet[];
  /** `features` of the writer's options: puts the values beside the formulas. */
  readonly features: WorkbookFeature[];
}

const HEAD = {
  fontWeight: 'bold',
  backgroundColor: '#E6EDF3',
  wrap: true,
  alignVertical: 'top',
  // Two lines of a title, in points: a row has one where nothing is said.
  height: 30,
} as const;
/** A cell that a reader may edit. */
export const INPUT = { backgroundColor: '#FFF8DC' } as const;

export interface FormulaCell extends CellObject {
  readonly type: 'Formula';
  readonly value: string;
  /** What the formula comes to. */
  readonly result: number;
}

export type SheetCell = CellObject | FormulaCell | null;

export const text = (value: string | null): CellObject | null =>
  value === null || value === '' ? null : { value: safeText(value), type: String };
export const wrapped = (value: string): CellObject => ({
  value: safeText(value),
  type: String,
  wrap: true,
  alignVertical: 'top',
});
export const number = (value: number | null, format = '#,##0'): CellObject | null =>
  value === null ? null : { value, type: Number, format };
export const formula = (value: string, result: number, format: string): FormulaCell => ({
  value,
  type: 'Formula',
  result,
  format,
});
export const head = (value: string): CellObject => ({ value, type: String, ...HEAD });

export const withoutResult = ({ type, value, format, fontWeight }: FormulaCell): CellObject => ({
  type,
  value,
  ...(format === undefined ? {} : { format }),
  ...(fontWeight === undefined ? {} : { fontWeight }),
});

/** The writer leaves formulas without a value; this puts each one's in, in the order of the cells. */
export function valuesBeside(results: readonly (readonly number[])[]): WorkbookFeature {
  return {
    files: {
      transform: {
        'xl/worksheets/sheet{id}.xml': {
          transform(content, _options, { sheetIndex }) {
            const values = results[sheetIndex]!.values();
            return content.replace(/<\/f>/g, () => `</f><v>${values.next().value ?? 0}</v>`);
          },
        },
      },
    },
  };
}

export function moneyFormat(currency: string, extra = 0): string {
  const decimals = minorDigits(currency) + extra;
  return decimals === 0 ? '#,##0' : `#,##0.${'0'.repeat(decimals)}`;
}
