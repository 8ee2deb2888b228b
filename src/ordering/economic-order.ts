/**
 * The economic order quantity: the order size at which placing orders and holding pieces together cost
 * least (F. W. Harris, 1913), and its form with all-units price breaks.
 */

export interface EconomicOrder {
  /** Pieces an order; not rounded. */
  readonly quantity: number;
  /** Years between orders. */
  readonly years: number;
  /** Ordering and holding, a year, in the unit of the costs given. */
  readonly costPerYear: number;
}

/**
 * The economic order without price breaks.
 *
 * @param orderCost cost of one order, whatever its size
 * @param demandPerYear pieces used up a year
 * @param holdingPerPieceYear cost of holding one piece for a year, in the same unit; above 0
 */
export function economicOrder({
  orderCost,
  demandPerYear,
  holdingPerPieceYear,
}: {
  readonly orderCost: number;
  readonly demandPerYear: number;
  readonly holdingPerPieceYear: number;
}): EconomicOrder {
  const quantity = Math.sqrt((2 * orderCost * demandPerYear) / holdingPerPieceYear);
  return {
    quantity,
    years: quantity / demandPerYear,
    costPerYear: Math.sqrt(2 * orderCost * demandPerYear * holdingPerPieceYear),
  };
}

/** A price that holds for the whole order from so many pieces on. */
export interface PiecePrice {
  readonly from: number;
  readonly price: number;
}

export interface DiscountInput {
  readonly orderCost: number;
  readonly demandPerYear: number;
  /** Cost of holding, a share of the price a year. */
  readonly holdingRate: number;
  /** Ascending from 0 (or 1) pieces. */
  readonly breaks: readonly PiecePrice[];
}

export interface DiscountedOrder {
  /** The economic quantity at each price, whether or not that price holds there. */
  readonly atEachPrice: readonly number[];
  /** Sizes that can be the best: economic quantities at which their own price holds, and the breaks. */
  readonly candidates: readonly { readonly quantity: number; readonly costPerYear: number }[];
  readonly best: { readonly quantity: number; readonly costPerYear: number };
}

/** Goods, ordering and holding a year when always ordering `quantity`, with the all-units price that holds there. */
export function costPerYear(input: DiscountInput, quantity: number): number {
  const { price } = input.breaks.findLast(({ from }) => quantity >= from) ?? input.breaks[0]!;
  return (
    input.demandPerYear * price +
    (input.orderCost * input.demandPerYear) / quantity +
    (input.holdingRate * price * quantity) / 2
  );
}

/** The best order size with all-units price breaks: the cheapest of the few sizes that can be. */
export function discountedOrder(input: DiscountInput): DiscountedOrder {
  const atEachPrice = input.breaks.map(
    ({ price }) =>
      economicOrder({
        orderCost: input.orderCost,
        demandPerYear: input.demandPerYear,
        holdingPerPieceYear: input.holdingRate * price,
      }).quantity,
  );
  const sizes = new Set<number>();
  input.breaks.forEach(({ from }, index) => {
    const next = input.breaks[index + 1]?.from ?? Infinity;
    const economic = atEachPrice[index]!;
    if (economic >= from && economic < next) sizes.add(economic);
    else if (from > 0) sizes.add(from);
  });
  const candidates = [...sizes]
    .sort((a, b) => a - b)
    .map((quantity) => ({ quantity, costPerYear: costPerYear(input, quantity) }));
  return {
    atEachPrice,
    candidates,
    best: candidates.reduce((best, one) => (one.costPerYear < best.costPerYear ? one : best)),
  };
}
