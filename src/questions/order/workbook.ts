/** The order sheet as the bytes of an XLSX file, where there is no file system: in a page or its worker. */
import write from 'write-excel-file/universal';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import { orderSheetXlsx } from '../../ordering/order-sheet-xlsx.js';
import { madeRows, type Made } from '../made.js';
import type { OutFile } from '../question.js';

/** The same sheets, cells and formulas as the command line writes. */
export async function orderWorkbook(
  sheet: OrderSheet,
  made?: Made,
): Promise<Uint8Array<ArrayBuffer>> {
  const { sheets, features } = orderSheetXlsx(sheet, made && madeRows(made));
  const blob = await write(sheets as never, { features: features as never }).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

export const orderWorkbookFile = async (sheet: OrderSheet, made?: Made): Promise<OutFile> => ({
  ending: 'order.xlsx',
  content: await orderWorkbook(sheet, made),
});
