/** What a part of a filled sheet says of an input, or why it says too little. */
import type { Kept, Measured } from './answer.js';

/** What a reader of a part finds, before it is known whether the house has such an input. */
export type Found =
  | (Omit<Measured, 'path' | 'at' | 'source'> & {
      readonly path: string;
      readonly how: string;
      /** As a file writes it where its mean is another. */
      readonly written?: (mean: number) => unknown;
    })
  | Kept;

export const tooFew = (path: string, n: number, fewest: number, what: string): Kept => ({
  path,
  why: `only ${n} ${what}, and fewer than ${fewest} say too little`,
});
