/** The first sheet of the workbook: a row a ware, with formulas from cartons and prices to the landed cost. */
import { minorDigits } from '../quantities/money.js';
import { inUnits } from './money.js';
import { isShared, sumOfCosts } from './costs/index.js';
import type { OrderLine, OrderSheet, SheetConsignment } from './order-sheet.js';
import { repeatWords } from './order-sheet-csv.js';
import {
  formula,
  head,
  INPUT,
  moneyFormat,
  number,
  text,
  type FormulaCell,
  type SheetCell,
} from './workbook-cells.js';
import {
  consignmentColumns,
  grouped,
  lettersOf,
  orderColumns,
  taxedIds,
  type Letters,
} from './workbook-columns.js';

export function orderRows(sheet: OrderSheet): SheetCell[][] {
  const columns = orderColumns(sheet);
  const at = lettersOf(columns);
  const { lines, rowsOf } = grouped(sheet);
  const rows = lines.map((line, index): SheetCell[] => {
    const row = index + 2;
    const money = landedCells(sheet, line, row, rowsOf.get(line.supplier ?? '') ?? [row, row], at);
    return [
      text(line.name),
      text(line.colour),
      text(line.supplierName),
      text(repeatWords(line.repeat)),
      number(line.par),
      number(line.onHand),
      number(line.needed),
      number(line.cartonPieces),
      ...money,
      number(line.reorderPoint),
      number(line.orderUpTo),
      text(line.nextOrder?.expected ?? null),
      line.cartonMassG === null ? null : number(line.cartonMassG / 1000, '0.000'),
    ];
  });
  return [
    columns.map(({ title }) => head(title)),
    ...rows,
    ...(lines.length === 0 ? [] : [totalRow(sheet, at, lines.length + 1)]),
  ];
}

const landedIn = ({ totals }: OrderSheet): OrderSheet['totals']['costs'] =>
  totals.costs.filter(({ landed }) => landed);

/** From the cartons to the landed cost of a piece. */
function landedCells(
  sheet: OrderSheet,
  line: OrderLine,
  row: number,
  [first, last]: readonly [number, number],
  at: Letters,
): SheetCell[] {
  const { currency } = sheet;
  const units = (minor: number): number => inUnits(minor, currency);
  const money = moneyFormat(currency);
  const place = sheet.consignments.findIndex(({ supplier }) => supplier === line.supplier);
  const consignment = sheet.consignments[place];
  if (line.landedMinor === null || consignment === undefined)
    return [null, number(line.pieces), ...Array<null>(landedIn(sheet).length + 3).fill(null)];
  const share = sharing(sheet, consignment, row, first, last, at);
  const inConsignment = lettersOf(consignmentColumns(sheet));
  const here = (id: string): string => `${at(id)}${row}`;
  return [
    { ...number(line.cartons)!, ...INPUT },
    formula(`${here('cartonPieces')}*${here('cartons')}`, line.pieces, '#,##0'),
    { ...number(units(line.cartonMinor!), money)!, ...INPUT },
    ...line.costs.map(({ id, minor }) =>
      formula(
        id === 'goods'
          ? `${here('cartons')}*${here('price')}`
          : share(`Consignments!${inConsignment(id)}$${place + 2}`, id),
        units(minor),
        money,
      ),
    ),
    formula(line.costs.map(({ id }) => here(id)).join('+'), units(line.landedMinor), money),
    formula(
      `IF(${here('pieces')}=0,0,${here('landed')}/${here('pieces')})`,
      units(line.landedMinor) / line.pieces,
      moneyFormat(currency, 2),
    ),
  ];
}

/** The formula of a line's share in a cost of its consignment: what the lines up to it bear less what those before it bear. */
function sharing(
  sheet: OrderSheet,
  { massG, charges }: SheetConsignment,
  row: number,
  first: number,
  last: number,
  at: Letters,
): (amount: string, id: string) => string {
  const digits = minorDigits(sheet.currency);
  const range = (id: string, to: string): string => `${at(id)}$${first}:${at(id)}${to}`;
  const byMass = sheet.shareFreightBy === 'mass' && massG !== null;
  const weight = (to: string): string =>
    byMass
      ? `SUMPRODUCT(${range('cartons', to)},${range('mass', to)})`
      : `SUM(${range('goods', to)})`;
  const taxed = taxedIds(charges).filter((id) => landedIn(sheet).some((cost) => cost.id === id));
  const taxedTo = (to: string): string =>
    `(${taxed.map((id) => `SUM(${range(id, to)})`).join('+')})`;
  return (amount, id) => {
    const upTo = isShared(id) ? weight : taxedTo;
    const part = (to: number): string =>
      `ROUND(${amount}*${upTo(`${to}`)}/${upTo(`$${last}`)},${digits})`;
    return `IF(${upTo(`$${last}`)}=0,0,${part(row)}${row === first ? '' : `-${part(row - 1)}`})`;
  };
}

function totalRow(sheet: OrderSheet, at: Letters, last: number): SheetCell[] {
  const { totals, currency } = sheet;
  const money = moneyFormat(currency);
  const units = (minor: number): number => inUnits(minor, currency);
  const sum = (id: string, result: number, format: string): FormulaCell => ({
    ...formula(`SUM(${at(id)}2:${at(id)}${last})`, result, format),
    fontWeight: 'bold',
  });
  const landed = landedIn(sheet);
  return [
    { value: 'Total', type: String, fontWeight: 'bold' },
    ...Array<null>(7).fill(null),
    sum('cartons', totals.cartons, '#,##0'),
    sum('pieces', totals.pieces, '#,##0'),
    null,
    ...landed.map(({ id, minor }) => sum(id, units(minor), money)),
    sum('landed', units(sumOfCosts(landed)), money),
  ];
}
