/** Facts of a comparison that are worth a word. */
import type { ComparedAlternative, Comparison } from './answer.js';

export interface OtherGuests {
  readonly id: string;
  /** Guests seated a day, more than as it is; negative: fewer. */
  readonly seated: number;
  /** Pieces more than as it is. */
  readonly pieces: number;
}

/** Ranked alternatives that seat other guests than the house as it is, so that part of their money is not like for like. */
export function otherGuests({ alternatives, equalGuests, ranking }: Comparison): OtherGuests[] {
  const base = alternatives[0]!;
  if (equalGuests) return [];
  return alternatives
    .slice(1)
    .filter(({ id }) => !ranking.notRanked.includes(id))
    .flatMap((one) => {
      const seated = one.guests.seated - base.guests.seated;
      const pieces = one.pieces - base.pieces;
      return Math.abs(seated) < Math.max(0.5, 0.01 * base.guests.seated) ||
        (seated > 0 && pieces <= 0)
        ? []
        : [{ id: one.id, seated, pieces }];
    });
}

/** Those that missed the level on fresh days. */
export const missedLevel = ({ alternatives, level }: Comparison): ComparedAlternative[] =>
  alternatives.filter(({ certified }) => certified !== null && certified.high < level);

/** Prices at which an alternative and the house as it is change places; a price ten times off is no question for a buyer. */
export const nearFlips = ({
  breakEven,
}: ComparedAlternative): {
  readonly what: string;
  readonly price: number;
  readonly flipsAt: number;
}[] =>
  breakEven.flatMap(({ what, price, flipsAt }) =>
    flipsAt !== null && flipsAt > price / 10 && flipsAt < price * 10
      ? [{ what, price, flipsAt }]
      : [],
  );

/** `{lognormal:{mean:15 min,sd:8 min}}` → "lognormal: mean 15 min, sd 8 min"; other text as it stands. */
export const plainData = (text: string): string =>
  /[{[]/.test(text)
    ? text
        .replace(/:\{/g, ': ')
        .replace(/([A-Za-z][\w-]*):(?=[^\s:])/g, '$1 ')
        .replace(/[{}]/g, '')
        .replace(/,(?=\S)/g, ', ')
    : text;
