/**
 * The order sheet as a workbook: data for a writer of XLSX files, with formulas where a reader would
 * edit (cartons, prices, freight, tax rates) and the value of each formula beside it, so that readers that do
 * not calculate show the same numbers.
 */
import type { CellObject, SheetData } from 'write-excel-file/universal';
import { minorDigits } from '../quantities/money.js';
import { inUnits } from './money.js';
import type { OrderLine, OrderSheet, SheetConsignment } from './order-sheet.js';
import { repeatWords } from './order-sheet-csv.js';
import { safeText } from './safe-text.js';
import { reorderCard } from './reorder-card.js';

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
} as const;
/** A cell that a reader may edit. */
const INPUT = { backgroundColor: '#FFF8DC' } as const;

interface FormulaCell extends CellObject {
  readonly type: 'Formula';
  readonly value: string;
  /** What the formula comes to. */
  readonly result: number;
}

type SheetCell = CellObject | FormulaCell | null;

const text = (value: string | null): CellObject | null =>
  value === null || value === '' ? null : { value: safeText(value), type: String };
const wrapped = (value: string): CellObject => ({
  value: safeText(value),
  type: String,
  wrap: true,
  alignVertical: 'top',
});
const number = (value: number | null, format = '#,##0'): CellObject | null =>
  value === null ? null : { value, type: Number, format };
const formula = (value: string, result: number, format: string): FormulaCell => ({
  value,
  type: 'Formula',
  result,
  format,
});
const head = (value: string): CellObject => ({ value, type: String, ...HEAD });

/** Data and features for the writer: `write(book.sheets, { features: book.features })`. */
export function orderSheetXlsx(sheet: OrderSheet): Workbook {
  const rows = [
    orderRows(sheet),
    consignmentRows(sheet),
    takeawayRows(sheet),
    cardRows(sheet),
    noteRows(sheet),
  ];
  const results = rows.map((cells) =>
    cells.flat().flatMap((cell) => (cell !== null && 'result' in cell ? [cell.result] : [])),
  );
  const names = ['Order', 'Consignments', 'Takeaway a week', 'Reorder cards', 'Notes'];
  const widths = [
    [24, 12, 20, 14, 8, 9, 9, 10, 9, 9, 12, 12, 12, 12, 12, 12, 10, 10, 14],
    [24, 10, 12, 12, 16, 10, 12, 12, 12, 14],
    [24, 10, 12, 14, 12, 14, 14],
    [28, 30, 60],
    [18, 90, 50],
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

const withoutResult = ({ type, value, format, fontWeight }: FormulaCell): CellObject => ({
  type,
  value,
  ...(format === undefined ? {} : { format }),
  ...(fontWeight === undefined ? {} : { fontWeight }),
});

/** The writer leaves formulas without a value; this puts each one's in, in the order of the cells. */
function valuesBeside(results: readonly (readonly number[])[]): WorkbookFeature {
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
  const { lines, rowsOf } = grouped(sheet);
  const rows = lines.map((line, index): SheetCell[] => {
    const row = index + 2;
    const place = sheet.consignments.findIndex(({ supplier }) => supplier === line.supplier);
    const consignment = sheet.consignments[place];
    const bought = line.landedMinor !== null && consignment !== undefined;
    const [first, last] = rowsOf.get(line.supplier ?? '') ?? [row, row];
    // Freight as the reader's workbook shares it out: by value, in proportion, unrounded.
    const share = bought
      ? units(consignment.freightMinor) *
        (sheet.shareFreightBy === 'value'
          ? line.goodsMinor! / consignment.goodsMinor
          : line.freightMinor! / Math.max(1, consignment.freightMinor))
      : 0;
    const tax = bought ? consignment.taxRate * (units(line.goodsMinor!) + share) : 0;
    const landed = bought ? units(line.goodsMinor!) + share + tax : 0;
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
      !bought
        ? null
        : sheet.shareFreightBy === 'value'
          ? formula(`Consignments!E${place + 2}*L${row}/SUM(L$${first}:L$${last})`, share, money)
          : number(units(line.freightMinor!), money),
      bought ? formula(`Consignments!G${place + 2}*(L${row}+M${row})`, tax, money) : null,
      bought ? formula(`L${row}+M${row}+N${row}`, landed, money) : null,
      bought
        ? formula(`IF(J${row}=0,0,O${row}/J${row})`, landed / line.pieces, moneyFormat(currency, 2))
        : null,
      number(line.reorderPoint),
      number(line.orderUpTo),
      text(line.nextOrder?.expected ?? null),
    ];
  });
  const last = lines.length + 1;
  const sum = (column: string, result: number, format: string): FormulaCell => ({
    ...formula(`SUM(${column}2:${column}${last})`, result, format),
    fontWeight: 'bold',
  });
  const { totals } = sheet;
  const taxed = rows.reduce((total, row) => total + resultOf(row[13]), 0);
  const landed = rows.reduce((total, row) => total + resultOf(row[14]), 0);
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
    sum('N', taxed, money),
    sum('O', landed, money),
  ];
  return [
    ORDER_COLUMNS.map((title, column) =>
      head(column >= 10 && column <= 15 ? `${title}, ${currency}` : title),
    ),
    ...rows,
    ...(lines.length === 0 ? [] : [total]),
  ];
}

const resultOf = (cell: SheetCell | undefined): number =>
  cell !== null && cell !== undefined && 'result' in cell ? cell.result : 0;

function consignmentRows(sheet: OrderSheet): SheetCell[][] {
  const { currency } = sheet;
  const units = (minor: number): number => inUnits(minor, currency);
  const money = moneyFormat(currency);
  const { rowsOf } = grouped(sheet);
  const titles = [
    'Supplier',
    'Cartons',
    'Mass as ordered, kg',
    `Goods, ${currency}`,
    `Freight, ${currency}`,
    'Freight step',
    'Tax rate',
    `Tax, ${currency}`,
    `Placing and putting away, ${currency}`,
    `Total, ${currency}`,
    'Delivery expected',
  ];
  const rows = sheet.consignments.map((consignment: SheetConsignment, index): SheetCell[] => {
    const row = index + 2;
    const [first, last] = rowsOf.get(consignment.supplier)!;
    const tax = consignment.taxRate * units(consignment.goodsMinor + consignment.freightMinor);
    return [
      text(consignment.name),
      formula(`SUM(Order!I${first}:I${last})`, consignment.cartons, '#,##0'),
      consignment.massG === null ? null : number(consignment.massG / 1000, '#,##0.0'),
      formula(`SUM(Order!L${first}:L${last})`, units(consignment.goodsMinor), money),
      { ...number(units(consignment.freightMinor), money)!, ...INPUT },
      text(consignment.freightStep),
      { ...number(consignment.taxRate, '0.0%')!, ...INPUT },
      formula(`G${row}*(D${row}+E${row})`, tax, money),
      { ...number(units(consignment.handlingMinor), money)!, ...INPUT },
      formula(
        `D${row}+E${row}+H${row}+I${row}`,
        units(consignment.goodsMinor + consignment.freightMinor + consignment.handlingMinor) + tax,
        money,
      ),
      text(consignment.delivery),
    ];
  });
  return [titles.map(head), ...rows];
}

function takeawayRows(sheet: OrderSheet): SheetCell[][] {
  const titles = [
    'Item',
    'Kind',
    'Pieces a week',
    'Of these in place of a house cup',
    'Pieces a sleeve',
    'Sleeves a week',
    `Cost a week, ${sheet.currency}`,
  ];
  return [
    titles.map(head),
    ...sheet.takeaway.map((line): SheetCell[] => [
      text(line.name),
      text(line.kind),
      number(line.aWeek, '#,##0.0'),
      number(line.asFallBackAWeek, '#,##0.0'),
      number(line.sleeve),
      number(line.sleevesAWeek),
      line.minorAWeek === null
        ? null
        : number(inUnits(line.minorAWeek, sheet.currency), moneyFormat(sheet.currency)),
    ]),
  ];
}

function cardRows(sheet: OrderSheet): SheetCell[][] {
  const rows = sheet.lines.flatMap((line): SheetCell[][] => {
    const card = reorderCard(line, sheet);
    return [
      [text(card.title), text('Rule'), wrapped(card.rule)],
      ...card.rows.map(({ label, text: said }): SheetCell[] => [null, text(label), wrapped(said)]),
    ];
  });
  return [['Ware', 'What', 'How much, when'].map(head), ...rows];
}

function noteRows(sheet: OrderSheet): SheetCell[][] {
  return [
    ['Kind', 'Note', 'Defers to'].map(head),
    ...sheet.warnings.map((warning): SheetCell[] => [
      text('Warning'),
      wrapped(warning.message),
      null,
    ]),
    ...sheet.cautions.map((caution): SheetCell[] => [
      text('Caution'),
      wrapped(caution.text),
      wrapped(caution.defersTo),
    ]),
  ];
}

function moneyFormat(currency: string, extra = 0): string {
  const decimals = minorDigits(currency) + extra;
  return decimals === 0 ? '#,##0' : `#,##0.${'0'.repeat(decimals)}`;
}
