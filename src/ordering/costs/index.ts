/**
 * What a consignment costs, cost by cost. To add one: a file beside this one and a line in `charges.ts`;
 * totals, landed costs, the bridge, every file of an order and the proof read that list.
 */
import type { Consignment } from '../supply.js';
import { charges } from './charges.js';
import { goods } from './goods.js';
import { tax } from './tax.js';

interface Cost {
  readonly id: string;
  readonly name: string;
  /** Part of what pieces cost as they stand on the shelf; otherwise the house's own. */
  readonly landed: boolean;
  /** Whole minor units. */
  readonly minor: (consignment: Consignment) => number;
}

/** One cost of an order, a consignment or a line. */
export interface CostAmount extends Pick<Cost, 'id' | 'name' | 'landed'> {
  /** Whole minor units. */
  readonly minor: number;
}

/** The landed ones before the house's own; tax comes after all that it is on. */
const allCosts = (): readonly Cost[] => [
  { id: 'goods', name: 'Goods', landed: true, minor: goods },
  ...charges.filter(({ landed }) => landed),
  { id: 'tax', name: 'Tax', landed: true, minor: tax },
  ...charges.filter(({ landed }) => !landed),
];

/** Whether a landed cost is one of the consignment, shared between its lines: all but goods and tax. */
export const isShared = (id: string): boolean => id !== 'goods' && id !== 'tax';

/** Each cost of all these consignments together. */
export const costsOf = (consignments: readonly Consignment[]): readonly CostAmount[] =>
  allCosts().map(({ id, name, landed, minor }) => ({
    id,
    name,
    landed,
    minor: consignments.reduce((sum, one) => sum + minor(one), 0),
  }));

/** The four costs that every order has, by the names that its answers have had from the start. */
export interface NamedCosts {
  readonly goodsMinor: number;
  readonly freightMinor: number;
  readonly taxMinor: number;
  readonly handlingMinor: number;
}

export const namedCosts = (costs: readonly CostAmount[]): NamedCosts => {
  const of = (id: string): number => costs.find((cost) => cost.id === id)?.minor ?? 0;
  return {
    goodsMinor: of('goods'),
    freightMinor: of('freight'),
    taxMinor: of('tax'),
    handlingMinor: of('handling'),
  };
};

export const sumOfCosts = (costs: readonly CostAmount[]): number =>
  costs.reduce((sum, { minor }) => sum + minor, 0);

/** All costs of a consignment, minor units. */
export const consignmentTotal = (consignment: Consignment): number =>
  sumOfCosts(costsOf([consignment]));
