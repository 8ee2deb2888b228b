/** The sheet as CSV (RFC 4180): a row for each collection, numbers without units or grouping. */
import { inUnits } from '../../ordering/money.js';
import { minorDigits } from '../../quantities/money.js';
import { safeCell } from '../../tell/charts/picture-files.js';
import type { Collections } from './answer.js';
import { collectionColumns } from './columns.js';

/** The whole file, lines ended by CR LF. */
export function collectionsCsv(answer: Collections): string {
  const { currency, collections } = answer;
  const columns = collectionColumns(answer);
  const rows = collections.map((one) =>
    columns.map(({ as, of }) => {
      const value = of(one);
      if (typeof value !== 'number' || as === 'plain') return value ?? '';
      return as === 'money'
        ? inUnits(value, currency).toFixed(minorDigits(currency))
        : value.toFixed(2);
    }),
  );
  return [columns.map(({ title }) => title), ...rows]
    .map((cells) => `${cells.map((cell) => safeCell(String(cell))).join(',')}\r\n`)
    .join('');
}
