/** Fewer than these say too little to replace what is assumed. Our own choice: below, the interval is wider than most ranges that are assumed. */
export const FEWEST = {
  /** Times of one kind. */
  times: 5,
  /** Parties that came and sat, for how long they stay. */
  stays: 12,
  /** Parties, for their sizes. */
  parties: 30,
  /** Parties, for the share that stays in. */
  share: 20,
  /** Guests, for second drinks. */
  guests: 10,
} as const;
