/** The sheet as CSV (RFC 4180): a row for each collection, numbers without units or grouping. */
import { inUnits } from '../../ordering/money.js';
import { minorDigits } from '../../quantities/money.js';
import { safeCell } from '../../tell/charts/picture-files.js';
import type { Collections } from './answer.js';

/** The whole file, lines ended by CR LF. */
export function collectionsCsv({ currency, horizonDays, collections }: Collections): string {
  const money = (minor: number | null): string =>
    minor === null ? '' : inUnits(minor, currency).toFixed(minorDigits(currency));
  const head = [
    'id',
    'name',
    'pieces',
    'ordered',
    `order now, ${currency}`,
    `all orders of ${horizonDays} days, ${currency}`,
    'full racks a day',
    'drinks alike',
    'drinks compared',
    'kinds of saucer',
    'saucers saved',
    'misfits',
    'hot cups on the machine',
    'sold until',
    `spares, ${currency}`,
    `replaced, ${currency}`,
  ];
  const rows = collections.map((one) => [
    one.id,
    one.name,
    one.pieces,
    one.ordered,
    money(one.nowMinor),
    money(one.overMinor),
    one.fullRacksADay.toFixed(2),
    one.alike,
    one.compared,
    one.saucerKinds,
    one.saucersSaved,
    one.misfits,
    one.onTop?.pieces ?? '',
    one.discontinued?.until ?? '',
    money(one.discontinued?.sparesMinor ?? null),
    money(one.discontinued?.replacedMinor ?? null),
  ]);
  return [head, ...rows]
    .map((cells) => `${cells.map((cell) => safeCell(String(cell))).join(',')}\r\n`)
    .join('');
}
