/**
 * The order sheet as a workbook: data for a writer of XLSX files, with formulas where a reader would
 * edit (cartons, prices, freight terms, tax rates) and the value of each formula beside it, so that readers that do
 * not calculate show the same numbers. Formulas round where the order rounds, so cents agree everywhere.
 */
import type { OrderSheet } from './order-sheet.js';
import { valuesBeside, withoutResult, type Workbook } from './workbook-cells.js';
import { consignmentColumns, orderColumns } from './workbook-columns.js';
import { consignmentRows, freightRows } from './workbook-consignments.js';
import { orderRows } from './workbook-order.js';
import {
  cardRows,
  MADE_FROM,
  madeSheets,
  noteRows,
  takeawayRows,
  type MadeLines,
} from './workbook-sheets.js';

const SHEETS = ['Order', 'Consignments', 'Freight', 'Takeaway a week', 'Reorder cards', 'Notes'];

/**
 * Data and features for the writer: `write(book.sheets, { features: book.features })`.
 * @param made what the order was made from, a line each: the last sheet, out of the way of whoever orders
 */
export function orderSheetXlsx(sheet: OrderSheet, made: MadeLines = []): Workbook {
  const rows = [
    orderRows(sheet),
    consignmentRows(sheet),
    freightRows(sheet),
    takeawayRows(sheet),
    cardRows(sheet),
    noteRows(sheet),
    ...madeSheets(made),
  ];
  const results = rows.map((cells) =>
    cells.flat().flatMap((cell) => (cell !== null && 'result' in cell ? [cell.result] : [])),
  );
  const names = [...SHEETS, MADE_FROM];
  const widths = [
    orderColumns(sheet).map(({ width }) => width),
    consignmentColumns(sheet).map(({ width }) => width),
    [24, 10, 20, 12, 12, 12],
    [24, 10, 12, 14, 12, 12, 14, 14],
    [28, 30, 60],
    [18, 90, 50],
    [24, 90],
  ];
  return {
    sheets: rows.map((cells, index) => ({
      sheet: names[index]!,
      data: cells.map((row) =>
        row.map((cell) => (cell !== null && 'result' in cell ? withoutResult(cell) : cell)),
      ),
      columns: widths[index]!.map((width) => ({ width })),
      stickyRowsCount: 1,
      orientation: 'landscape',
    })),
    features: [valuesBeside(results)],
  };
}
