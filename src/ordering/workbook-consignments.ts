/** The sheets of consignments and of their freight terms: formulas that price another number of cartons anew. */
import { minorDigits } from '../quantities/money.js';
import type { Rates } from './costs/charge.js';
import { inUnits } from './money.js';
import type { OrderSheet, SheetConsignment } from './order-sheet.js';
import {
  formula,
  head,
  INPUT,
  moneyFormat,
  number,
  text,
  type SheetCell,
} from './workbook-cells.js';
import {
  consignmentColumns,
  grouped,
  lettersOf,
  orderColumns,
  taxedIds,
} from './workbook-columns.js';

export function consignmentRows(sheet: OrderSheet): SheetCell[][] {
  const { currency } = sheet;
  const units = (minor: number): number => inUnits(minor, currency);
  const money = moneyFormat(currency);
  const digits = minorDigits(currency);
  const { rowsOf } = grouped(sheet);
  const terms = freightRowsOf(sheet);
  const columns = consignmentColumns(sheet);
  const at = lettersOf(columns);
  const inOrder = lettersOf(orderColumns(sheet));
  const rows = sheet.consignments.map((one, index): SheetCell[] => {
    const row = index + 2;
    const here = (id: string): string => `${at(id)}${row}`;
    const [first, last] = rowsOf.get(one.supplier)!;
    const lines = (id: string): string => `Order!${inOrder(id)}${first}:${inOrder(id)}${last}`;
    const cost = (id: string, minor: number): SheetCell => {
      const amount = (text: string): SheetCell => formula(text, units(minor), money);
      if (id === 'goods') return amount(`SUM(${lines('goods')})`);
      if (id === 'freight')
        return amount(freightFormula(here, terms[index]!, one.massG !== null, digits));
      if (id === 'tax')
        return amount(
          `ROUND(${here('rate')}*(${taxedIds(one.charges).map(here).join('+')}),${digits})`,
        );
      const { rates } = one.charges.find((charge) => charge.id === id)!;
      return isFixed(rates)
        ? { ...number(units(minor), money)!, ...INPUT }
        : amount(`ROUND(${rateFormula(rates, here, units)},${digits})`);
    };
    const costs = (some: SheetConsignment['costs']): SheetCell[] =>
      some.map(({ id, minor }) => cost(id, minor));
    return [
      text(one.name),
      formula(`SUM(${lines('cartons')})`, one.cartons, '#,##0'),
      one.massG === null
        ? null
        : formula(`SUMPRODUCT(${lines('cartons')},${lines('mass')})`, one.massG / 1000, '#,##0.0'),
      ...costs(one.costs.filter(({ id, landed }) => landed && id !== 'tax')),
      text(one.freightStep),
      { ...number(one.taxRate, '0.0%')!, ...INPUT },
      ...costs(one.costs.filter(({ id, landed }) => !landed || id === 'tax')),
      formula(one.costs.map(({ id }) => here(id)).join('+'), units(one.totalMinor), money),
      text(one.delivery),
      { ...number(one.freeFromMinor === null ? 0 : units(one.freeFromMinor), money)!, ...INPUT },
    ];
  });
  return [columns.map(({ title }) => head(title)), ...rows];
}

type Here = (id: string) => string;

/** Freight at the step that holds for the cartons; nothing from the free-freight value on. */
function freightFormula(
  here: Here,
  [from, to]: readonly [number, number],
  weighed: boolean,
  digits: number,
): string {
  const [cartons, free] = [here('cartons'), here('freeFrom')];
  const rate = (column: string): string =>
    `LOOKUP(${cartons},Freight!B$${from}:B$${to},Freight!${column}$${from}:${column}$${to})`;
  const byMass = weighed ? `+${here('mass')}*${rate('F')}` : '';
  return `IF(OR(${cartons}=0,AND(${free}>0,${here('goods')}>=${free})),0,ROUND(${rate('D')}+${cartons}*${rate('E')}${byMass},${digits}))`;
}

const isFixed = ({ perCartonMinor, perKgMinor, lot }: Rates): boolean =>
  perCartonMinor === 0 && perKgMinor === 0 && lot === undefined;

/** A charge from its rates, for the cartons and the mass of the row. */
function rateFormula(
  { fixedMinor, perCartonMinor, perKgMinor, lot }: Rates,
  here: Here,
  units: (minor: number) => number,
): string {
  const cartons = here('cartons');
  const terms = [
    ...(fixedMinor === 0 ? [] : [`${units(fixedMinor)}*(${cartons}>0)`]),
    ...(perCartonMinor === 0 ? [] : [`${cartons}*${units(perCartonMinor)}`]),
    ...(perKgMinor === 0 ? [] : [`${here('mass')}*${units(perKgMinor)}`]),
    ...(lot === undefined ? [] : [`ROUNDUP(${cartons}/${lot.cartons},0)*${units(lot.minor)}`]),
  ];
  return terms.join('+');
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

/** The terms that freight is worked out from: a row a step. */
export function freightRows(sheet: OrderSheet): SheetCell[][] {
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
