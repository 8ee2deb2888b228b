/** Money of a sheet for people, from minor units. */
import { formatMoney } from '../../ordering/money.js';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import { say } from './words.js';

export const moneyIn =
  ({ currency, locale }: Pick<OrderSheet, 'currency' | 'locale'>) =>
  (minor: number | null): string =>
    minor === null ? say.none : formatMoney(minor, currency, locale ?? undefined);
