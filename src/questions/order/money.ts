/** Money of a sheet for people, from minor units. */
import { formatMoney } from '../../ordering/money.js';
import type { OrderSheet } from '../../ordering/order-sheet.js';
import { costsOf, type CostAmount } from '../../ordering/costs/index.js';
import { listed } from '../../tell/words.js';
import { say } from './words.js';

export const moneyIn =
  ({ currency, locale }: Pick<OrderSheet, 'currency' | 'locale'>) =>
  (minor: number | null): string =>
    minor === null ? say.none : formatMoney(minor, currency, locale ?? undefined);

/** Costs in a sentence: "freight, tax and your own handling". */
export const costNames = (costs: readonly Pick<CostAmount, 'name' | 'landed'>[]): string =>
  listed(
    costs.map(({ name, landed }) =>
      landed ? name.toLowerCase() : say.ownCost(name.toLowerCase()),
    ),
  );

/** What landed costs hold beside goods: "freight and tax". */
export const landedBesideGoods = (): string =>
  costNames(costsOf([]).filter(({ id, landed }) => landed && id !== 'goods'));
