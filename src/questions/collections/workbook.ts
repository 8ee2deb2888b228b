/** The comparison as a workbook (XLSX): the rows of the CSV, and a row a vessel. */
import write from 'write-excel-file/universal';
import { inUnits } from '../../ordering/money.js';
import { head, moneyFormat, number, text, type SheetCell } from '../../ordering/workbook-cells.js';
import type { OutFile } from '../question.js';
import type { Collections } from './answer.js';
import { collectionColumns, vesselColumns, type Column } from './columns.js';

export async function collectionsWorkbook(answer: Collections): Promise<OutFile> {
  const { collections, currency } = answer;
  const vessels = collections.flatMap(({ name, vessels }) =>
    vessels.map((one) => ({ ...one, collection: name })),
  );
  const sheets = [
    sheetOf('Collections', collectionColumns(answer), collections, currency),
    sheetOf('Vessels', vesselColumns, vessels, currency),
  ];
  const blob = await write(sheets as never).toBlob();
  return { ending: 'collections.xlsx', content: new Uint8Array(await blob.arrayBuffer()) };
}

function sheetOf<Row>(
  sheet: string,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  currency: string,
) {
  const cell = ({ as, of }: Column<Row>, row: Row): SheetCell => {
    const value = of(row);
    if (typeof value !== 'number') return text(value);
    if (as === 'money') return number(inUnits(value, currency), moneyFormat(currency));
    return number(value, as === 'decimal' ? '#,##0.00' : '#,##0');
  };
  return {
    sheet,
    data: [
      columns.map(({ title }) => head(title)),
      ...rows.map((row) => columns.map((column) => cell(column, row))),
    ],
    columns: columns.map((_, at) => ({ width: at === 1 ? 24 : 14 })),
    stickyRowsCount: 1,
    orientation: 'landscape' as const,
  };
}
