/**
 * Rules of thumb that the answer is held against. They look at seats alone; the trade passes them on
 * without saying whence (common practice, no source).
 */
import type { WareKind } from '../../tell/context.js';

/** Cups and saucers a seat, teaspoons a saucer. Basis: common practice, no source. */
export const rulesOfThumb = {
  cupsPerSeat: 3.0,
  saucersPerSeat: 1.5,
  spoonsPerSaucer: [1.2, 1.5],
} as const;

/**
 * Pieces that the rule of thumb gives for all ware of a kind together.
 * @param seats seats of the house; null: unlimited, no rule
 * @param saucers saucers in the stock: the rule for spoons counts from them
 * @returns lowest and highest number of pieces, or null where no rule is known
 */
export function ruleOfThumb(
  kind: WareKind,
  seats: number | null,
  saucers: number,
): readonly [number, number] | null {
  if (kind === 'spoon') {
    if (saucers === 0) return null;
    const [low, high] = rulesOfThumb.spoonsPerSaucer;
    return [Math.round(low * saucers), Math.round(high * saucers)];
  }
  if (seats === null) return null;
  if (kind === 'cup')
    return [
      Math.round(rulesOfThumb.cupsPerSeat * seats),
      Math.round(rulesOfThumb.cupsPerSeat * seats),
    ];
  if (kind === 'saucer')
    return [
      Math.round(rulesOfThumb.saucersPerSeat * seats),
      Math.round(rulesOfThumb.saucersPerSeat * seats),
    ];
  return null;
}
