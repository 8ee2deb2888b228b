/** Holding: what it costs to keep spares, as a share of their price a year (money tied up, room, dust). */

/** A ware's spares over rounds of ordering of equal length. */
export interface Spares {
  /** Pieces on hand less the par, before anything is bought. */
  readonly start: number;
  /** Mean pieces lost in a round. */
  readonly lostARound: number;
  /** Cost of holding one piece for a round, minor units with parts. */
  readonly pieceMinorARound: number;
}

/**
 * Cost of the spares held, minor units with parts; in a round they are what has been bought less what has
 * been lost by its middle.
 *
 * @param bought pieces bought at the start of each round
 */
export function holding(
  { start, lostARound, pieceMinorARound }: Spares,
  bought: readonly number[],
): number {
  let pieces = start;
  return bought.reduce((sum, more, round) => {
    pieces += more;
    return sum + (pieces - (round + 0.5) * lostARound) * pieceMinorARound;
  }, 0);
}
