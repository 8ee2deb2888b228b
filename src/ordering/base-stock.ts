/**
 * Base stock: every piece lost is ordered again at once, so the pieces on order are Poisson with mean
 * losses per lead time, whatever the law of the lead time (C. Palm, 1938). The pieces missing from a stock
 * of s are what is on order beyond s.
 */
import { poissonCounts } from './counts-of-pieces.js';

export interface BaseStock {
  /** Mean pieces missing (expected backorders), at a moment picked at random. */
  readonly expectedBackorders: number;
  /** Share of losses that a spare piece covers at once. */
  readonly fillRate: number;
}

/**
 * How a stock of `spares` does when `pipelineMean` pieces are on order on average.
 *
 * @param pipelineMean mean losses a lead time, pieces
 * @param spares whole number of pieces over what must stand
 */
export function baseStock(pipelineMean: number, spares: number): BaseStock {
  const onOrder = poissonCounts(pipelineMean);
  let expectedBackorders = 0;
  let fillRate = 0;
  onOrder.forEach((probability, pieces) => {
    if (pieces > spares) expectedBackorders += (pieces - spares) * probability;
    if (pieces < spares) fillRate += probability;
  });
  return { expectedBackorders, fillRate: Math.min(1, fillRate) };
}

/** Smallest number of spares with a fill rate of at least `share`. */
export function sparesForFillRate(pipelineMean: number, share: number): number {
  let spares = 0;
  while (baseStock(pipelineMean, spares).fillRate < share) spares++;
  return spares;
}
