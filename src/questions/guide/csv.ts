/** The guide as CSV (RFC 4180): a row for each house and item, numbers without units or grouping. */
import { minorDigits } from '../../quantities/money.js';
import { safeCell } from '../../tell/charts/picture-files.js';
import type { Guide, GuideHouse } from './answer.js';

type Cell = string | number | null;

interface Row {
  readonly kind: string;
  readonly id: string;
  readonly name: string;
  readonly count: Cell;
  readonly low?: Cell;
  readonly high?: Cell;
  readonly perSeat?: Cell;
  readonly unitCost?: Cell;
  readonly cost?: Cell;
  /** Share of the time that each is at work. */
  readonly busy?: Cell;
}

/** The whole file, lines ended by CR LF. */
export function guideCsv({ currency, houses }: Guide): string {
  const head = [
    'seats',
    'takeaway, percent',
    'kind',
    'id',
    'name',
    'count',
    'low',
    'high',
    'for each seat',
    `price, ${currency}`,
    `cost, ${currency}`,
    'busy, percent',
  ];
  const lines = houses.flatMap((house) =>
    rowsOf(house, minorDigits(currency)).map((row) => [
      house.seats,
      figure(100 * house.takeaway, 1),
      row.kind,
      row.id,
      row.name,
      row.count,
      row.low ?? null,
      row.high ?? null,
      row.perSeat ?? null,
      row.unitCost ?? null,
      row.cost ?? null,
      row.busy ?? null,
    ]),
  );
  return [head, ...lines]
    .map(
      (line) => `${line.map((cell) => safeCell(cell === null ? '' : String(cell))).join(',')}\r\n`,
    )
    .join('');
}

const figure = (value: number, digits: number): number => Number(value.toFixed(digits));

function rowsOf(house: GuideHouse, digits: number): Row[] {
  const staff = (kind: string, count: number | null, busy: number | null): Row[] =>
    count === null
      ? []
      : [{ kind, id: '', name: '', count, busy: busy === null ? null : figure(100 * busy, 1) }];
  return [
    ...house.stock.map((line) => ({
      kind: 'ware',
      id: line.ware,
      name: line.name,
      count: line.pieces,
      low: line.low,
      high: line.high,
      perSeat: figure(line.perSeat, 3),
      unitCost: line.unitCost.toFixed(digits),
      cost: (line.pieces * line.unitCost).toFixed(digits),
    })),
    {
      kind: 'all ware',
      id: '',
      name: '',
      count: house.stock.reduce((sum, { pieces }) => sum + pieces, 0),
      cost: house.cost.toFixed(digits),
    },
    ...house.racks.map(({ kind, name, racks }) => ({
      kind: 'racks',
      id: kind,
      name,
      count: racks,
    })),
    {
      kind: 'all racks',
      id: '',
      name: '',
      count: house.racks.reduce((sum, { racks }) => sum + racks, 0),
      cost: house.racksCost.toFixed(digits),
    },
    { kind: 'shelf in one layer, m2', id: '', name: '', count: figure(house.shelfM2, 2) },
    ...staff('people making drinks', house.makers, house.busy.makers),
    ...staff('people clearing', house.clearers, house.busy.clearers),
    ...staff('people at the dishwasher', house.hands, house.busy.hands),
    ...staff('dishwashers', house.machines, house.busy.machines),
    { kind: 'guests in the busiest hour', id: '', name: '', count: figure(house.guestsAnHour, 1) },
    { kind: 'of them in the house', id: '', name: '', count: figure(house.inHouseAnHour, 1) },
    { kind: 'paper cups a rush', id: '', name: '', count: figure(house.paperCups, 1) },
  ];
}
