/**
 * The order sheet as a workbook: data for a writer of XLSX files, with formulas where a reader would
 * edit (cartons, prices, freight terms, tax rates) and the value of each formula beside it, so that readers that do
 * not calculate show the same numbers. Formulas round where the order rounds, so cents agree everywhere.
 */
import { minorDigits } from '../quantities/money.js';
import { inUnits } from './money.js';
import type { OrderLine, OrderSheet, SheetConsignment } from './order-sheet.js';
import { repeatWords } from './order-sheet-csv.js';
import {
  formula,
  head,
  INPUT,
  moneyFormat,
  number,
  text,
  valuesBeside,
  withoutResult,
  type FormulaCell,
  type SheetCell,
  type Workbook,
} from './workbook-cells.js';
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
    [24, 12, 20, 14, 8, 9, 9, 10, 9, 9, 12, 12, 12, 12, 12, 12, 10, 10, 14, 9],
    [24, 10, 12, 12, 12, 16, 10, 12, 12, 12, 14, 12],
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

const ORDER_COLUMNS = [
  'Ware',
  'Colour',
  'Supplier',
  'Repeat supply',
  'Par',
  'On hand',
  'Needed',
  'Pieces a carton',
  'Cartons',
  'Pieces',
  'Price a carton',
  'Goods',
  'Freight share',
  'Tax',
  'Landed',
  'Landed a piece',
  'Reorder below',
  'Order up to',
  'Next order expected',
  'Kg a carton',
];

/** Lines of each consignment together, in the order of consignments, then what is not ordered from anybody. */
function grouped(sheet: OrderSheet): {
  readonly lines: readonly OrderLine[];
  readonly rowsOf: ReadonlyMap<string, readonly [first: number, last: number]>;
} {
  const lines: OrderLine[] = [];
  const rowsOf = new Map<string, readonly [number, number]>();
  for (const { supplier } of sheet.consignments) {
    const own = sheet.lines.filter(
      (line) => line.supplier === supplier && line.landedMinor !== null,
    );
    // Row 1 is the head; rows count from 1.
    rowsOf.set(supplier, [lines.length + 2, lines.length + 1 + own.length]);
    lines.push(...own);
  }
  lines.push(...sheet.lines.filter((line) => line.landedMinor === null));
  return { lines, rowsOf };
}

function orderRows(sheet: OrderSheet): SheetCell[][] {
  const { currency } = sheet;
  const units = (minor: number): number => inUnits(minor, currency);
  const money = moneyFormat(currency);
  const digits = minorDigits(currency);
  const { lines, rowsOf } = grouped(sheet);
  const rows = lines.map((line, index): SheetCell[] => {
    const row = index + 2;
    const place = sheet.consignments.findIndex(({ supplier }) => supplier === line.supplier);
    const consignment = sheet.consignments[place];
    const bought = line.landedMinor !== null && consignment !== undefined;
    const [first, last] = rowsOf.get(line.supplier ?? '') ?? [row, row];
    const place2 = place + 2;
    const mass = sheet.shareFreightBy === 'mass' && consignment?.massG !== null;
    /** What lines of the consignment up to a row weigh in the sharing of freight, and of tax. */
    const freightTo = (to: string): string =>
      mass ? `SUMPRODUCT(I$${first}:I${to},T$${first}:T${to})` : `SUM(L$${first}:L${to})`;
    const taxTo = (to: string): string => `(SUM(L$${first}:L${to})+SUM(M$${first}:M${to}))`;
    const shared = (amount: string, upTo: (to: string) => string): string => {
      const part = (to: number): string =>
        `ROUND(${amount}*${upTo(`${to}`)}/${upTo(`$${last}`)},${digits})`;
      return `IF(${upTo(`$${last}`)}=0,0,${part(row)}${row === first ? '' : `-${part(row - 1)}`})`;
    };
    return [
      text(line.name),
      text(line.colour),
      text(line.supplierName),
      text(repeatWords(line.repeat)),
      number(line.par),
      number(line.onHand),
      number(line.needed),
      number(line.cartonPieces),
      bought ? { ...number(line.cartons)!, ...INPUT } : null,
      bought ? formula(`H${row}*I${row}`, line.pieces, '#,##0') : number(line.pieces),
      bought ? { ...number(units(line.cartonMinor!), money)!, ...INPUT } : null,
      bought ? formula(`I${row}*K${row}`, units(line.goodsMinor!), money) : null,
      bought
        ? formula(shared(`Consignments!E$${place2}`, freightTo), units(line.freightMinor!), money)
        : null,
      bought
        ? formula(shared(`Consignments!H$${place2}`, taxTo), units(line.taxMinor!), money)
        : null,
      bought ? formula(`L${row}+M${row}+N${row}`, units(line.landedMinor!), money) : null,
      bought
        ? formula(
            `IF(J${row}=0,0,O${row}/J${row})`,
            units(line.landedMinor!) / line.pieces,
            moneyFormat(currency, 2),
          )
        : null,
      number(line.reorderPoint),
      number(line.orderUpTo),
      text(line.nextOrder?.expected ?? null),
      line.cartonMassG === null ? null : number(line.cartonMassG / 1000, '0.000'),
    ];
  });
  const last = lines.length + 1;
  const sum = (column: string, result: number, format: string): FormulaCell => ({
    ...formula(`SUM(${column}2:${column}${last})`, result, format),
    fontWeight: 'bold',
  });
  const { totals } = sheet;
  const total: SheetCell[] = [
    { value: 'Total', type: String, fontWeight: 'bold' },
    null,
    null,
    null,
    null,
    null,
    null,
    null,
    sum('I', totals.cartons, '#,##0'),
    sum('J', totals.pieces, '#,##0'),
    null,
    sum('L', units(totals.goodsMinor), money),
    sum('M', units(totals.freightMinor), money),
    sum('N', units(totals.taxMinor), money),
    sum('O', units(totals.totalMinor - totals.handlingMinor), money),
  ];
  return [
    ORDER_COLUMNS.map((title, column) =>
      head(column >= 10 && column <= 15 ? `${title}, ${currency}` : title),
    ),
    ...rows,
    ...(lines.length === 0 ? [] : [total]),
  ];
}

/** Rows of each consignment's freight terms in the sheet of that name. */
function freightRowsOf(sheet: OrderSheet): (readonly [first: number, last: number])[] {
  let next = 2;
  return sheet.consignments.map(({ freight }) => {
    const first = next;
    next += freight.length;
    return [first, next - 1] as const;
  });
}

function consignmentRows(sheet: OrderSheet): SheetCell[][] {
  const { currency } = sheet;
  const units = (minor: number): number => inUnits(minor, currency);
  const money = moneyFormat(currency);
  const digits = minorDigits(currency);
  const { rowsOf } = grouped(sheet);
  const terms = freightRowsOf(sheet);
  const titles = [
    'Supplier',
    'Cartons',
    'Mass, kg',
    `Goods, ${currency}`,
    `Freight, ${currency}`,
    'Freight step as ordered',
    'Tax rate',
    `Tax, ${currency}`,
    `Own handling, ${currency}`,
    `Total, ${currency}`,
    'Delivery expected',
    `Freight free from, ${currency}`,
  ];
  const rows = sheet.consignments.map((one: SheetConsignment, index): SheetCell[] => {
    const row = index + 2;
    const [first, last] = rowsOf.get(one.supplier)!;
    const [from, to] = terms[index]!;
    const rate = (column: string): string =>
      `LOOKUP(B${row},Freight!B$${from}:B$${to},Freight!${column}$${from}:${column}$${to})`;
    const byMass = one.massG === null ? '' : `+C${row}*${rate('F')}`;
    return [
      text(one.name),
      formula(`SUM(Order!I${first}:I${last})`, one.cartons, '#,##0'),
      one.massG === null
        ? null
        : formula(
            `SUMPRODUCT(Order!I${first}:I${last},Order!T${first}:T${last})`,
            one.massG / 1000,
            '#,##0.0',
          ),
      formula(`SUM(Order!L${first}:L${last})`, units(one.goodsMinor), money),
      formula(
        `IF(OR(B${row}=0,AND(L${row}>0,D${row}>=L${row})),0,ROUND(${rate('D')}+B${row}*${rate('E')}${byMass},${digits}))`,
        units(one.freightMinor),
        money,
      ),
      text(one.freightStep),
      { ...number(one.taxRate, '0.0%')!, ...INPUT },
      formula(`ROUND(G${row}*(D${row}+E${row}),${digits})`, units(one.taxMinor), money),
      { ...number(units(one.handlingMinor), money)!, ...INPUT },
      formula(`D${row}+E${row}+H${row}+I${row}`, units(one.totalMinor), money),
      text(one.delivery),
      { ...number(one.freeFromMinor === null ? 0 : units(one.freeFromMinor), money)!, ...INPUT },
    ];
  });
  return [titles.map(head), ...rows];
}

/** The terms that freight is worked out from: a row a step. */
function freightRows(sheet: OrderSheet): SheetCell[][] {
  const { currency } = sheet;
  const money = moneyFormat(currency);
  const input = (minor: number): SheetCell => ({
    ...number(inUnits(minor, currency), money)!,
    ...INPUT,
  });
  return [
    [
      'Supplier',
      'From cartons',
      'Step',
      `A consignment, ${currency}`,
      `A carton, ${currency}`,
      `A kg, ${currency}`,
    ].map(head),
    ...sheet.consignments.flatMap(({ name, freight }) =>
      freight.map((step): SheetCell[] => [
        text(name),
        number(step.fromCartons),
        text(step.name),
        input(step.fixedMinor),
        input(step.perCartonMinor),
        input(step.perKgMinor),
      ]),
    ),
  ];
}
