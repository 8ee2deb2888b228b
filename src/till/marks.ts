/** Inputs of a scenario as a fit has them, each with its source: for the file itself and for its kinds of day. */
import type { TillFit } from './fit-till.js';
import { percents, type DrinkShare } from './menu-shares.js';
import { three, type Marked } from './yaml-nodes.js';

export function spreadMark({ dayFactor: { cv, low, high } }: TillFit, source: string): Marked {
  return { value: three(cv), basis: 'measured', range: [three(low), three(high)], source };
}

export function sizesMark({ partySize, sizesBy }: TillFit, source: string): Marked {
  const sizes = percents(partySize).flatMap((percent, at) =>
    percent === '0 %' ? [] : [[at + 1, percent] as const],
  );
  const how = sizesBy === 'sums' ? `; sizes worked out from drinks and tickets a slot` : '';
  return { value: new Map(sizes), basis: 'measured', source: `${source}${how}` };
}

/** A mark by drink. */
export function shareMarks(
  shares: readonly DrinkShare[],
  source: string,
): readonly (readonly [string, Marked])[] {
  const written = percents(shares.map((drink) => drink.share));
  return shares.map(({ drink, divided, onTill }, at) => {
    const text = onTill ? source : `not on the map of the ${source}`;
    return [
      drink,
      divided === null
        ? { value: written[at], basis: 'measured', source: text }
        : { value: written[at], basis: 'assumed', source: `${text}; ${divided}` },
    ];
  });
}
