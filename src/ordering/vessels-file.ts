/** The vessels of a collection: a CSV table with a row a cup, glass or saucer, as a supplier's list has it. */
import { didYouMean } from '../quantities/nearest.js';
import { isDate } from './dates.js';
import { problem } from './problems.js';
import type { Fault, Outcome } from '../quantities/flaw.js';
import { readTable } from './table-file.js';

/** One row. Measures are text with a unit, as in a scenario file; absent: not given. */
export interface Vessel {
  readonly id: string;
  readonly row: number;
  readonly measures: Readonly<Record<string, string>>;
  /** The saucer of this table that goes under it; null: none. */
  readonly saucer: string | null;
  /** Pieces in a carton. */
  readonly carton: number;
  readonly leadDays: number;
  /** Sold again until this day; assured, or none. */
  readonly until: string;
}

/** The unit of a bare number, by column; '' for text. */
const UNITS: Readonly<Record<string, string>> = {
  name: '',
  brim: 'ml',
  rim: 'mm',
  foot: 'mm',
  well: 'mm',
  height: 'mm',
  handle: 'mm',
  mass: 'g',
  colour: '',
};
const COLUMNS = [
  'id',
  'name',
  'price',
  'brim',
  'rim',
  'foot',
  'well',
  'height',
  'handle',
  'mass',
  'saucer',
  'colour',
  'carton',
  'lead time',
  'until',
];

/** Reads the table; a bare number is in mm, ml, g, pieces, days or the currency ("4.50 a hundred" too). */
export function readVessels(text: string, currency: string): Outcome<readonly Vessel[]> {
  const table = readTable(text, {
    what: 'a table of vessels',
    columns: COLUMNS,
    needed: ['id', 'price'],
    rows: 'vessels',
    row: 'a row for each cup, glass and saucer',
  });
  if (!table.ok) return table;
  const problems: Fault[] = [];
  const seen = new Map<string, number>();
  const vessels = table.value.map(({ row, cell }): Vessel => {
    const wrong = (column: string, value: string, rule: string, remedy: string): void =>
      void problems.push(problem(['row', row, column], value, rule, remedy));
    const whole = (column: string, usual: number): number => {
      const written = cell(column).replace(/ days?$/, '');
      if (written === '') return usual;
      if (/^[1-9]\d{0,5}$/.test(written)) return Number(written);
      wrong(column, written, 'is not a whole number above 0', 'write one such as 12');
      return usual;
    };
    const id = cell('id');
    if (!/^[a-z0-9][a-z0-9-]{0,60}$/i.test(id))
      wrong('id', id, 'is not an id', 'write letters, digits and hyphens, such as white-200');
    else if (seen.has(id))
      wrong('id', id, `is in row ${seen.get(id)} already`, 'give each row an id of its own');
    seen.set(id, row);
    const until = cell('until');
    if (until !== '' && until !== 'none' && until !== 'assured' && !isDate(until))
      wrong('until', until, 'is not a day', 'write a day such as 2027-06-30, or none or assured');
    if (cell('price') === '')
      wrong('price', '', 'is missing', 'write the price of a piece, or “a hundred”, “a carton”');
    return {
      id,
      row,
      measures: {
        price: cell('price').replace(/^(\d+(?:\.\d+)?)(?= *(?:$|\/| a | per ))/, `$1 ${currency}`),
        ...Object.fromEntries(
          Object.entries(UNITS).flatMap(([column, unit]) =>
            cell(column) === '' ? [] : [[column, withUnit(cell(column), unit)]],
          ),
        ),
      },
      saucer: cell('saucer') === '' ? null : cell('saucer'),
      carton: whole('carton', 1),
      leadDays: whole('lead time', 7),
      until: until === '' ? 'assured' : until,
    };
  });
  for (const { row, saucer } of vessels)
    if (saucer !== null && !seen.has(saucer))
      problems.push(
        problem(
          ['row', row, 'saucer'],
          saucer,
          'is not in this table',
          didYouMean(saucer, [...seen.keys()]),
        ),
      );
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: vessels };
}

const withUnit = (text: string, unit: string): string =>
  unit !== '' && /^\d+(\.\d+)?$/.test(text) ? `${text} ${unit}` : text;
