/** What moves the order: swings of inputs one at a time, and what measuring some of them would narrow. */
import { hypot } from '../elementary/powers.js';
export interface Swing {
  readonly path: string;
  /** The order with the input at the low and the high end of its range, in money. */
  readonly low: number;
  readonly high: number;
}

export const widthOf = ({ low, high }: Pick<Swing, 'low' | 'high'>): number => Math.abs(high - low);

export interface Narrowing {
  /** Inputs to measure first. */
  readonly paths: readonly string[];
  /** Half the spread of the order now and once they are known, in money: root of the sum of squares of half the swings, as independent inputs add up. */
  readonly now: number;
  readonly left: number;
}

/** The `count` inputs whose measurement narrows the order most. */
export function measureFirst(
  all: readonly Swing[],
  canMeasure: (path: string) => boolean,
  count = 3,
): Narrowing {
  const half = (swings: readonly Swing[]): number =>
    hypot(...swings.map((swing) => widthOf(swing) / 2));
  const first = all
    .filter((swing) => canMeasure(swing.path) && widthOf(swing) > 0)
    .toSorted((a, b) => widthOf(b) - widthOf(a))
    .slice(0, count);
  return {
    paths: first.map(({ path }) => path),
    now: half(all),
    left: half(all.filter((swing) => !first.includes(swing))),
  };
}
