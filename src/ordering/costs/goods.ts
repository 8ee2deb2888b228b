/** Goods: cartons at the price that holds for their number. */
import { priceAt, type Consignment, type Quote } from '../supply.js';

/** Price of so many cartons, minor units. */
export const goodsOf = (quote: Quote, cartons: number): number =>
  cartons * priceAt(quote, cartons).cartonMinor;

/** Price of all goods of a consignment, minor units, before tax. */
export const goods = (consignment: Consignment): number =>
  consignment.lines.reduce((sum, line) => sum + goodsOf(line.quote, line.cartons), 0);
