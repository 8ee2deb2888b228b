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

type Named = Pick<CostAmount, 'name' | 'landed'>;

const inSentence = ({ name, landed }: Named): string =>
  landed ? name.toLowerCase() : say.ownCost(name.toLowerCase());

/** Costs in a sentence: "freight, tax and your own handling". */
export const costNames = (costs: readonly Named[]): string => listed(costs.map(inSentence));

const besideGoods = (): readonly CostAmount[] => costsOf([]).filter(({ id }) => id !== 'goods');

/** What landed costs hold beside goods: "freight and tax". */
export const landedBesideGoods = (): string =>
  costNames(besideGoods().filter(({ landed }) => landed));

/** What an order costs beside goods, one by one. */
export const costsBesideGoods = (): readonly string[] => besideGoods().map(inSentence);
